import { deltaE00 } from '../../optics/delta-e00.ts';
import type { OpticalModel } from '../../optics/optical-model.ts';
import { OTHER_LIGHTS } from '../../tables/lights.ts';
import type { Measures } from '../belief/dose-scatter.ts';
import type { Expectation } from '../belief/expectation.ts';
import { type Expect, type ExpectedDoses, type ExpectedProblem, expecting } from '../belief/expecting.ts';
import type { Ingredient } from '../measure/measure-doses.ts';
import type { MatchBench } from '../shelf/match-bench.ts';
import { type OwnColour, ownColour } from '../shelf/own-hue.ts';
import type { TargetPart } from '../target/target-part.ts';
import { targetUnder } from '../target/target-under-light.ts';
import type { Figures } from './order.ts';

// From a hue to the opposite one there are so many families of bottles. Convention of this book.
const FAMILIES = 8;

/** What doses are judged in: cups, what can go into them, and what they are to look like. */
export interface FiguredProblem extends ExpectedProblem {
  readonly bench: MatchBench;
  /** Whether the cup has nothing yet of a candidate; unset: nothing counts as new. */
  readonly isNew?: (candidate: number) => boolean;
  /** Whether nobody has looked yet at anything with a candidate in it; unset: that counts for nothing. */
  readonly isUntried?: ((candidate: number) => boolean) | undefined;
}

/** What doses are chosen by, but for their cost; and the bound that nine in ten stay within. */
export interface DoseFigures extends Omit<Figures, 'cost' | 'names'>, Expectation {}

/** How doses were measured, and what is to be expected of them where that is known already. */
export interface FiguredDoses extends Measures {
  readonly expectation?: ExpectedDoses;
}

/** What is to be expected of doses in one problem, and all that they are chosen by. */
export function figuring(problem: FiguredProblem): {
  readonly expect: Expect;
  readonly figuresOf: (doses: Float64Array, known?: FiguredDoses) => DoseFigures;
} {
  const { mix, ingredients, parts, isNew, isUntried } = problem;
  const expect = expecting(problem, problem.bench);
  const own = ingredients.map(({ material, letsDown, cup }) =>
    letsDown ? undefined : colourBeside(material, parts[cup]!, mix.optics),
  );
  const lamps = OTHER_LIGHTS.map(({ light }) => ({
    light,
    targets: parts.flatMap((part) => {
      const { overWhite, overBlack } = targetUnder(part, light);
      return overBlack ? [overWhite, overBlack] : [overWhite];
    }),
  }));
  const figuresOf = (doses: Float64Array, { expectation, ...measures }: FiguredDoses = {}): DoseFigures => {
    const used = [...doses.keys()].filter((j) => doses[j]! > 0);
    const names = new Map(used.map((j) => [ingredients[j]!.material.id, j]));
    const { expected, bound90, likely, scatter } = expectation ?? expect(doses, measures);
    return {
      expected,
      bound90,
      likely,
      scatter,
      isOverfull: mix.isOverfull(doses),
      untried: isUntried === undefined ? 0 : [...names.values()].filter(isUntried).length,
      bottles: [...names.values()].reduce((sum, j) => sum + (isNew?.(j) ? 2 : 1), 0),
      liquid: Math.max(0, ...parts.map((_, cup) => liquidIn(ingredients, doses, used, cup))),
      lampDeltaE: Math.max(
        ...lamps.flatMap(({ light, targets }) =>
          mix.labsUnder(doses, light).map((lab, view) => deltaE00(targets[view]!, lab)),
        ),
      ),
      ...byOwnColours(own, doses, used),
    };
  };
  return { expect, figuresOf };
}

const COLOURS = new WeakMap<OpticalModel, WeakMap<object, Map<string, OwnColour>>>();

/** As `ownColour`, kept for the material: a shelf is asked again and again. */
function colourBeside(
  material: Ingredient['material'],
  { overWhite, thicknessMm }: TargetPart,
  optics: OpticalModel,
): OwnColour {
  const all = COLOURS.get(optics) ?? new WeakMap<object, Map<string, OwnColour>>();
  COLOURS.set(optics, all);
  const kept = all.get(material) ?? new Map<string, OwnColour>();
  all.set(material, kept);
  const key = [overWhite.L, overWhite.a, overWhite.b, thicknessMm].join();
  const before = kept.get(key);
  if (before) return before;
  const found = ownColour(material, overWhite, thicknessMm, optics);
  kept.set(key, found);
  return found;
}

function liquidIn(
  ingredients: readonly Ingredient[],
  doses: Float64Array,
  used: readonly number[],
  cup: number,
): number {
  let ml = 0;
  for (const j of used) {
    const { material, cup: into, letsDown } = ingredients[j]!;
    if (into === cup && !letsDown && material.gramsPerDrop !== undefined) ml += doses[j]! / material.density;
  }
  return ml;
}

function byOwnColours(
  own: readonly (OwnColour | undefined)[],
  doses: Float64Array,
  used: readonly number[],
): Pick<DoseFigures, 'hueAway' | 'black'> {
  let away = 0;
  let hued = 0;
  let black = 0;
  for (const j of used) {
    const colour = own[j];
    if (colour === undefined) continue;
    const part = doses[j]! / colour.typical;
    if (colour.isBlack) black += part;
    if (colour.hueAway === undefined) continue;
    hued += part;
    away += part * colour.hueAway;
  }
  return { hueAway: hued > 0 ? away / hued : 0, black };
}

/** The few candidates of each cup whose own colours are nearest to what it is to look like: those of its hue first, then by ΔE00. */
export function nearestBottles(
  ingredients: readonly Ingredient[],
  parts: readonly TargetPart[],
  count: number,
  optics: OpticalModel,
): readonly number[] {
  return parts.flatMap((part, index) =>
    [...ingredients.entries()]
      .flatMap(([j, { material, cup, letsDown }]) => {
        if (cup !== index || letsDown) return [];
        const { hueAway = 1, deltaE } = colourBeside(material, part, optics);
        return [{ j, family: Math.round(FAMILIES * hueAway), deltaE }];
      })
      .sort((one, other) => one.family - other.family || one.deltaE - other.deltaE)
      .slice(0, count)
      .map(({ j }) => j),
  );
}
