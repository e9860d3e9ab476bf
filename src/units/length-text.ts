import { formatDecimal } from './format-quantity.ts';
import { UNITS } from './unit.ts';
import type { VolumeUnit } from './volume-text.ts';

const MM_PER_INCH = UNITS.in.size;
const MM_PER_FOOT = 12 * MM_PER_INCH;

// Thousandths of an inch, and the marks of a rule.
const WRITTEN = [1000, 64] as const;
const ROUNDING = 1e-6;

/** Inches as somebody wrote them; what comes from millimetres, to the hundredth or two digits. */
function inchText(inches: number): string {
  const isWritten = WRITTEN.some((parts) => Math.abs(parts * inches - Math.round(parts * inches)) < ROUNDING * parts);
  return isWritten ? `${Number(inches.toFixed(3))}` : formatDecimal(inches, inches >= 1 ? 3 : 2);
}

/**
 * A length in the unit of the book's measures: inches in a book in fluid ounces, else millimetres. No more digits than a rule shows.
 *
 * @example lengthText(9.525, { volume: 'fl oz' }) // '0.375 in'
 * @example lengthText(6, { volume: 'fl oz' }) // '0.24 in'
 */
export function lengthText(mm: number, { volume }: VolumeUnit): string {
  if (volume === 'ml') return `${formatDecimal(mm)} mm`;
  return `${inchText(mm / MM_PER_INCH)} in`;
}

/** A depth of water in the unit that goes with it: feet in a book in fluid ounces, else metres. */
export function depthText(metres: number, { volume }: VolumeUnit): string {
  if (volume === 'ml') return `${formatDecimal(metres)} m`;
  return `${Number(((metres * 1000) / MM_PER_FOOT).toPrecision(2))} ft`;
}
