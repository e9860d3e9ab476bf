import type { Spoon } from '../cup/bench.ts';
import { filledMl } from '../cup/filled-ml.ts';
import type { Thing } from '../recipe/read-thing.ts';
import type { FieldsOf } from '../recipe/schema.ts';
import { millilitres } from '../units/convert.ts';
import { formatDecimal, formatQuantity } from '../units/format-quantity.ts';
import type { Quantity } from '../units/quantity.ts';
import { CUP_MARKS_ML, volumeText } from '../units/volume-text.ts';
import { defined } from '../values/defined.ts';
import type { Settings } from './model.ts';
import type { Report } from './report.ts';

/** Plastic lost on the way where neither the book nor the mold's method says. Common practice, no source. */
const USUAL_LOSS = 0.1;

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
    ...defined({ scaleGrams: tools.scale }),
    dropSpread: tools.spread.drop,
    spoonSpread: tools.spread.spoon,
    tolerance: fields.tolerance,
    ...defined({ plastic: fields.plastic }),
    loss: fields.loss ?? USUAL_LOSS,
    ...(fields.loss === undefined ? { lossByMethod: true as const } : {}),
    rejects: fields.rejects ?? 0,
    ...(tools.injector === undefined
      ? {}
      : { injector: { holdsMl: tools.injector.holds, leftMl: tools.injector.left } }),
    leftInCupMl: fields['left-in-cup'],
    marksMl: CUP_MARKS_ML[units.volume],
    cupMl: fields.cup,
    fill: fields.fill,
  };
}

/** How far a cup is filled, in words. */
export function filledText(settings: Pick<Settings, 'cupMl' | 'fill' | 'volume'>): string {
  const { cupMl, fill } = settings;
  return `${volumeText(filledMl(settings), settings)}, which is ${formatDecimal(fill * 100)} % of a cup of ${volumeText(cupMl, settings)}`;
}

/**
 * Settings with which the recipes can be checked: reports a cup of which nothing could be poured, since as much stays in it as it is filled
 * with, and lets nothing stay in it; and an injector that nothing comes out of, and reckons with none.
 */
export function withRoom(book: Thing<'book'> | undefined, settings: Settings, report: Report): Settings {
  if (!book) return settings;
  return withRoomInCup(book, withRoomInInjector(book, settings, report), report);
}

function withRoomInCup(book: Thing<'book'>, settings: Settings, report: Report): Settings {
  const { leftInCupMl } = settings;
  if (leftInCupMl < filledMl(settings)) return settings;
  report.add('book/left-in-cup', book, ['left-in-cup'], {
    found: `${volumeText(leftInCupMl, settings)} that stay in a cup`,
    expected: `less than ${filledText(settings)}`,
    why: 'a cup is filled so far, and what stays in it is not poured',
    fix: `write what is left in a cup after the last bait, or the size of your cups as \`cup: … ${settings.volume}\``,
  });
  return { ...settings, leftInCupMl: 0 };
}

function withRoomInInjector(book: Thing<'book'>, settings: Settings, report: Report): Settings {
  const { injector, ...others } = settings;
  if (injector === undefined || injector.leftMl < injector.holdsMl) return settings;
  report.add('book/injector', book, ['tools', 'injector'], {
    found: `${volumeText(injector.leftMl, settings)} left in an injector that holds ${volumeText(injector.holdsMl, settings)}`,
    expected: 'less than it holds',
    why: 'it shoots only what it holds above that',
    fix: `write what it draws as \`holds\` and what you scrape out of it as \`left\`, such as \`injector: { holds: ${settings.volume === 'ml' ? '60 ml, left: 8 ml' : '2 fl oz, left: 0.25 fl oz'} }\``,
  });
  return others;
}
