import { formatDecimal } from './format-quantity.ts';
import { UNITS } from './unit.ts';

/** Unit in which a book shows volumes of plastic. */
export interface VolumeUnit {
  readonly volume: 'ml' | 'fl oz';
}

/**
 * A volume of plastic in the book's unit.
 *
 * @example volumeText(120, { volume: 'fl oz' }) // '4.1 fl oz'
 */
export function volumeText(ml: number, { volume }: VolumeUnit): string {
  if (volume === 'ml') return `${ml >= 20 ? Math.round(ml) : formatDecimal(ml, 2)} ml`;
  const ounces = ml / UNITS['fl oz'].size;
  return `${formatDecimal(ounces, ounces >= 10 ? 3 : 2)} fl oz`;
}
