import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chroma, labFromTristimulus, labOf, tristimulusFromLab } from '../../src/optics/cielab.ts';
import { constantSpectrum } from '../../src/optics/spectrum.ts';
import { observerWeights, tristimulus, whitePoint } from '../../src/optics/tristimulus.ts';
import { LIGHTS } from '../../src/tables/lights.ts';
import { reflectance, spectrum } from './arbitrary.ts';
import { expectClose } from './close.ts';
import { referenceRows, referenceTest } from './reference.ts';

const coordinate = fc.double({ min: -120, max: 120, noNaN: true });
const lab = fc.record({ L: fc.double({ min: 0, max: 100, noNaN: true }), a: coordinate, b: coordinate });

referenceTest('labFromTristimulus reproduces 82 films to half the last printed digit', () => {
  const wavelengths = Array.from({ length: 31 }, (_, i) => 400 + 10 * i);
  const { x, y, z, white } = observerWeights(wavelengths, 'D65');
  const films = referenceRows('pigment_films_shared.csv').slice(1);
  const rows = referenceRows('pigment_films_shared_lab.csv').slice(1);
  expect(rows.length).toBe(82);
  for (const [sample, surface, L, a, b] of rows) {
    const film = films.find((cells) => cells[0] === sample && cells[3] === surface)!;
    const R = film.slice(4).map((percent) => Number(percent) / 100);
    const sum = (weights: Float64Array): number => R.reduce((total, value, i) => total + value * weights[i]!, 0);
    const found = labFromTristimulus({ X: sum(x), Y: sum(y), Z: sum(z) }, white);
    expectClose(found.L, Number(L), 5.1e-5, `L of ${sample} ${surface}`);
    expectClose(found.a, Number(a), 5.1e-5, `a of ${sample} ${surface}`);
    expectClose(found.b, Number(b), 5.1e-5, `b of ${sample} ${surface}`);
  }
});

describe('worked by hand', () => {
  test('labOf(0.18) has L 49.496: 116 ∛0.18 − 16', () => {
    expectClose(labOf(constantSpectrum(0.18)).L, 116 * Math.cbrt(0.18) - 16, 1e-12);
    expectClose(labOf(constantSpectrum(0.18)).L, 49.496, 5e-4);
  });

  test('labFromTristimulus is linear below 216/24389, where L is 8, and joins there', () => {
    const white = whitePoint('D65');
    const Y = 216 / 24389;
    const at = (value: number): number => labFromTristimulus({ X: value * white.X, Y: value, Z: value * white.Z }).L;
    expectClose(at(Y), 8, 1e-12);
    expectClose(at(Y * (1 + 1e-12)), 8, 1e-9);
    expectClose(at(Y / 2), 4, 1e-12);
    expectClose(at(0), 0, 1e-12);
  });
});

describe('laws', () => {
  test.each(LIGHTS)('labOf of any grey has no chroma, and of white is 100: %s', (light) => {
    fc.assert(
      fc.property(reflectance, (R) => {
        expectClose(chroma(labOf(constantSpectrum(R), light)), 0, 1e-10);
      }),
    );
    expectClose(labOf(constantSpectrum(1), light).L, 100, 1e-12);
  });

  test.each(LIGHTS)('labFromTristimulus undoes tristimulusFromLab: %s', (light) => {
    const white = whitePoint(light);
    fc.assert(
      fc.property(lab, (colour) => {
        const back = labFromTristimulus(tristimulusFromLab(colour, white), white);
        expectClose(back.L, colour.L, 1e-10);
        expectClose(back.a, colour.a, 1e-10);
        expectClose(back.b, colour.b, 1e-10);
      }),
    );
  });

  test.each(LIGHTS)('labOf(R) is labFromTristimulus of tristimulus(R), under the same light: %s', (light) => {
    fc.assert(
      fc.property(spectrum(reflectance), (R) => {
        expect(labOf(R, light)).toEqual(labFromTristimulus(tristimulus(R, light), whitePoint(light)));
        expect(labOf(R, light).L).toBeLessThanOrEqual(100 + 1e-12);
      }),
      { numRuns: 40 },
    );
  });

  test('chroma is the distance from grey, whatever the hue', () => {
    const radians = fc.double({ min: 0, max: 2 * Math.PI, noNaN: true });
    fc.assert(
      fc.property(fc.double({ min: 0, max: 130, noNaN: true }), radians, (distance, hue) => {
        expectClose(chroma({ L: 50, a: distance * Math.cos(hue), b: distance * Math.sin(hue) }), distance, 1e-10);
      }),
    );
  });
});
