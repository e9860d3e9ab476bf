/**
 * From a spectrum to what an eye makes of it: tristimulus values of the CIE 1931 2° observer.
 *
 * Plain sums over the bands at hand, and the white of the same sums, so that a perfect reflector is exactly white on every
 * grid. Only F11 and LED-B1, whose lines a step of 10 nm would jump over, share their power between two bands out to the two,
 * as if the reflectance ran straight from one to the next. (The white of D65 on the grid of this book is 0.950119, 1, 1.088161; on 380–780 nm at 5 nm it is 0.950430, 1,
 * 1.088801.)
 * Source: CIE 015, section 7.
 */
import { ILLUMINANTS } from '../tables/illuminants.ts';
import { LIGHTS, type Light } from '../tables/lights.ts';
import { COLOUR_MATCHING_FUNCTIONS } from '../tables/observer.ts';
import { BAND_COUNT, requireBands, WAVELENGTHS } from './spectrum.ts';

/** Tristimulus values, Y of white = 1. */
export interface Tristimulus {
  readonly X: number;
  readonly Y: number;
  readonly Z: number;
}

/** What to multiply the bands of a reflectance with, one array for each of X, Y and Z. */
export interface ObserverWeights {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly z: Float64Array;
  /** Tristimulus values of a perfect reflector: the sums of the weights; Y = 1. */
  readonly white: Tristimulus;
}

/** Lights whose power is in narrow lines. */
const LINES: readonly Light[] = ['F11', 'LED-B1'];

/**
 * Weights of the observer under a light, for a grid other than the book's.
 *
 * Units: wavelengths in nm, each one of 380, 385 … 780, rising in equal steps.
 * Throws: RangeError if a wavelength is not in the tables, or the steps are unequal.
 *
 * @example observerWeights([400, 500, 600, 700], 'D65').white.Y // 1
 */
export function observerWeights(wavelengths: ArrayLike<number>, light: Light = 'D65'): ObserverWeights {
  const count = wavelengths.length;
  const x = new Float64Array(count);
  const y = new Float64Array(count);
  const z = new Float64Array(count);
  const column = 1 + LIGHTS.indexOf(light);
  if (column === 0) throw new RangeError(`Unknown light ${light}; give one of ${LIGHTS.join(', ')}`);
  for (let i = 0; i < count; i++) {
    const row = (wavelengths[i]! - 380) / 5;
    const equalSteps = i < 2 || wavelengths[i]! - wavelengths[i - 1]! === wavelengths[1]! - wavelengths[0]!;
    if (!COLOUR_MATCHING_FUNCTIONS[row] || !equalSteps || (i === 1 && !(wavelengths[1]! > wavelengths[0]!))) {
      throw new RangeError(
        `Wavelength ${i + 1} is ${wavelengths[i]} nm; give equal steps among 380, 385 … 780 nm, or resampleSpectrum first`,
      );
    }
    const step = count > 1 ? (wavelengths[1]! - wavelengths[0]!) / 5 : 1;
    const reach = LINES.includes(light) ? step - 1 : 0;
    for (let near = row - reach; near <= row + reach; near++) {
      const functions = COLOUR_MATCHING_FUNCTIONS[near];
      if (!functions) continue;
      const power = ILLUMINANTS[near]![column]! * (1 - Math.abs(near - row) / step);
      x[i]! += power * functions[1];
      y[i]! += power * functions[2];
      z[i]! += power * functions[3];
    }
  }
  const total = sum(y);
  if (!(total > 0)) throw new RangeError('No wavelengths; give at least one');
  for (let i = 0; i < count; i++) {
    x[i]! /= total;
    y[i]! /= total;
    z[i]! /= total;
  }
  return { x, y, z, white: { X: sum(x), Y: 1, Z: sum(z) } };
}

const BOOK_WEIGHTS: ReadonlyMap<Light, ObserverWeights> = new Map(
  LIGHTS.map((light) => [light, observerWeights(WAVELENGTHS, light)]),
);

/**
 * Weights of the book's own grid, made once. Don't write into them.
 *
 * Throws: RangeError if there is no such light.
 */
export function bookWeights(light: Light = 'D65'): ObserverWeights {
  const weights = BOOK_WEIGHTS.get(light);
  if (!weights) throw new RangeError(`Unknown light ${light}; give one of ${LIGHTS.join(', ')}`);
  return weights;
}

/**
 * Tristimulus values of a reflectance under a light.
 *
 * Throws: RangeError if R has not 36 bands, or there is no such light.
 *
 * @example tristimulus(constantSpectrum(0.5)).Y // 0.5
 */
export function tristimulus(R: ArrayLike<number>, light: Light = 'D65'): Tristimulus {
  requireBands(R, 'reflectance');
  const sums = new Float64Array(3);
  addTristimulus(R, 1, bookWeights(light), sums);
  return { X: sums[0]!, Y: sums[1]!, Z: sums[2]! };
}

/** Adds so many times X, Y and Z of a spectrum of 36 bands to three sums: for loops that make no object, and ask nothing. */
export function addTristimulus(
  spectrum: ArrayLike<number>,
  times: number,
  { x, y, z }: ObserverWeights,
  sums: Float64Array,
): void {
  let X = 0;
  let Y = 0;
  let Z = 0;
  for (let band = 0; band < BAND_COUNT; band++) {
    const value = spectrum[band]!;
    X += x[band]! * value;
    Y += y[band]! * value;
    Z += z[band]! * value;
  }
  sums[0]! += times * X;
  sums[1]! += times * Y;
  sums[2]! += times * Z;
}

/**
 * Tristimulus values of a perfect reflector under a light, on the book's grid.
 *
 * @example whitePoint('D65').Y // 1
 */
export function whitePoint(light: Light = 'D65'): Tristimulus {
  return bookWeights(light).white;
}

function sum(values: Float64Array): number {
  let total = 0;
  for (const value of values) total += value;
  return total;
}
