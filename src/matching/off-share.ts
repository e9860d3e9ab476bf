import type { CupState } from '../cup/ledger.ts';
import type { Lab } from '../optics/cielab.ts';
import type { ModelCorrection } from './correct-model.ts';
import type { CupShelf } from './cup-model.ts';
import { type Contents, contentsOf, likeness } from './likeness.ts';
import type { MatchMaterial } from './match-material.ts';
import type { Ingredient } from './measure-doses.ts';

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
  const thins = ingredients.findIndex((each) => each.thins);
  return (doses) => {
    const left = 1 - (thins < 0 ? 0 : doses[thins]!);
    const mixed: Record<string, number> = {};
    for (const name in contents) mixed[name] = left * contents[name]!;
    for (const [j, { material }] of ingredients.entries())
      if (doses[j]! > 0) mixed[material.id] = (mixed[material.id] ?? 0) + doses[j]!;
    return likeness(mixed, learntFrom, (name) => shelf.get(name)!);
  };
}

/** What the model is off by in a cup. */
export function offsetsFor(correction: ModelCorrection, cup: CupState, shelf: CupShelf): Offsets {
  const { learntFrom } = correction;
  return partOf(correction, learntFrom === undefined ? 1 : likeness(contentsOf(cup), learntFrom, shelf));
}

/** A part of what the model is off by. */
export function partOf({ offWhite, offBlack }: Offsets, share: number): Offsets {
  const part = ({ L, a, b }: Lab): Lab => ({ L: share * L, a: share * a, b: share * b });
  return { offWhite: part(offWhite), offBlack: part(offBlack) };
}
