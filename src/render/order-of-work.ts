/**
 * The order of work for a recipe, from what is in its cups. Common practice, no source; a supplier's instructions come first.
 *
 * @packageDocumentation
 */

import type { Material } from '../book/model/shelf.ts';
import { ADDITIVE_USES } from '../kinds/additive-uses.ts';
import { MATERIAL_KINDS, SHELF_ORDER } from '../kinds/kinds.ts';
import type { StepWords } from '../patterns/pattern.ts';
import { PATTERNS, type Pattern } from '../patterns/patterns.ts';
import { listText } from './words.ts';

/** Heat that any plastic is poured at at least, °C, for one whose supplier's is not on the shelf. Common practice, no source; never told. */
const LEAST_POURING_HEAT = 160;

/** What the order of work asks of a material. */
export type WorkMaterial = Pick<Material, 'title' | 'kind' | 'gramsPerDrop' | 'highest' | 'working' | 'use'>;

/** What the order of work asks of a cup. */
interface CupToMake {
  readonly name: string;
  readonly contents: readonly { readonly material: string }[];
  readonly plastics: readonly { readonly material: string }[];
}

/**
 * Steps, in order.
 *
 * Liquid additives go into the cold plastic: a heat guard is to be there before the heat is, and a softener is part of the plastic. One that
 * bears less than the plastic is poured at waits until the cup is off the heat. Only what sinks goes last. Common practice, no source.
 */
export function orderOfWork(
  recipe: { readonly pattern: Pattern; readonly cups: readonly CupToMake[] },
  materialOf: (id: string) => WorkMaterial | undefined,
): readonly StepWords[] {
  const known = (ids: readonly string[]): readonly WorkMaterial[] =>
    [...new Set(ids)].flatMap((id) => materialOf(id) ?? []);
  const materials = known(recipe.cups.flatMap(({ contents }) => contents.map(({ material }) => material)));
  const plastics = known(recipe.cups.flatMap((cup) => cup.plastics.map(({ material }) => material)));
  const together = (when: 'stirred in' | 'last'): readonly string[] =>
    SHELF_ORDER.filter((wanted) => materials.some(({ kind }) => kind === wanted))
      .map((kind) => MATERIAL_KINDS[kind].goesIn)
      .flatMap((goesIn) => (goesIn.when === when ? [goesIn.together] : []));
  const titles = (wanted: (additive: WorkMaterial) => boolean): readonly string[] =>
    materials
      .filter((each) => MATERIAL_KINDS[each.kind].goesIn.when === 'as it is' && wanted(each))
      .map(({ title }) => title);
  const pouredAt = Math.max(...plastics.map(({ working, highest }) => working?.to ?? highest ?? LEAST_POURING_HEAT));
  const isLiquid = ({ gramsPerDrop }: WorkMaterial): boolean => gramsPerDrop !== undefined;
  const bearsLess = ({ highest = Number.POSITIVE_INFINITY, use }: WorkMaterial): boolean =>
    highest < pouredAt || (use !== undefined && ADDITIVE_USES[use].goesIn === 'last and off the heat');

  const cold = titles((each) => isLiquid(each) && !bearsLess(each));
  const offTheHeat = titles((each) => isLiquid(each) && bearsLess(each));
  const early = together('stirred in');
  const sinking = [...together('last'), ...titles((each) => !isLiquid(each))];
  const steps: readonly string[] = [
    'Shake the plastic well, and measure everything out before you heat.',
    `${cold.length > 0 ? `Stir ${listText(cold)} into the cold plastic, then heat` : 'Heat'} in short bursts, stirring from the bottom, until it turns clear and runny.`,
    ...(early.length > 0 ? [`Stir in ${early.join(', then ')}, until no streaks are left.`] : []),
    ...(offTheHeat.length > 0 ? [`Take it off the heat and stir in ${listText(offTheHeat)}.`] : []),
    ...(sinking.length > 0
      ? [`Add ${listText(sinking)} last. ${sinking.length > 1 ? 'They sink' : 'It sinks'}, so stir before every pour.`]
      : []),
    `${offTheHeat.length > 0 ? 'Let' : 'Take it off the heat, let'} the bubbles rise, and check the temperature.`,
  ];
  return [...steps.map((step) => [step]), PATTERNS[recipe.pattern].pour(recipe.cups.map(({ name }) => name))];
}
