/** Whatever the laws of the optics are tried on. */
import fc from 'fast-check';
import { BAND_COUNT, type Spectrum } from '../../src/optics/spectrum.ts';

/** A reflectance, the ends included. */
export const reflectance: fc.Arbitrary<number> = fc.oneof(
  fc.double({ min: 0, max: 1, noNaN: true }),
  fc.constantFrom(0, 1),
);

/** A coefficient or a thickness of any size that a material could have, or none. */
export const magnitude: fc.Arbitrary<number> = fc.oneof(
  { weight: 9, arbitrary: fc.double({ min: -6, max: 3, noNaN: true }).map((power) => 10 ** power) },
  { weight: 1, arbitrary: fc.constant(0) },
);

/** From nothing to the largest that the formulas take. */
export const extreme: fc.Arbitrary<number> = fc.oneof(
  magnitude,
  fc.constantFrom(0, Number.MIN_VALUE, 1e-300, 1e-160, 1e-9, 1e6, 1e9),
);

/** A thickness above 0. */
export const thickness: fc.Arbitrary<number> = fc.double({ min: -2, max: 2, noNaN: true }).map((power) => 10 ** power);

/** A spectrum of a quantity. */
export function spectrum(quantity: fc.Arbitrary<number>): fc.Arbitrary<Spectrum> {
  return fc
    .array(quantity, { minLength: BAND_COUNT, maxLength: BAND_COUNT })
    .map((values) => Float64Array.from(values));
}

/** A colour of the screen. */
export const hex: fc.Arbitrary<string> = fc
  .tuple(fc.nat(255), fc.nat(255), fc.nat(255))
  .map((channels) => `#${channels.map((channel) => channel.toString(16).padStart(2, '0')).join('')}`);
