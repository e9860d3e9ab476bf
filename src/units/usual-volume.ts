import { millilitres } from './convert.ts';
import { formatQuantity } from './format-quantity.ts';
import type { Quantity } from './quantity.ts';
import type { VolumeUnit } from './volume-text.ts';

/** The volume of plastic that doses are stated for, in the book's unit: 100 ml, or 4 fl oz. */
export function usualVolume({ volume }: VolumeUnit): {
  readonly quantity: Quantity;
  readonly ml: number;
  readonly text: string;
} {
  const quantity: Quantity = { amount: volume === 'ml' ? 100 : 4, unit: volume };
  return { quantity, ml: millilitres(quantity), text: formatQuantity(quantity) };
}
