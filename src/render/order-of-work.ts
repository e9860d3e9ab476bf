/**
 * The order of work for a recipe, from what is in its cups. Common practice, no source; a supplier's instructions come first.
 *
 * @packageDocumentation
 */

import type { Cup, PlasticShare } from '../book/model/cup.ts';
import type { Material } from '../book/model/shelf.ts';
import type { Settings } from '../book/model.ts';
import { ADDITIVE_USES } from '../kinds/additive-uses.ts';
import { MATERIAL_KINDS, SHELF_ORDER } from '../kinds/kinds.ts';
import type { StepWords } from '../patterns/pattern.ts';
import { PATTERNS, type Pattern } from '../patterns/patterns.ts';
import { type Range, sharedRange } from '../units/shared-range.ts';
import { defined } from '../values/defined.ts';
import { type Html, html } from './html.ts';
import { limitText, listText, temperatureText } from './words.ts';

/** The heat that a recipe's cups can take together. */
export interface Heat {
  /** Lowest limit of its cups. */
  readonly limit?: Cup['limit'];
  /** Pouring range that all its plastics share. */
  readonly working?: Range;
  /** Its plastics where they share none: each with the supplier's range, or without one. */
  readonly apart: readonly { readonly plastic: string; readonly working?: Range }[];
  /** Materials without a highest temperature on the shelf. */
  readonly unknown: readonly string[];
}

/** Heat of a recipe: the lowest limit of its cups, the range that they share. */
export function heatOf(
  cups: readonly (Pick<Cup, 'limit' | 'limitUnknown'> & {
    readonly plastics: readonly Pick<PlasticShare, 'material'>[];
  })[],
  rangeOf: (plastic: string) => Range | undefined,
): Heat {
  let limit: Heat['limit'];
  for (const cup of cups)
    if (cup.limit !== undefined && (limit === undefined || cup.limit.celsius < limit.celsius)) limit = cup.limit;
  const plastics = [...new Set(cups.flatMap((cup) => cup.plastics.map(({ material }) => material)))];
  const apart = plastics.map((plastic) => {
    const working = rangeOf(plastic);
    return { plastic, ...defined({ working }) };
  });
  const shared = sharedRange(apart.map(({ working }) => working));
  return {
    ...defined({ limit }),
    ...(shared === undefined ? { apart } : { working: shared, apart: [] }),
    unknown: [...new Set(cups.flatMap(({ limitUnknown }) => limitUnknown))],
  };
}

/** The heat in words: what the suppliers stated, and nothing else. */
export function heatWords(
  heat: Heat,
  settings: Pick<Settings, 'temperature'>,
  title: (material: string) => string,
): readonly string[] {
  const { limit, unknown } = heat;
  const pouring = pouringWords(heat, settings, title);
  const nothing = limit === undefined && heat.apart.length > 0 && heat.apart.every(({ working }) => !working);
  if (nothing) return ['No supplier temperatures on file: read the data sheets.'];
  return [
    ...(limit === undefined
      ? []
      : [
          `Never above ${limitText(limit.celsius, settings)} (${limit.ofRange ? `top of the pouring range of ${title(limit.material)}` : `${title(limit.material)} sets the limit`}).`,
        ]),
    ...pouring,
    ...(unknown.length === 0 ? [] : [`No maximum on file for ${listText(unknown.map(title))}: ask the supplier.`]),
  ];
}

/** At what heat to pour: in the range that all plastics share, else each plastic's own, and which has none. */
function pouringWords(
  { limit, working, apart }: Heat,
  settings: Pick<Settings, 'temperature'>,
  title: (material: string) => string,
): readonly string[] {
  // The range of a plastic may reach beyond what the flake in it can take.
  const rangeText = ({ from, to }: Range): string | undefined => {
    const upTo = Math.min(to, limit?.celsius ?? to);
    if (upTo < from) return undefined;
    return `${temperatureText(from, settings).replace(/ °.$/, '')} to ${limitText(upTo, settings)}`;
  };
  const shared = working && rangeText(working);
  if (shared !== undefined) return [`Pour at ${shared}.`];
  if (working !== undefined)
    return [`The plastic needs at least ${temperatureText(working.from, settings)} to pour: ask the suppliers.`];
  const ranges = apart.flatMap(({ plastic, working: own }) => {
    const text = own && rangeText(own);
    return text === undefined ? [] : [`${title(plastic)} pours at ${text}`];
  });
  const without = apart.filter(({ working: own }) => own === undefined).map(({ plastic }) => title(plastic));
  return [
    ...(ranges.length === 0 ? [] : [`${listText(ranges)}.`]),
    ...(without.length === 0 ? [] : [`No pouring range on file for ${listText(without)}: read the data sheet.`]),
    ...(without.length > 0 || ranges.length < 2 ? [] : ['These ranges don’t overlap: ask the suppliers.']),
  ];
}

/** A step's words alone, for where none can stand out. */
export function stepText(step: StepWords): string {
  return step.map((part) => (typeof part === 'string' ? part : part.cup)).join('');
}

/** A step with the names of its cups in strong letters. */
export function stepHtml(step: StepWords): Html {
  return html`${step.map((part) => (typeof part === 'string' ? part : html`<b>${part.cup}</b>`))}`;
}

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
