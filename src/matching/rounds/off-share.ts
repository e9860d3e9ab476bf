import { amountOf, type CupState } from '../../cup/ledger.ts';
import type { Lab } from '../../optics/cielab.ts';
import type { TwoViews } from '../../optics/cup-body.ts';
import { required } from '../../values/required.ts';
import type { Ingredient } from '../measure/measure-doses.ts';
import type { MaterialOf } from '../mix/cup-model.ts';
import type { MatchMaterial } from '../shelf/match-material.ts';
import type { ModelCorrection } from './correct-model.ts';
import { type Contents, contentsOf, effectOf, likeness, likenessOf } from './likeness.ts';

/** What a model is off by over white and over black, in Lab. */
export type Offsets = Pick<ModelCorrection, 'offWhite' | 'offBlack'>;

/**
 * The part of what the model is off by that holds in a cup with such doses: as much as that cup is like the one in which it was seen.
 * Undefined where nothing was seen.
 *
 * @param contents of the cup before anything is added
 */
export function offShareOf(
  { learntFrom }: ModelCorrection,
  contents: Contents,
  ingredients: readonly Ingredient[],
  shelf: ReadonlyMap<string, MatchMaterial>,
): ((doses: Float64Array) => number) | undefined {
  if (learntFrom === undefined) return undefined;
  // Asked for at every step of a search: names are numbers here, and what each is worth is known.
  const names = [...new Set([...Object.keys(contents), ...Object.keys(learntFrom), ...ingredients.map(nameOf)])];
  const effects = Float64Array.from(names, (name) => effectOf(name, (each) => required(shelf, each)));
  const base = Float64Array.from(names, (name) => amountOf(contents, name));
  const learnt = Float64Array.from(names, (name) => amountOf(learntFrom, name));
  const places = ingredients.map((ingredient) => names.indexOf(nameOf(ingredient)));
  const letsDown = ingredients.findIndex((each) => each.letsDown);
  const mixed = new Float64Array(names.length);
  return (doses) => {
    const left = 1 - (letsDown < 0 ? 0 : doses[letsDown]!);
    for (let i = 0; i < mixed.length; i++) mixed[i] = left * base[i]!;
    for (let j = 0; j < places.length; j++) if (doses[j]! > 0) mixed[places[j]!]! += doses[j]!;
    return likenessOf(mixed, learnt, effects);
  };
}

const nameOf = ({ material }: Ingredient): string => material.id;

/** What the model is off by in a cup. */
export function offsetsFor(correction: ModelCorrection, cup: CupState, shelf: MaterialOf): Offsets {
  const { learntFrom } = correction;
  return partOf(correction, learntFrom === undefined ? 1 : likeness(contentsOf(cup), learntFrom, shelf));
}

/** What the model makes of a cup, with what it is off by there: a colour that can be seen, no lighter than white and no darker than black. */
export function withOffsets(
  { overWhite, overBlack }: TwoViews,
  correction: ModelCorrection,
  cup: CupState,
  shelf: ReadonlyMap<string, MatchMaterial>,
): TwoViews {
  const { offWhite, offBlack } = offsetsFor(correction, cup, (name) => required(shelf, name));
  const plus = ({ L, a, b }: Lab, off: Lab): Lab => ({
    L: Math.min(100, Math.max(0, L + off.L)),
    a: a + off.a,
    b: b + off.b,
  });
  return { overWhite: plus(overWhite, offWhite), overBlack: plus(overBlack, offBlack) };
}

/** A part of what the model is off by. */
export function partOf({ offWhite, offBlack }: Offsets, share: number): Offsets {
  const part = ({ L, a, b }: Lab): Lab => ({ L: share * L, a: share * a, b: share * b });
  return { offWhite: part(offWhite), offBlack: part(offBlack) };
}
