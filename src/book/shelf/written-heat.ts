import type { FieldPath } from '../../recipe/field-path.ts';
import type { Thing } from '../../recipe/read-thing.ts';
import { formatTemperature, type TemperatureUnit } from '../../units/format-quantity.ts';
import { inOtherScale } from '../../units/other-scale.ts';
import { parseQuantity } from '../../units/parse-quantity.ts';
import { isFault } from '../../units/quantity.ts';

/** A temperature of a file, as its maker wrote it and as the book tells it. */
export interface WrittenHeat {
  /** `330 °C`; with the book's unit behind it where that is another: `330 °C (626 °F)`. */
  readonly text: string;
  /** What it is if the other scale was meant, and how the book writes that. */
  readonly other: { readonly text: string; readonly celsius: number };
}

/** The temperature, in °C, that stands at a place of a file. */
export function writtenHeat(
  thing: Pick<Thing, 'written'>,
  path: FieldPath,
  degrees: number,
  unit: TemperatureUnit,
): WrittenHeat {
  const words = thing.written(path)?.trim() ?? '';
  const parsed = parseQuantity(words, ['temperature']);
  const [text, written] = isFault(parsed)
    ? [`${degrees} °C`, { amount: degrees, unit: '°C' } as const]
    : [words, parsed];
  const other = inOtherScale(written);
  return {
    text: written.unit === unit ? text : `${text} (${formatTemperature(degrees, unit)})`,
    other: written.unit === '°F' && unit === '°F' ? { ...other, text: formatTemperature(other.celsius, unit) } : other,
  };
}
