import type { FlakeProperties } from '../book/model/shelf.ts';
import type { Settings } from '../book/model.ts';
import { formatDecimal } from '../units/format-quantity.ts';
import { UNITS } from '../units/unit.ts';

/** A size of flake as the bag has it. */
export function inches(mm: number): string {
  return `${(mm / UNITS.in.size).toFixed(3)} in`;
}

/** Thickness of a flake's film as its makers state it: thousandths of an inch in a book in fluid ounces, else hundredths of a millimetre. */
export function filmText(mm: number, { volume }: Pick<Settings, 'volume'>): string {
  return volume === 'ml' ? `${formatDecimal(mm, 2)} mm` : `${formatDecimal(mm / UNITS.in.size, 2)} in`;
}

/** A flake's size as the bag has it, in a book of millilitres in millimetres too; of a strip its length as well. */
export function flakeSizeText(
  { acrossMm, longMm }: Pick<FlakeProperties, 'acrossMm' | 'longMm'>,
  { volume }: Pick<Settings, 'volume'>,
): string {
  const metric = volume === 'ml';
  const across = `${inches(acrossMm)}${metric ? ` = ${acrossMm.toFixed(2)} mm` : ''}`;
  if (longMm === undefined) return across;
  return `${across}, ${metric ? `${longMm.toFixed(1)} mm` : inches(longMm)} long`;
}
