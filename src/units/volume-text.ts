import { formatDecimal } from './format-quantity.ts';
import { UNITS } from './unit.ts';

/** Unit in which a book shows volumes of plastic. */
export interface VolumeUnit {
  readonly volume: 'ml' | 'fl oz';
}

/** What the marks of a measuring cup are apart, ml: 5 ml, or a quarter of a fluid ounce. Common practice, no source. */
export const CUP_MARKS_ML = { ml: 5, 'fl oz': UNITS['fl oz'].size / 4 } as const satisfies Record<
  VolumeUnit['volume'],
  number
>;

// A volume as it comes off a cup's marks is told to the mark, kept to four decimals of a millilitre too.
const MARKS = 4;
const ROUNDING = 1e-5;

/**
 * A volume of plastic in the book's unit: two digits, from 10 fl oz three, and every quarter of a fluid ounce as it is.
 *
 * @example volumeText(120, { volume: 'fl oz' }) // '4.1 fl oz'
 */
export function volumeText(ml: number, { volume }: VolumeUnit): string {
  if (volume === 'ml') return `${ml >= 20 ? Math.round(ml) : formatDecimal(ml, 2)} ml`;
  const ounces = ml / UNITS['fl oz'].size;
  const quarters = Math.round(MARKS * ounces);
  if (Math.abs(MARKS * ounces - quarters) < ROUNDING) return `${quarters / MARKS} fl oz`;
  return `${formatDecimal(ounces, ounces >= 10 ? 3 : 2)} fl oz`;
}
