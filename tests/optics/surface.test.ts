import fc from 'fast-check';
import { expect, test } from 'vitest';
import { constantSpectrum } from '../../src/optics/spectrum.ts';
import {
  BESIDE_GLOSS,
  fresnelSurface,
  IN_AIR,
  IN_WATER,
  NO_SURFACE,
  type Surface,
  surfaceInward,
  surfaceOutward,
  surfaceOutwardSpectrum,
} from '../../src/optics/surface.ts';
import { reflectance } from './arbitrary.ts';
import { expectAllClose, expectClose, halfLastDigit } from './close.ts';
import { referenceNumbers, referenceRows, referenceTest, referenceText } from './reference.ts';

const SURFACES = { IN_AIR, BESIDE_GLOSS, IN_WATER, NO_SURFACE };

referenceTest('fresnelSurface(n) is what Fresnel’s equations integrate to, to half the last printed digit', () => {
  const rows = referenceRows('surface_reflection_computed.csv').slice(1);
  expect(rows.length).toBe(10);
  for (const [n, k1, , k2] of rows as [string, string, string, string][]) {
    const surface = fresnelSurface(Number(n));
    expectClose(surface.k1, Number(k1), halfLastDigit(k1), `k1 at n ${n}`);
    expectClose(surface.k2, Number(k2), halfLastDigit(k2), `k2 at n ${n}`);
  }
});

referenceTest('surfaceOutward(R) with the gloss included agrees with 40-digit arithmetic', () => {
  for (const row of referenceNumbers('km_layer_computed.csv')) {
    const [R, Rinf, seen, seenInfinite] = [row[4]!, row[8]!, row[10]!, row[11]!];
    expectClose(surfaceOutward(R), seen, 1e-12);
    expectClose(surfaceOutward(Rinf), seenInfinite, 1e-12);
  }
});

referenceTest('surfaceOutward(R) with the gloss excluded reproduces the published vectors', () => {
  const { two_constant, two_constant_saunderson_excluded: published } = JSON.parse(
    referenceText('km_published_vectors.json'),
  );
  const surface: Surface = { k1: published.k1, k2: published.k2, specular: 'excluded' };
  published.cases.forEach(({ R }: { R: number[] }, i: number) => {
    const inside: number[] = two_constant.cases[i].R;
    expectAllClose(
      inside.map((value) => surfaceOutward(value, surface)),
      R,
      1e-14,
      `case ${i}`,
    );
  });
});

test('fresnelSurface(1.5) is the k1 of 0.04 and k2 of about 0.6 that the book takes for plastic in air', () => {
  const fresnel = fresnelSurface(1.5);
  expectClose(IN_AIR.k1, fresnel.k1, 1e-12);
  expectClose(IN_AIR.k2, fresnel.k2, 0.005);
});

test('IN_WATER lets nearly all light in, and holds less back inside than air does', () => {
  expect(IN_WATER.k1).toBeLessThan(0.005);
  expect(IN_WATER.k2).toBeLessThan(IN_AIR.k2 / 2);
});

test.each(Object.entries(SURFACES))('surfaceInward undoes surfaceOutward: %s', (_, surface) => {
  fc.assert(
    fc.property(reflectance, (R) => {
      const Rm = surfaceOutward(R, surface);
      expect(Rm).toBeGreaterThanOrEqual(0);
      expect(Rm).toBeLessThanOrEqual(1);
      expectClose(surfaceInward(Rm, surface), R, 1e-14);
    }),
  );
});

test.each(Object.entries(SURFACES))('surfaceOutward rises with R and ends where its symbols say: %s', (_, surface) => {
  const gloss = surface.specular === 'included' ? surface.k1 : 0;
  expectClose(surfaceOutward(0, surface), gloss, 0);
  expectClose(surfaceOutward(1, surface), gloss + 1 - surface.k1, 1e-15);
  fc.assert(
    fc.property(reflectance, reflectance, (one, other) => {
      fc.pre(one < other);
      expect(surfaceOutward(one, surface)).toBeLessThanOrEqual(surfaceOutward(other, surface));
    }),
  );
});

test('surfaceInward brings what is darker than the gloss in as 0, and what no surface lets out as 1', () => {
  expect(surfaceInward(0.03, IN_AIR)).toBe(0);
  expect(surfaceInward(0.99, BESIDE_GLOSS)).toBe(1);
});

test('surfaceOutwardSpectrum works band by band, and leaves NO_SURFACE alone', () => {
  expectAllClose(surfaceOutwardSpectrum(constantSpectrum(0.3)), constantSpectrum(surfaceOutward(0.3)), 0);
  expectAllClose(surfaceOutwardSpectrum(constantSpectrum(0.3), NO_SURFACE), constantSpectrum(0.3), 1e-16);
});

test('surfaceOutward, surfaceInward and fresnelSurface refuse what is no reflectance and no index', () => {
  expect(() => surfaceOutward(1.2)).toThrow(/R is 1.2; .* never percent/);
  expect(() => surfaceInward(Number.NaN)).toThrow(/Rm is NaN/);
  expect(() => fresnelSurface(1)).toThrow(/Relative index is 1/);
});
