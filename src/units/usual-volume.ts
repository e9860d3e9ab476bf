import { UNITS } from './unit.ts';
import type { VolumeUnit } from './volume-text.ts';

/** The volume of plastic that doses are stated for, in the book's unit: 100 ml, or 4 fl oz. */
export function usualVolume({ volume }: VolumeUnit): { readonly ml: number; readonly text: string } {
  return volume === 'ml' ? { ml: 100, text: '100 ml' } : { ml: 4 * UNITS['fl oz'].size, text: '4 fl oz' };
}
