import type { Settings } from '../book/model.ts';
import { formatDecimal } from '../units/format-quantity.ts';
import { UNITS } from '../units/unit.ts';

const MM_PER_INCH = UNITS.in.size;
const MM_PER_FOOT = 12 * MM_PER_INCH;

/** A length in the unit of the book's measures: inches in a book in fluid ounces, else millimetres. No more digits than a rule shows. */
export function lengthText(mm: number, { volume }: Pick<Settings, 'volume'>): string {
  if (volume === 'ml') return `${formatDecimal(mm)} mm`;
  return `${Number((mm / MM_PER_INCH).toFixed(3))} in`;
}

/** A depth of water in the unit that goes with it: feet in a book in fluid ounces, else metres. */
export function depthText(metres: number, { volume }: Pick<Settings, 'volume'>): string {
  if (volume === 'ml') return `${formatDecimal(metres)} m`;
  return `${Number(((metres * 1000) / MM_PER_FOOT).toPrecision(2))} ft`;
}
