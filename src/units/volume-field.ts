/**
 * Volumes of plastic as a maker types them, in the book's unit. What is kept and computed with is ml.
 *
 * @packageDocumentation
 */
import { formatDecimal } from './format-quantity.ts';
import { readNumber } from './read-number.ts';
import { typedNumber } from './typed-number.ts';
import { UNITS, type Unit } from './unit.ts';
import type { VolumeUnit } from './volume-text.ts';

const ML_PER_OUNCE = UNITS['fl oz'].size;

// More than anybody types, and far more than a measuring cup shows.
const TYPED_DECIMALS = 6;

/** The book's unit written out, several of it. */
export function volumeUnitName({ volume }: VolumeUnit): 'millilitres' | 'fluid ounces' {
  return volume === 'ml' ? 'millilitres' : 'fluid ounces';
}

/**
 * A volume as a field shows it, without its unit: as it was typed, and in fluid ounces rounded where it was not typed in them.
 *
 * @param ml more than 0
 *
 * @example volumeInField(120, { volume: 'fl oz' }) // '4.06'
 */
export function volumeInField(ml: number, { volume }: VolumeUnit): string {
  if (volume === 'ml') return String(ml);
  const ounces = ml / ML_PER_OUNCE;
  return typedOunces(ml) ?? formatDecimal(ounces, ounces >= 10 ? 4 : 3);
}

/**
 * Fluid ounces of a volume that was typed in them, to the digit; undefined where they have more decimals than that.
 *
 * @example typedOunces(118.29411825) // '4'
 */
export function typedOunces(ml: number): string | undefined {
  return typedNumber(ml, ML_PER_OUNCE, TYPED_DECIMALS);
}

/**
 * Millilitres of what a field holds; NaN where that is no number, and 0 where it is nothing.
 *
 * @param before ml that the field showed: as long as it is not changed, it stands for them to the last digit
 *
 * @example mlInField('4.06', { volume: 'fl oz' }, 120) // 120
 */
export function mlInField(text: string, unit: VolumeUnit, before?: number): number {
  const typed = text.trim();
  if (before !== undefined && typed === volumeInField(before, unit)) return before;
  return (typed === '' ? 0 : readNumber(typed)) * (unit.volume === 'ml' ? 1 : ML_PER_OUNCE);
}

/** Limits of a volume, ml, in the book's unit: in fluid ounces rounded inwards, to two digits and to whole ones. */
export function volumeLimits(
  { least, most }: { readonly least: number; readonly most: number },
  { volume }: VolumeUnit,
): { readonly least: number; readonly most: number } {
  if (volume === 'ml') return { least, most };
  const ounces = least / ML_PER_OUNCE;
  const digit = 10 ** (Math.floor(Math.log10(ounces)) - 1);
  return {
    least: Number((Math.ceil(ounces / digit) * digit).toPrecision(2)),
    most: Math.floor(most / ML_PER_OUNCE),
  };
}

/** A volume in words that promise no more than there is: rounded down to 0.1 ml or 0.01 fl oz, and as finely in any other unit. */
export function noMoreThan(ml: number, unit: { readonly volume: Unit }): string {
  return stepped(ml, unit, (steps) => Math.floor(steps + STEP_ROUNDING));
}

/** A volume in words that ask for no less than is needed: rounded up to 0.1 ml or 0.01 fl oz. */
export function noLessThan(ml: number, unit: VolumeUnit): string {
  return stepped(ml, unit, (steps) => Math.ceil(steps - STEP_ROUNDING));
}

// A cup of 4 fl oz is one of 3.9999999999999996 by its millilitres.
const STEP_ROUNDING = 1e-9;

// A hundredth of a fluid ounce.
const COARSEST_STEP_ML = 0.3;

function stepped(ml: number, { volume }: { readonly volume: Unit }, whole: (steps: number) => number): string {
  const { size } = UNITS[volume];
  const steps = 10 ** Math.ceil(Math.log10(size / COARSEST_STEP_ML));
  return `${whole((steps * ml) / size) / steps} ${volume}`;
}
