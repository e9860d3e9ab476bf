import { celsius, fahrenheit } from './convert.ts';
import type { Quantity } from './quantity.ts';
import { type Dimension, UNITS } from './unit.ts';

/**
 * Least and most of each dimension: wider than anything that a bench or a shop has, so that a digit too many or a wrong unit is told
 * where it stands, and the optics can compute with the rest. Convention of this book.
 */
const BOUNDS: Readonly<Record<Dimension, readonly [least: Quantity, most: Quantity]>> = {
  volume: [
    { amount: 0.001, unit: 'ml' },
    { amount: 1000, unit: 'l' },
  ],
  mass: [
    { amount: 0.1, unit: 'mg' },
    { amount: 1000, unit: 'kg' },
  ],
  length: [
    { amount: 0.001, unit: 'mm' },
    { amount: 1000, unit: 'mm' },
  ],
  temperature: [
    { amount: -20, unit: '°C' },
    { amount: 500, unit: '°C' },
  ],
  duration: [
    { amount: 1, unit: 's' },
    { amount: 100, unit: 'h' },
  ],
  drop: [
    { amount: 0.01, unit: 'drop' },
    { amount: 100_000, unit: 'drop' },
  ],
  part: [
    { amount: 0.0001, unit: '%' },
    { amount: 1000, unit: '%' },
  ],
};

// What is converted from another unit may miss a bound by rounding.
const ROUNDING = 1e-9;

/** The bounds of a quantity's dimension in words, such as "from 0.001 ml to 1000 l", if it lies beyond them. */
export function boundsMissed(quantity: Quantity): string | undefined {
  const [least, most] = BOUNDS[UNITS[quantity.unit].dimension];
  const [low, size, high] = [least, quantity, most].map(inBaseUnit) as [number, number, number];
  return size >= low - ROUNDING * Math.abs(low) && size <= high * (1 + ROUNDING)
    ? undefined
    : `from ${written(inUnitOf(least, quantity))} to ${written(inUnitOf(most, quantity))}`;
}

function inBaseUnit(quantity: Quantity): number {
  const { dimension, size } = UNITS[quantity.unit];
  return dimension === 'temperature' ? celsius(quantity) : quantity.amount * size;
}

/** A temperature in the unit of another; any other quantity as it is. */
function inUnitOf(bound: Quantity, { unit }: Quantity): Quantity {
  return unit === '°F' && bound.unit === '°C' ? { amount: fahrenheit(bound.amount), unit } : bound;
}

function written({ amount, unit }: Quantity): string {
  return `${amount} ${unit}${unit === 'drop' ? 's' : ''}`;
}
