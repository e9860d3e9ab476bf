import { formatDecimal } from './format-quantity.ts';
import { UNITS } from './unit.ts';

/** A mass for people, g: three digits, four from 100 g on, and kilograms from 1000 g on. */
export function massText(grams: number): string {
  if (grams >= 1000) return `${formatDecimal(grams / 1000)} kg`;
  return `${formatDecimal(grams, grams >= 100 ? 4 : 3)} g`;
}

// Less than ten steps of a scale of hundredths of an ounce: what is so little is told in grams, as measures are.
const LEAST_OUNCES = 0.1;

/**
 * A mass of what is bought in ounces or pounds: three digits, pounds from one on, and grams where a scale in ounces hardly shows it. Unit: g.
 *
 * @example ounceText(453.59237) // '1 lb'
 * @example ounceText(418.1) // '14.7 oz'
 * @example ounceText(0.68) // '0.68 g'
 */
export function ounceText(grams: number): string {
  const ounces = grams / UNITS.oz.size;
  const shown = formatDecimal(ounces);
  if (Number(shown) * UNITS.oz.size >= UNITS.lb.size) return `${formatDecimal(Math.max(1, grams / UNITS.lb.size))} lb`;
  return grams === 0 || ounces >= LEAST_OUNCES ? `${shown} oz` : massText(grams);
}
