import { grams, millilitres } from './convert.ts';
import { isRate, type Quantity, type Rate } from './quantity.ts';
import { UNITS } from './unit.ts';

/** How a material is weighed out: what turns drops and spoons of it into grams. */
export interface Handling {
  /** Mass of one drop in grams. */
  readonly gramsPerDrop: number;
  /** Mass of a millilitre as it is measured: a liquid's density, or a powder's or flake's bulk density, g/ml. */
  readonly gramsPerMl: number;
}

/**
 * Grams of a material in a dose for a cup.
 *
 * A volume is as measured in a spoon, so it takes the bulk density. `%` and `phr` are shares of the plastic's mass:
 * both count against the plastic alone, as is usual where additions are made to a cup of plastic (2 % = 2 phr).
 *
 * @param plastic the cup's plastic: its volume in ml and its mass in g
 */
export function gramsOfDose(dose: Quantity | Rate, handling: Handling, plastic: { ml: number; grams: number }): number {
  if (isRate(dose)) {
    return (gramsOfDose(dose.quantity, handling, plastic) * plastic.ml) / millilitres(dose.per);
  }
  switch (UNITS[dose.unit].dimension) {
    case 'drop':
      return dose.amount * handling.gramsPerDrop;
    case 'volume':
      return millilitres(dose) * handling.gramsPerMl;
    case 'mass':
      return grams(dose);
    case 'part':
      return dose.amount * UNITS[dose.unit].size * plastic.grams;
    default:
      throw new RangeError(`a dose cannot be counted in ${dose.unit}`);
  }
}
