import { fahrenheit } from './convert.ts';
import type { Quantity, Rate } from './quantity.ts';
import { isRate } from './quantity.ts';

const THIRTY_SECONDS: Readonly<Record<number, string>> = {
  1: '1/32',
  2: '1/16',
  4: '1/8',
  8: '1/4',
  12: '3/8',
  16: '1/2',
  20: '5/8',
  24: '3/4',
  28: '7/8',
};

/** A number with a fraction where kitchen spoons have one, otherwise with at most three significant digits. */
export function formatNumber(number: number): string {
  const whole = Math.floor(number + 1e-9);
  const thirtySeconds = (number - whole) * 32;
  const part = THIRTY_SECONDS[Math.round(thirtySeconds)];
  if (part !== undefined && Math.abs(thirtySeconds - Math.round(thirtySeconds)) < 1e-6) {
    return whole === 0 ? part : `${whole} ${part}`;
  }
  return formatDecimal(number);
}

/** A number in plain decimals: three significant digits, no exponent, no trailing zeros. */
export function formatDecimal(number: number, digits = 3): string {
  if (number === 0) return '0';
  const magnitude = Math.floor(Math.log10(Math.abs(number)));
  const places = Math.max(0, digits - 1 - magnitude);
  const text = number.toFixed(Math.min(places, 8));
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}

const SPOKEN_PLURAL: ReadonlySet<string> = new Set(['drop', 'cup', 'smidgen']);

/**
 * A quantity as the book writes it; `parseQuantity` reads it back to within the digits shown.
 *
 * @example formatQuantity({ amount: 1.5, unit: 'tsp' }) // '1 1/2 tsp'
 */
export function formatQuantity({ amount, unit }: Quantity): string {
  const spoon = unit === 'tsp' || unit === 'tbsp' || unit === 'cup';
  const number = spoon ? formatNumber(amount) : formatDecimal(amount, unit === 'drop' ? 4 : 3);
  const plural =
    amount === 1 || number === '1'
      ? ''
      : unit === 'pinch' || unit === 'dash'
        ? 'es'
        : SPOKEN_PLURAL.has(unit)
          ? 's'
          : '';
  return `${number} ${unit}${plural}`;
}

/** A dose as the book writes it: `12 drops`, `10 drops per 4 fl oz`. */
export function formatDose(dose: Quantity | Rate): string {
  return isRate(dose) ? `${formatQuantity(dose.quantity)} per ${formatQuantity(dose.per)}` : formatQuantity(dose);
}

/** A unit of temperature. */
export type TemperatureUnit = '°C' | '°F';

// A limit of 340 °F is one of 339.99999999999994 by its degrees Celsius.
const DEGREE_ROUNDING = 1e-6;

/** A temperature in the book's unit, to the whole degree: `171 °C`, `340 °F`. What may not be exceeded is rounded `down`. */
export function formatTemperature(
  degreesCelsius: number,
  unit: TemperatureUnit,
  rounded: 'nearest' | 'down' = 'nearest',
): string {
  const degrees = unit === '°F' ? fahrenheit(degreesCelsius) : degreesCelsius;
  return `${rounded === 'down' ? Math.floor(degrees + DEGREE_ROUNDING) : Math.round(degrees)} ${unit}`;
}
