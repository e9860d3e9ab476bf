/**
 * A thickness as a maker types it, in the unit of the book's lengths: inches in a book of fluid ounces, else millimetres. What is kept and
 * computed with is mm.
 *
 * @packageDocumentation
 */
import { formatDecimal } from '../../units/format-quantity.ts';
import { readNumber } from '../../units/read-number.ts';
import { typedNumber } from '../../units/typed-number.ts';
import { UNITS } from '../../units/unit.ts';
import type { VolumeUnit } from '../../units/volume-text.ts';
import { fromTo, isWithin, LIMITS, numberOf } from './limits.ts';

const MM_PER_INCH = UNITS.in.size;

// A thousandth of an inch is finer than anybody sees, and four decimals more than anybody types.
const TYPED_DECIMALS = 4;

/** The unit of the book's lengths, as a label has it. */
export function lengthUnit({ volume }: VolumeUnit): 'mm' | 'in' {
  return volume === 'ml' ? 'mm' : 'in';
}

/**
 * A thickness as its field shows it, without its unit: as it was typed, and in inches rounded where it was not typed in them.
 *
 * @param mm more than 0
 *
 * @example thicknessInField(8, { volume: 'fl oz' }) // '0.315'
 */
export function thicknessInField(mm: number, { volume }: VolumeUnit): string {
  if (volume === 'ml') return String(mm);
  return typedInches(mm) ?? formatDecimal(mm / MM_PER_INCH);
}

/** Limits of a thickness in the unit of its field; in inches rounded inwards. */
export function thicknessLimits({ volume }: VolumeUnit): { readonly least: number; readonly most: number } {
  const { least, most } = LIMITS.thicknessMm;
  if (volume === 'ml') return { least, most };
  return { least: Math.ceil((1000 * least) / MM_PER_INCH) / 1000, most: Math.floor(most / MM_PER_INCH) };
}

/**
 * A thickness as it was typed, in mm, or a sentence where it is none within its limits.
 *
 * @param before mm that its field showed: as long as it is not changed, it stands for them to the last digit
 */
export function thicknessOf(text: string, unit: VolumeUnit, before?: number): number | string {
  if (unit.volume === 'ml') return numberOf(text, 'thicknessMm');
  const typed = text.trim();
  if (before !== undefined && typed === thicknessInField(before, unit)) return before;
  const mm = readNumber(typed) * MM_PER_INCH;
  if (isWithin('thicknessMm', mm)) return mm;
  return `${LIMITS.thicknessMm.what} is a number ${fromTo(thicknessLimits(unit))}, in inches.`;
}

/** A thickness as the file of a target has it, with its unit: as it was typed. What was not typed in inches is in mm. */
export function exactThickness(mm: number, { volume }: VolumeUnit): string {
  const inches = volume === 'ml' ? undefined : typedInches(mm);
  return inches === undefined ? `${formatDecimal(mm, 4)} mm` : `${inches} in`;
}

function typedInches(mm: number): string | undefined {
  return typedNumber(mm, MM_PER_INCH, TYPED_DECIMALS);
}
