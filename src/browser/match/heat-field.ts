import { celsius, fahrenheit } from '../../units/convert.ts';
import type { TemperatureUnit } from '../../units/format-quantity.ts';
import { readNumber } from '../../units/read-number.ts';
import { LIMITS } from './limits.ts';

/** The lowest and the highest temperature that a field takes, in whole degrees of the book's unit. */
export function heatLimits(unit: TemperatureUnit): { readonly least: number; readonly most: number } {
  const { least, most } = LIMITS.celsius;
  return unit === '°C' ? { least, most } : { least: Math.ceil(fahrenheit(least)), most: Math.floor(fahrenheit(most)) };
}

/** A temperature as it was typed in the book's unit, in °C, or a sentence where no cup has it. */
export function celsiusInField(text: string, unit: TemperatureUnit): number | string {
  const amount = readNumber(text);
  const { least, most } = heatLimits(unit);
  if (amount >= least && amount <= most) return celsius({ amount, unit });
  return `A cup is heated to a number from ${least} to ${most}, in ${unit}. Was it read in the other unit?`;
}

/** A temperature as its field shows it. */
export function heatInField(degreesCelsius: number, unit: TemperatureUnit): string {
  return String(Number((unit === '°C' ? degreesCelsius : fahrenheit(degreesCelsius)).toPrecision(6)));
}
