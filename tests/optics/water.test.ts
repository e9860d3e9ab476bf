import Color from 'colorjs.io';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { labFromHex } from '../../src/optics/display.ts';
import { constantSpectrum, WAVELENGTHS } from '../../src/optics/spectrum.ts';
import { reflectanceFromHex } from '../../src/optics/upsampling.ts';
import { lightAtDepth, seenAtDepth, WATERS, type WaterType } from '../../src/optics/water.ts';
import { ILLUMINANTS } from '../../src/tables/illuminants.ts';
import { COLOUR_MATCHING_FUNCTIONS } from '../../src/tables/observer.ts';
import { WATER_TYPES, WATER_WAVELENGTHS } from '../../src/tables/water-types.ts';
import { reflectance, spectrum } from './arbitrary.ts';
import { expectAllClose, expectClose } from './close.ts';

const anyWater = fc.constantFrom(...WATERS);
const anyDepth = fc.double({ min: 0, max: 40, noNaN: true });

test('WATER_TYPES have a figure a wavelength, and each type is more turbid in the blue than the one before', () => {
  const types = Object.values(WATER_TYPES);
  types.forEach((attenuation, i) => {
    expect(attenuation).toHaveLength(WATER_WAVELENGTHS.length);
    if (i > 0) expect(attenuation[4]!).toBeGreaterThan(types[i - 1]![4]!);
  });
});

test('lightAtDepth worked by hand: 10 m of type II at 500 nm is e^(−0.7), at 550 nm e^(−0.89)', () => {
  const light = lightAtDepth('II', 10);
  expectClose(light[12]!, Math.exp(-0.7), 1e-12);
  expectClose(light[17]!, Math.exp(-0.89), 1e-12);
});

test('lightAtDepth of stained water: the humus has the mean of the lakes at 380 nm, and at 440 nm what Kirk found elsewhere', () => {
  // Per m, natural: what a metre takes beyond the clearest water.
  const humus = (band: number): number => Math.log(lightAtDepth('I', 1)[band]! / lightAtDepth('stained', 1)[band]!);
  // Sipelgas et al. 2003, abstract: 6.6 per m in the mean.
  expectClose(humus(0), 6.6, 0.05);
  // Kirk 1976, abstract: 0.42 to 2.90 per m, base ten.
  expect(humus(6)).toBeGreaterThan(0.42 * Math.LN10);
  expect(humus(6)).toBeLessThan(2.9 * Math.LN10);
});

test('seenAtDepth: in stained water the blue goes first, and white turns amber', () => {
  const blue = constantSpectrum(0.03).map((low, band) => (band < 12 ? 0.8 : low));
  const red = constantSpectrum(0.03).map((low, band) => (band > 22 ? 0.8 : low));
  expect(seenAtDepth(blue, 'stained', 2).tristimulus.Y).toBeLessThan(seenAtDepth(red, 'stained', 2).tristimulus.Y / 4);
  const white = seenAtDepth(constantSpectrum(1), 'stained', 2).lab;
  expect(white.a).toBeGreaterThan(5);
  expect(white.b).toBeGreaterThan(40);
});

test('lightAtDepth: twice the depth is the square, and no depth takes nothing', () => {
  fc.assert(
    fc.property(anyWater, anyDepth, (water, depth) => {
      const once = lightAtDepth(water, depth);
      expectAllClose(
        lightAtDepth(water, 2 * depth),
        once.map((share) => share * share),
        1e-12,
      );
      expectAllClose(lightAtDepth(water, 0), constantSpectrum(1), 0);
    }),
  );
});

