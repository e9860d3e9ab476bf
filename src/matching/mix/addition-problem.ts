import { type CupState, total } from '../../cup/ledger.ts';
import type { OpticalConstants } from '../../optics/mixture.ts';
import { BAND_COUNT } from '../../optics/spectrum.ts';
import { defined } from '../../values/defined.ts';
import { required } from '../../values/required.ts';
import type { Beliefs, BelievedCup } from '../belief/beliefs.ts';
import { askedAs, contentsOf, contentsWith } from '../belief/looked-layers.ts';
import { offsetsNear } from '../belief/offsets-near.ts';
import type { Ingredient } from '../measure/measure-doses.ts';
import type { SeenShelf } from '../shelf/match-material.ts';
import { type AdditionLimits, type LeftOut, usableMaterials } from '../shelf/usable-materials.ts';
import type { TargetPart } from '../target/target-part.ts';
import { baseOfCup, sumsOf } from './cup-model.ts';
import { layersOfPart, withBehind } from './layers-of-part.ts';
import { Mix } from './mix.ts';
import type { MixCandidate, MixCup, MixProblem } from './mix-problem.ts';
import { togetherBounds } from './together-bounds.ts';

/** A cup, a target and everything that could be added, ready to be solved. */
export interface AdditionProblem {
  readonly problem: MixProblem;
  readonly mix: Mix;
  readonly ingredients: readonly Ingredient[];
  readonly plasticMl: number;
  readonly leftOut: readonly LeftOut[];
  /** The cup as it is, and what lies behind it. */
  readonly cups: readonly MixCup[];
  /** The cup with such doses, as belief is asked about it. */
  readonly asked: (doses: Float64Array) => BelievedCup;
}

/** What a problem is set up with. */
export interface ProblemShelf extends SeenShelf {
  /** What looks say that the model is off by; unset: nothing. */
  readonly belief?: Beliefs;
  /** Name of the cup among the looks; unset: there are none of it. */
  readonly key?: string | undefined;
}

// A cup is hardly ever let down to less than a third.
const THINNEST = 0.65;

/**
 * Sets up what could be added to a cup (see `usableMaterials`), and the plastic to let it down with where that is allowed: the one
 * that most of the cup is.
 */
export function additionProblem(
  cup: CupState,
  target: TargetPart,
  { shelf, optics, belief, key }: ProblemShelf,
  limits: AdditionLimits = {},
): AdditionProblem {
  const plasticMl = total(cup.plastics);
  const { mix: base, flakes, plastic } = baseOfCup(cup, (name) => required(shelf, name), optics);
  const { usable, leftOut } = usableMaterials(cup, shelf, limits);
  const ingredients: Ingredient[] = usable.map(({ material, most }) => ({ material, cup: 0, letsDown: false, most }));
  const candidates: MixCandidate[] = usable.map(({ material, most }) => ({
    cup: 0,
    constants: material.constants!,
    load: 1,
    most: most / plasticMl,
  }));
  const letDownWith = limits.mayLetDown
    ? Object.keys(cup.plastics).sort((one, other) => cup.plastics[other]! - cup.plastics[one]!)[0]
    : undefined;
  if (letDownWith !== undefined) {
    const { stockGrams = Number.POSITIVE_INFINITY, gramsPerMl } = required(shelf, letDownWith);
    const leftMl = limits.inStock ? stockGrams / gramsPerMl : Number.POSITIVE_INFINITY;
    const mostMl = Math.max(0, Math.min(leftMl, (limits.roomMl ?? 3 * plasticMl) - plasticMl));
    const share = Math.min(THINNEST, mostMl / (plasticMl + mostMl));
    if (share > 0.01) {
      ingredients.push({ material: required(shelf, letDownWith), cup: 0, letsDown: true, most: mostMl });
      candidates.push({
        cup: 0,
        constants: difference(plastic, sumsOf(base, optics)),
        load: -base.load,
        most: share,
      });
    }
  }
  const goal = {
    layers: layersOfPart(target, flakes),
    overWhite: target.overWhite,
    ...defined({ overBlack: target.overBlack }),
  };
  const cups = withBehind(target, base);
  const contents = contentsOf(cup, shelf);
  const asked = (doses: Float64Array): BelievedCup => ({
    ...askedAs([contentsWith(contents, ingredients, doses, 0)], 0, target),
    ...defined({ cup: key }),
  });
  const offsets = belief && offsetsNear(belief, asked(new Float64Array(candidates.length)), contents, ingredients);
  const together = togetherBounds([cup], ingredients, shelf);
  const usual = togetherBounds([cup], ingredients, shelf, 'warned');
  const problem: MixProblem = { cups, goals: [goal], candidates, optics, together, usual, ...defined({ offsets }) };
  const mix = new Mix(problem);
  return { problem, mix, ingredients, plasticMl, leftOut, cups, asked };
}

function difference(one: OpticalConstants, other: OpticalConstants): OpticalConstants {
  const absorption = new Float64Array(BAND_COUNT);
  const scattering = new Float64Array(BAND_COUNT);
  for (let band = 0; band < BAND_COUNT; band++) {
    absorption[band] = one.absorption[band]! - other.absorption[band]!;
    scattering[band] = one.scattering[band]! - other.scattering[band]!;
  }
  return { absorption, scattering };
}
