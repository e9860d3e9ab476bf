import type { Settings } from '../book/model.ts';
import { formatDecimal } from '../units/format-quantity.ts';

const MM_PER_INCH = 25.4;

/** A length in the unit of the book's measures: inches in a book in fluid ounces, else millimetres. No more digits than a rule shows. */
export function lengthText(mm: number, { volume }: Pick<Settings, 'volume'>): string {
  if (volume === 'ml') return `${formatDecimal(mm)} mm`;
  return `${Number((mm / MM_PER_INCH).toFixed(3))} in`;
}
