import { celsius } from './convert.ts';
import type { Quantity } from './quantity.ts';
import { UNITS } from './unit.ts';

/** A temperature with the other scale behind its number, in °C: 330 °C read as 330 °F is 165.6 °C. */
export function inOtherScale({ amount, unit }: Quantity): { readonly text: string; readonly celsius: number } {
  if (UNITS[unit].dimension !== 'temperature') throw new RangeError(`${unit} measures no temperature`);
  const other = { amount, unit: unit === '°F' ? '°C' : '°F' } as const;
  return { text: `${amount} ${other.unit}`, celsius: celsius(other) };
}
