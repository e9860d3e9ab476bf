import { formatDecimal } from './format-quantity.ts';

/** A mass for people, g: three digits, four from 100 g on, and kilograms from 1000 g on. */
export function massText(grams: number): string {
  if (grams >= 1000) return `${formatDecimal(grams / 1000)} kg`;
  return `${formatDecimal(grams, grams >= 100 ? 4 : 3)} g`;
}
