/**
 * Names of looks and of what they were of, among all of a book.
 *
 * @packageDocumentation
 */
import type { ChipSpec } from '../cups/chip-spec.ts';
import { type CupSpec, cupKey } from '../cups/cup-specs.ts';
import type { FilledCup } from '../cups/fill-cup.ts';
import type { LookedRecipe } from './looked-recipe.ts';

type Logged = Pick<FilledCup<CupSpec | ChipSpec>, 'spec' | 'rounds'>;

/** The name of a cup; that of a chip has two strokes, and no recipe's has. */
function specKey({ recipe, name }: Logged['spec']): string {
  return cupKey(recipe.kind === 'chip' ? `chips/${recipe.id}` : recipe.id, name);
}

/** The name of a cup as it was at a round: one that was begun anew is another cup, measured out anew. */
export function roundCupKey({ spec, rounds }: Logged, round: number): string {
  const begun = rounds.filter(({ number, pouredAway }) => number <= round && pouredAway !== undefined).length;
  const key = specKey(spec);
  return begun === 0 ? key : `${key}#${begun + 1}`;
}

/**
 * The name of a finished bait: one cup's is the cup's own; no cup is named as that of several.
 *
 * @param rounds those that it was poured after, by cup; of one that is not named it is the cup as it is now
 */
export function baitKey(
  { recipe, cups }: Pick<LookedRecipe, 'recipe' | 'cups'>,
  rounds: Readonly<Record<string, number>> = {},
): string {
  const [only, ...others] = cups;
  return only && others.length === 0
    ? roundCupKey(only, rounds[only.spec.name] ?? Number.POSITIVE_INFINITY)
    : `${recipe.id}//bait`;
}

/** The name of a look at a pour: its recipe, cup and round, and which look it is of those at the pour, from 0 here and from 1 there. */
export function lookKey({ spec }: Logged, round: number, index: number): string {
  return `${specKey(spec)}/${round}/${index + 1}`;
}
