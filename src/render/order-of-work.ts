/**
 * The order of work for a recipe, from what is in its cups. Common practice, no source; a supplier's instructions come first.
 *
 * @packageDocumentation
 */
import type { Cup, Material, Pattern, Recipe, Settings } from '../book/model.ts';
import { listText, temperatureText } from './words.ts';

/** A pouring range, °C. */
type Range = NonNullable<Material['working']>;

/** The heat that a recipe's cups can take together. */
export interface Heat {
  /** Lowest limit of its cups. */
  readonly limit?: { readonly celsius: number; readonly material: string };
  /** Pouring range that all its plastics share. */
  readonly working?: Range;
  /** Its plastics where they share none: each with the supplier's range, or without one. */
  readonly apart: readonly { readonly plastic: string; readonly working?: Range }[];
  /** Materials without a highest temperature on the shelf. */
  readonly unknown: readonly string[];
}

/** Heat of a recipe: the lowest limit of its cups, the range that they share. */
export function heatOf(
  cups: readonly Pick<Cup, 'limit' | 'limitUnknown' | 'plastics'>[],
  rangeOf: (plastic: string) => Range | undefined,
): Heat {
  let limit: Heat['limit'];
  for (const cup of cups)
    if (cup.limit !== undefined && (limit === undefined || cup.limit.celsius < limit.celsius)) limit = cup.limit;
  const plastics = [...new Set(cups.flatMap((cup) => cup.plastics.map(({ material }) => material)))];
  const apart = plastics.map((plastic) => {
    const working = rangeOf(plastic);
    return { plastic, ...(working === undefined ? {} : { working }) };
  });
  const shared = sharedRange(apart.map(({ working }) => working));
  return {
    ...(limit === undefined ? {} : { limit }),
    ...(shared === undefined ? { apart } : { working: shared, apart: [] }),
    unknown: [...new Set(cups.flatMap(({ limitUnknown }) => limitUnknown))],
  };
}

/** What is in all ranges; nothing where one is not known, or they don't meet. */
function sharedRange(ranges: readonly (Range | undefined)[]): Range | undefined {
  const known = ranges.flatMap((range) => range ?? []);
  if (known.length === 0 || known.length < ranges.length) return undefined;
  const shared = { from: Math.max(...known.map(({ from }) => from)), to: Math.min(...known.map(({ to }) => to)) };
  return shared.from > shared.to ? undefined : shared;
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
  if (nothing) return ['No supplier’s temperature is on the shelf: read the data sheets.'];
  return [
    ...(limit === undefined
      ? []
      : [`Never above ${temperatureText(limit.celsius, settings)}: ${title(limit.material)}.`]),
    ...pouring,
    ...(unknown.length === 0 ? [] : [`No limit known for ${listText(unknown.map(title))}: ask the supplier.`]),
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
    return `${temperatureText(from, settings).replace(/ °.$/, '')} to ${temperatureText(upTo, settings)}`;
  };
  const shared = working && rangeText(working);
  if (shared !== undefined) return [`Pour at ${shared}.`];
  const ranges = apart.flatMap(({ plastic, working: own }) => {
    const text = own && rangeText(own);
    return text === undefined ? [] : [`${title(plastic)} pours at ${text}`];
  });
  const without = apart.filter(({ working: own }) => own === undefined).map(({ plastic }) => title(plastic));
  return [
    ...(ranges.length === 0 ? [] : [`${listText(ranges)}.`]),
    ...(without.length === 0
      ? []
      : [`No supplier’s pouring range is on the shelf for ${listText(without)}: read the data sheet.`]),
    ...(without.length > 0 || ranges.length < 2 ? [] : ['These ranges do not meet: ask the suppliers.']),
  ];
}

const POURS: Readonly<Record<Pattern, (cups: readonly string[]) => string>> = {
  solid: () => 'Shoot the mold slowly and top up the sprue while it shrinks.',
  laminate: ([first, second]) => `Shoot ${first} and ${second} together, side by side, at the same temperature.`,
  swirl: (cups) => `Shoot ${listText(cups)} through one nozzle, unmixed.`,
  layered: (cups) => `Pour ${inTurn(cups)}, each as soon as the one before holds its place.`,
  core: ([first, second]) => `Shoot ${first}, and while its middle is liquid shoot ${second} into it.`,
  tipped: ([first, second]) => `Pour ${second} into the tip, let it set, then shoot ${first}.`,
};

/** Steps, in order. */
export function orderOfWork(
  recipe: Pick<Recipe, 'pattern' | 'cups'>,
  kindOf: (material: string) => Material['kind'] | undefined,
): readonly string[] {
  const kinds = new Set(recipe.cups.flatMap(({ contents }) => contents.map(({ material }) => kindOf(material))));
  const present = (...each: readonly (readonly [Material['kind'], string])[]): readonly string[] =>
    each.filter(([kind]) => kinds.has(kind)).map(([, word]) => word);
  const early = present(['colorant', 'the colorant'], ['powder', 'the powder']);
  const late = present(['flake', 'flake'], ['additive', 'additives']);
  return [
    'Shake the plastic well; measure everything out before you heat.',
    'Heat in short turns and stir from the bottom, until it is clear and runs.',
    ...(early.length > 0 ? [`Stir in ${inTurn(early)} until no streak is left.`] : []),
    ...(late.length > 0
      ? [
          `Last the ${listText(late)}; stir again before each pour, ${kinds.has('additive') ? 'they sink' : 'it sinks'}.`,
        ]
      : []),
    'Let bubbles rise off the heat; check the thermometer.',
    POURS[recipe.pattern](recipe.cups.map(({ name }) => name)),
  ];
}

/** `the colorant, then the powder` */
function inTurn(words: readonly string[]): string {
  return words.join(', then ');
}
