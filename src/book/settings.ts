import type { Spoon } from '../cup/bench.ts';
import type { FieldsOf } from '../recipe/schema.ts';
import { millilitres } from '../units/convert.ts';
import { formatQuantity } from '../units/format-quantity.ts';
import type { Quantity } from '../units/quantity.ts';
import type { Settings } from './model.ts';

const DEFAULT_SPOONS: readonly Quantity[] = [
  { amount: 1, unit: 'tbsp' },
  { amount: 1, unit: 'tsp' },
  { amount: 1 / 2, unit: 'tsp' },
  { amount: 1 / 4, unit: 'tsp' },
  { amount: 1 / 8, unit: 'tsp' },
  { amount: 1, unit: 'pinch' },
  { amount: 1, unit: 'smidgen' },
];

/** How the maker works, from `book.md`. */
export function settingsOf(fields: FieldsOf<'book'>): Settings {
  const { tools, units } = fields;
  const spoons = (tools.spoons ?? DEFAULT_SPOONS).map(
    (spoon): Spoon => ({ ml: millilitres(spoon), name: formatQuantity(spoon) }),
  );
  return {
    volume: units.volume,
    temperature: units.temperature,
    currency: units.currency,
    drops: tools.drops,
    spoons: spoons.sort((one, other) => other.ml - one.ml),
    ...(tools.scale === undefined ? {} : { scaleGrams: tools.scale }),
    dropSpread: tools.spread.drop,
    spoonSpread: tools.spread.spoon,
    tolerance: fields.tolerance,
    ...(fields.plastic === undefined ? {} : { plastic: fields.plastic }),
    loss: fields.loss,
    leftInCupMl: fields['left-in-cup'],
    cupMl: fields.cup,
    fill: fields.fill,
  };
}