test('seenAtDepth leaves a share of the light between 0 and 1, falling with depth, of any colour', () => {
  fc.assert(
    fc.property(spectrum(reflectance), anyWater, fc.double({ min: 0, max: 1000, noNaN: true }), (R, water, depth) => {
      const { lightLeft, lab, tristimulus, hex } = seenAtDepth(R, water, depth);
      expect(lightLeft).toBeLessThanOrEqual(1 + 1e-12);
      expect(lightLeft).toBeGreaterThan(0);
      expect(seenAtDepth(R, water, depth / 2).lightLeft).toBeGreaterThanOrEqual(lightLeft);
      for (const value of [lab.L, lab.a, lab.b, tristimulus.X, tristimulus.Z])
        expect(Number.isFinite(value)).toBe(true);
      expect(hex).toMatch(/^#[0-9a-f]{6}$/);
    }),
    { numRuns: 60 },
  );
});

test('seenAtDepth: red goes dark first in the open sea, and white turns blue there, green at the coast', () => {
  const red = constantSpectrum(0.03).map((low, band) => (band > 22 ? 0.8 : low));
  const at = (depth: number): number => seenAtDepth(red, 'IB', depth).lab.L;
  expect(at(10)).toBeLessThan(at(0) - 10);
  const blue = seenAtDepth(constantSpectrum(1), 'I', 20).lab;
  expect(blue.b).toBeLessThan(-10);
  const green = seenAtDepth(constantSpectrum(1), '5C', 5).lab;
  expect(green.a).toBeLessThan(-10);
  expect(green.b).toBeGreaterThan(5);
});

test('seenAtDepth of a grey is as light as at the surface, for the exposure goes with the depth', () => {
  expectClose(
    seenAtDepth(constantSpectrum(0.4), '3C', 7).lab.L,
    seenAtDepth(constantSpectrum(0.4), '3C', 0).lab.L,
    1e-9,
  );
});

/**
 * Chromaticity of a bait at depth, and of the screen's colour for it: the first summed here from the tables of the eye and of daylight,
 * the second by colorjs.io.
 */
function chromaticities(R: ArrayLike<number>, water: WaterType, depth: number): readonly (readonly number[])[] {
  const light = lightAtDepth(water, depth);
  const sums = [0, 0, 0];
  for (const [band, nm] of WAVELENGTHS.entries()) {
    const eye = COLOUR_MATCHING_FUNCTIONS.find((row) => row[0] === nm)!;
    const day = ILLUMINANTS.find((row) => row[0] === nm)![1];
    for (const i of [0, 1, 2]) sums[i]! += eye[i + 1]! * day * light[band]! * R[band]!;
  }
  const whole = sums[0]! + sums[1]! + sums[2]!;
  const shown = new Color(seenAtDepth(R, water, depth).hex).to('xyz-d65').coords.map(Number);
  const sum = shown[0]! + shown[1]! + shown[2]!;
  return [
    [sums[0]! / whole - 0.3127, sums[1]! / whole - 0.329],
    [shown[0]! / sum - 0.3127, shown[1]! / sum - 0.329],
  ];
}

test('seenAtDepth shows a bright bait in the hue of its water, not bleached: held against chromaticities summed from the tables', () => {
  const baits = ['#ffffff', '#f5f06a', '#ff8fb0', '#ff7a1a', '#f2e6c0', '#d8e23a'].map((hex) =>
    reflectanceFromHex(hex),
  );
  for (const R of baits) {
    for (const water of ['9C', 'stained'] as const) {
      for (const depth of [1, 3, 6, 15]) {
        const [real, shown] = chromaticities(R, water, depth).map(([x, y]) => ({
          hue: (Math.atan2(y!, x!) * 180) / Math.PI,
          purity: Math.hypot(x!, y!),
        }));
        expect(Math.abs(real!.hue - shown!.hue), `${water} ${depth} m`).toBeLessThan(15);
        // The screen has no more than this of the colours of a spectrum.
        expect(shown!.purity, `${water} ${depth} m`).toBeGreaterThan(0.75 * Math.min(real!.purity, 0.3));
      }
    }
  }
});

test('seenAtDepth shows no bait lighter than a white one beside it, and at the surface white as white', () => {
  fc.assert(
    fc.property(spectrum(reflectance), anyWater, anyDepth, (R, water, depth) => {
      const light = (spectrum: ArrayLike<number>): number => labFromHex(seenAtDepth(spectrum, water, depth).hex).L;
      expect(light(R)).toBeLessThan(light(constantSpectrum(1)) + 1.5);
      expect(seenAtDepth(constantSpectrum(1), water, 0).hex).toBe('#ffffff');
    }),
    { numRuns: 60 },
  );
});

test('lightAtDepth and seenAtDepth refuse a water that there isn’t and a depth that is none', () => {
  expect(() => lightAtDepth('river' as WaterType, 1)).toThrow(/Unknown water river; give one of I, IA/);
  expect(() => lightAtDepth('I', -1)).toThrow(/Depth is -1 m/);
  expect(() => seenAtDepth([1], 'I', 1)).toThrow(/36/);
});
