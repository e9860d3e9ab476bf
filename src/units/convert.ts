import type { Quantity } from './quantity.ts';
import { type Dimension, UNITS } from './unit.ts';

function inDimension(quantity: Quantity, dimension: Dimension): number {
  const unit = UNITS[quantity.unit];
  if (unit.dimension !== dimension)
    throw new RangeError(`${quantity.unit} measures ${unit.dimension}, not ${dimension}`);
  return quantity.amount * unit.size;
}

/** Millilitres of a volume. Throws RangeError for anything but a volume. */
export function millilitres(quantity: Quantity): number {
  return inDimension(quantity, 'volume');
}

/** Grams of a mass. Throws RangeError for anything but a mass. */
export function grams(quantity: Quantity): number {
  return inDimension(quantity, 'mass');
}

/** Millimetres of a length. Throws RangeError for anything but a length. */
export function millimetres(quantity: Quantity): number {
  return inDimension(quantity, 'length');
}

/** Minutes of a time. Throws RangeError for anything but a time. */
export function minutes(quantity: Quantity): number {
  return inDimension(quantity, 'duration');
}

/** A share as a fraction of 1. Throws RangeError for anything but `%` or `phr`. */
export function fraction(quantity: Quantity): number {
  return inDimension(quantity, 'part');
}

/** Degrees Celsius of a temperature. Throws RangeError for anything but a temperature. */
export function celsius(quantity: Quantity): number {
  const degrees = inDimension(quantity, 'temperature');
  return quantity.unit === '°F' ? degrees - (32 * 5) / 9 : degrees;
}

/** Degrees Fahrenheit of a temperature in degrees Celsius. */
export function fahrenheit(degreesCelsius: number): number {
  return (degreesCelsius * 9) / 5 + 32;
}
