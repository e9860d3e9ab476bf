/**
 * The order of work for a recipe, from what is in its cups. Common practice, no source; a supplier's instructions come first.
 *
 * @packageDocumentation
 */
import type { Cup, Material, Pattern, Recipe, Settings } from '../book/model.ts';
import { listText, temperatureText } from './words.ts';

/** The heat that a recipe's cups can take together. */
export interface Heat {
  /** Lowest limit of its cups. */
  readonly limit?: { readonly celsius: number; readonly material: string };
  /** Pouring range that all its plastics share. */
  readonly working?: { readonly from: number; readonly to: number };
  /** Materials without a highest temperature on the shelf. */
  readonly unknown: readonly string[];
}

/** Heat of a recipe: the lowest limit of its cups, the range that they share. */
export function heatOf(cups: readonly Pick<Cup, 'limit' | 'limitUnknown' | 'working'>[]): Heat {
  let limit: Heat['limit'];
  for (const cup of cups)
    if (cup.limit !== undefined && (limit === undefined || cup.limit.celsius < limit.celsius)) limit = cup.limit;
  const ranges = cups.flatMap(({ working }) => working ?? []);
  const working =
    ranges.length === cups.length && ranges.length > 0
      ? { from: Math.max(...ranges.map(({ from }) => from)), to: Math.min(...ranges.map(({ to }) => to)) }
      : undefined;
  return {
    ...(limit === undefined ? {} : { limit }),
    ...(working === undefined || working.from > working.to ? {} : { working }),
    unknown: [...new Set(cups.flatMap(({ limitUnknown }) => limitUnknown))],
  };
}

/** The heat in words: what the suppliers stated, and nothing else. */
export function heatWords(
  heat: Heat,
  settings: Pick<Settings, 'temperature'>,
  title: (material: string) => string,
): readonly string[] {
  const { limit, working, unknown } = heat;
  // The range of the plastic may reach beyond what the flake in it can take.
  const upTo = working === undefined ? undefined : Math.min(working.to, limit?.celsius ?? working.to);
  return [
    ...(limit === undefined
      ? []
      : [`Never above ${temperatureText(limit.celsius, settings)}: ${title(limit.material)}.`]),
    ...(working === undefined || upTo === undefined || upTo < working.from
      ? []
      : [
          `Pour at ${temperatureText(working.from, settings).replace(/ °.$/, '')} to ${temperatureText(upTo, settings)}.`,
        ]),
    ...(limit === undefined && working === undefined
      ? ['No supplier’s temperature is on the shelf: read the data sheets.']
      : []),
    ...(unknown.length === 0 || (limit === undefined && working === undefined)
      ? []
      : [`No limit known for ${listText(unknown.map(title))}: ask the supplier.`]),
  ];
}

const POURS: Readonly<Record<Pattern, (cups: readonly string[]) => string>> = {
  solid: () => 'Shoot the mold slowly and top up the sprue while it shrinks.',
  laminate: ([first, second]) => `Shoot ${first} and ${second} together, side by side, at the same temperature.`,
  swirl: (cups) => `Shoot ${listText(cups)} through one nozzle, unmixed.`,
  layered: (cups) => `Pour ${listText(cups, 'then')}, each as soon as the one before holds its place.`,
  core: ([first, second]) => `Shoot ${first}, and while its middle is liquid shoot ${second} into it.`,
  tipped: ([first, second]) => `Pour ${second} into the tip, let it set, then shoot ${first}.`,
};

/** Steps, in order. */
export function orderOfWork(
  recipe: Pick<Recipe, 'pattern' | 'cups'>,
  kindOf: (material: string) => Material['kind'] | undefined,
): readonly string[] {
  const kinds = new Set(recipe.cups.flatMap(({ contents }) => contents.map(({ material }) => kindOf(material))));
  const late = [kinds.has('flake') ? 'flake' : '', kinds.has('additive') ? 'additives' : ''].filter(
    (word) => word !== '',
  );
  const early = [kinds.has('colorant') ? 'colorant' : '', kinds.has('powder') ? 'powder' : ''].filter(
    (word) => word !== '',
  );
  return [
    'Shake the plastic well; measure everything out before you heat.',
    'Heat in short turns and stir from the bottom, until it is clear and runs.',
    ...(early.length > 0 ? [`Stir in ${listText(early, 'then')} until no streak is left.`] : []),
    ...(late.length > 0 ? [`Last ${listText(late)}; stir again before each pour, it sinks.`] : []),
    'Let bubbles rise off the heat; check the thermometer.',
    POURS[recipe.pattern](recipe.cups.map(({ name }) => name)),
  ];
}
