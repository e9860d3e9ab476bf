/**
 * Names of looks and of what they were of, among all of a book.
 *
 * @packageDocumentation
 */
import type { ChipSpec } from '../cups/chip-spec.ts';
import { type CupSpec, cupKey } from '../cups/cup-specs.ts';
import type { FilledCup } from '../cups/fill-cup.ts';
import type { Cup } from '../model/cup.ts';

type Logged = Pick<FilledCup<CupSpec | ChipSpec>, 'spec' | 'rounds'>;

/** The name of a cup; that of a chip has two strokes, and no recipe's has. */
function specKey({ recipe, name }: Logged['spec']): string {
  return cupKey(recipe.kind === 'chip' ? `chips/${recipe.id}` : recipe.id, name);
}

/** The name of a cup as it was at a round: one that was begun anew is another cup, measured out anew. */
export function roundCupKey({ spec, rounds }: Logged, round: number): string {
  const begun = rounds.filter(({ number, pouredAway }) => number <= round && pouredAway !== undefined).length;
  return begunKey(specKey(spec), begun);
}

const begunKey = (key: string, begun: number): string => (begun === 0 ? key : `${key}#${begun + 1}`);

/** The name of a cup as it is now. */
export function lastCupKey(cup: Logged): string {
  return roundCupKey(cup, Number.POSITIVE_INFINITY);
}

/** The same, of a cup of the book. */
export function keyOfCup(recipe: string, { name, rounds }: Pick<Cup, 'name' | 'rounds'>): string {
  return begunKey(cupKey(recipe, name), rounds.filter(({ newCup }) => newCup !== undefined).length);
}

/** The name of a finished bait in which several cups are looked at together; no cup is named so. */
export function baitKey(recipe: string): string {
  return `${recipe}//bait`;
}

/** The name of a look at a pour: its recipe, cup and round, and which look it is of those at the pour, from 0 here and from 1 there. */
export function lookKey({ spec }: Logged, round: number, index: number): string {
  return `${specKey(spec)}/${round}/${index + 1}`;
}

/** The name of a look at a finished bait: which it is of those in the file, from 0 here and from 1 there. */
export function baitLookKey(recipe: string, index: number): string {
  return `${baitKey(recipe)}/${index + 1}`;
}

/** Whose cup, or bait, has such a name. */
export function ofCup(key: string): { readonly kind: 'recipe' | 'chip'; readonly id: string } {
  const [first, second] = key.split('/') as [string, string];
  // A recipe may be called "chips": of its bait the second part is empty.
  return key.split('/').length === 3 && second !== '' ? { kind: 'chip', id: second } : { kind: 'recipe', id: first };
}
