/**
 * Amounts as a maker's file has them: what is written here is read back as the same number, to its last bit.
 *
 * @packageDocumentation
 */
import { celsius, fahrenheit, fraction, grams, millilitres, millimetres, minutes } from './convert.ts';
import { formatQuantity } from './format-quantity.ts';
import { DOSE_DIMENSIONS, parseQuantity } from './parse-quantity.ts';
import { isFault, isRate, type Quantity, type Rate } from './quantity.ts';
import { type Dimension, UNITS, type Unit } from './unit.ts';

/**
 * The fewest digits that are read back as this number, without an exponent, which no file of a book may have.
 *
 * @example plainDecimal(1e-7) // '0.0000001'
 */
export function plainDecimal(number: number): string {
  const [, sign = '', whole = '', decimals = '', exponent] =
    /^(-?)(\d+)(?:\.(\d+))?(?:e([-+]\d+))?$/.exec(String(number)) ?? [];
  if (exponent === undefined) return String(number);
  const digits = whole + decimals;
  const point = whole.length + Number(exponent);
  if (point <= 0) return `${sign}0.${'0'.repeat(-point)}${digits}`;
  return point >= digits.length
    ? sign + digits.padEnd(point, '0')
    : `${sign}${digits.slice(0, point)}.${digits.slice(point)}`;
}

/** A unit that a size may be written in: how many of it there are, and what so many of it are. */
interface Scale {
  readonly unit: Unit;
  readonly count: (size: number) => number;
  readonly size: (quantity: Quantity) => number;
}

const scale = (unit: Unit, size: (quantity: Quantity) => number): Scale => ({
  unit,
  count: (of) => of / UNITS[unit].size,
  size,
});

const VOLUMES = [scale('ml', millilitres), scale('fl oz', millilitres)];
const MASSES = [scale('g', grams), scale('oz', grams)];
const LENGTHS = [scale('mm', millimetres), scale('in', millimetres)];
const TEMPERATURES = [scale('°C', celsius), { unit: '°F', count: fahrenheit, size: celsius } as const];
const DURATIONS = [scale('min', minutes), scale('h', minutes), scale('s', minutes)];
const SHARES = [scale('%', fraction)];

/**
 * A volume in ml as a file has it: in ml, or in fluid ounces where those are fewer digits, as they are where it was typed in them.
 *
 * @example writtenVolume(4 * UNITS['fl oz'].size) // '4 fl oz'
 */
export function writtenVolume(ml: number): string {
  return written(ml, VOLUMES);
}

/** A mass in g: in g or oz. */
export function writtenMass(mass: number): string {
  return written(mass, MASSES);
}

/** A length in mm: in mm or in. */
export function writtenLength(mm: number): string {
  return written(mm, LENGTHS);
}

/** A temperature in °C: in °C or °F. */
export function writtenTemperature(degreesCelsius: number): string {
  return written(degreesCelsius, TEMPERATURES);
}

/**
 * A time in minutes: in minutes, hours or seconds.
 *
 * @example writtenDuration(0.5) // '30 s'
 */
export function writtenDuration(time: number): string {
  return written(time, DURATIONS);
}

/** A share as a fraction of 1, in per cent: `40%`. */
export function writtenShare(share: number): string {
  return written(share, SHARES).replace(' %', '%');
}

/** An amount in its own unit: in the book's words where they are read as exactly this, else to all its digits. */
export function writtenQuantity(quantity: Quantity): string {
  const { amount, unit } = quantity;
  const words = formatQuantity(quantity);
  const read = parseQuantity(words, EVERY_DIMENSION, 'none');
  return !isFault(read) && read.amount === amount ? words : `${plainDecimal(amount)} ${unit}`;
}

const EVERY_DIMENSION: readonly Dimension[] = [...DOSE_DIMENSIONS, 'length', 'temperature', 'duration'];

/** A dose: `12 drops`, `10 drops per 4 fl oz`. */
export function writtenDose(dose: Quantity | Rate): string {
  return isRate(dose) ? `${writtenQuantity(dose.quantity)} per ${writtenQuantity(dose.per)}` : writtenQuantity(dose);
}

function written(size: number, scales: readonly Scale[]): string {
  const texts = scales.flatMap((each) => {
    const number = exactly(size, each);
    return number === undefined ? [] : [{ number, unit: each.unit }];
  });
  const [shortest] = texts.sort((one, other) => one.number.length - other.number.length);
  if (shortest === undefined) throw new RangeError(`${size} cannot be written in ${scales[0]!.unit}`);
  return `${shortest.number} ${shortest.unit}`;
}

/** The fewest digits that are read as this size; undefined where none are, or where a file may not have them. */
function exactly(wanted: number, { unit, count, size }: Scale): string | undefined {
  const near = count(wanted);
  if (!(near > 0)) return undefined;
  for (let digits = 1; digits <= MOST_DIGITS; digits++) {
    const number = Number(near.toPrecision(digits));
    if (size({ amount: number, unit }) === wanted) return plainDecimal(number);
  }
  // What was converted and back again may be a neighbour of what it was, in either of the two.
  const slope = count(1) - count(0);
  const step = Math.max(ulp(near), ulp(wanted) * slope);
  const corrected = near + (wanted - size({ amount: near, unit })) * slope;
  const found = [0, 1, -1, 2, -2]
    .map((steps) => corrected + (steps / 2) * step)
    .find((number) => number > 0 && size({ amount: number, unit }) === wanted);
  return found === undefined ? undefined : plainDecimal(found);
}

/** From a number to the next that a computer has, at most. */
const ulp = (number: number): number => 2 ** (Math.floor(Math.log2(Math.abs(number))) - MANTISSA_BITS);

// Of a double.
const MOST_DIGITS = 17;
const MANTISSA_BITS = 52;
