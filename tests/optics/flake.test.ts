import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type FlakeShape,
  flakeArea,
  flakeCoverage,
  flakeMass,
  flakeSpacing,
  flakesPerMl,
  flakesPerMm,
  type SpreadFlake,
  spreadFlake,
} from '../../src/optics/flake.ts';
import { GAUSS_NODES, GAUSS_WEIGHTS } from '../../src/optics/gauss-legendre.ts';
import { layerReflectances, reflectancesInfinite } from '../../src/optics/kubelka-munk.ts';
import { constantSpectrum } from '../../src/optics/spectrum.ts';
import { extreme, magnitude, reflectance, spectrum, thickness } from './arbitrary.ts';
import { expectAllClose, expectClose } from './close.ts';
import { layerReflectance } from './one-band.ts';
import { reflectanceWithFlakes } from './one-flaked-layer.ts';
import { firstMet, sequence } from './random-plates.ts';

const INCH = 25.4;

describe('counting flake, worked by hand', () => {
  test('flakeArea of a 0.040 in hexagon is (√3/2) · 1.016² = 0.8940 mm²', () => {
    expectClose(flakeArea('hex', 0.04 * INCH), 0.893_96, 5e-7);
    expect(flakeArea('square', 2)).toBe(4);
    expectClose(flakeArea('round', 2), Math.PI, 1e-15);
  });

  test('flakeMass of a 1 mm square of 0.025 mm film at 1.4 g/ml is 0.035 mg', () => {
    expectClose(flakeMass({ shape: 'square', sizeMm: 1, filmMm: 0.025, density: 1.4 }), 0.000035, 1e-18);
  });

  test('flakesPerMl: 35 mg of those squares in 10 ml are 100 a millilitre, 0.05 of them a millimetre of sight', () => {
    const cut = { shape: 'square', sizeMm: 1, filmMm: 0.025, density: 1.4 } as const;
    expectClose(flakesPerMl(0.0035, cut), 100, 1e-11);
    expectClose(flakesPerMm(0.0035, cut), 0.05, 1e-14);
    expectClose(flakeCoverage([{ perMm: 0.05 }], 8), 1 - Math.exp(-0.4), 1e-15);
  });

  test('flakeSpacing: 1000 a millilitre are 1 mm apart, 1 is 10 mm; none has no spacing', () => {
    expectClose(flakeSpacing(1000)!, 1, 1e-15);
    expectClose(flakeSpacing(1)!, 10, 1e-14);
    expect(flakeSpacing(0)).toBeUndefined();
  });

  test('flakesPerMm hangs on film and mass alone: smaller flakes of the same film cover as much', () => {
    fc.assert(
      fc.property(fc.constantFrom<FlakeShape>('hex', 'square', 'round'), thickness, (shape, sizeMm) => {
        expectClose(flakesPerMm(0.004, { shape, sizeMm }), flakesPerMm(0.004, { shape: 'hex', sizeMm: 1 }), 1e-13);
      }),
    );
  });

  test('spreadFlake with a transmittance counts what hides only, and all of it at 0', () => {
    const flake = { shape: 'hex', sizeMm: 1, reflectance: constantSpectrum(0.5) } as const;
    expect(spreadFlake(flake, 0.004).perMm).toBe(flakesPerMm(0.004, flake));
    expectClose(spreadFlake({ ...flake, transmittance: 0.75 }, 0.004).perMm, flakesPerMm(0.004, flake) / 4, 1e-15);
    expect(spreadFlake({ ...flake, transmittance: 1 }, 0.004).perMm).toBe(0);
  });

  test.each([
    ['a size of 0', () => flakeArea('hex', 0), /size in mm is 0/],
    ['a size that is no number', () => flakeArea('hex', Number.NaN), /size in mm is NaN/],
    ['a film of 0', () => flakeMass({ shape: 'hex', sizeMm: 1, filmMm: 0 }), /Film thickness in mm is 0/],
    ['a density below 0', () => flakeMass({ shape: 'hex', sizeMm: 1, density: -1 }), /density in g\/ml is -1/],
    ['a concentration below 0', () => flakesPerMl(-1, { shape: 'hex', sizeMm: 1 }), /-1 g\/ml/],
    [
      'a transmittance above 1',
      () => spreadFlake({ shape: 'hex', sizeMm: 1, transmittance: 2, reflectance: constantSpectrum(0) }, 0),
      /transmittance is 2/,
    ],
    [
      'a reflectance in percent',
      () => spreadFlake({ shape: 'hex', sizeMm: 1, reflectance: constantSpectrum(40) }, 0),
      /reflectance is 40; .* never percent/,
    ],
  ])('flake refuses %s', (_, call, message) => {
    expect(call).toThrow(RangeError);
    expect(call).toThrow(message);
  });
});

describe('the integral over depth', () => {
  /** ∫ f over 0..to, for what changes within `shortest` and ever more slowly with depth: six points on each of many panels. */
  function integral(f: (z: number) => number, shortest: number, to: number): number {
    let total = 0;
    for (let from = 0, end = shortest / 1000; from < to; [from, end] = [end, 1.5 * end]) {
      const half = (Math.min(to, end) - from) / 2;
      for (const [i, node] of GAUSS_NODES.entries()) total += half * GAUSS_WEIGHTS[i]! * f(from + half * (1 + node));
    }
    return total;
  }

  const kind = fc.record({ perMm: extreme, R: reflectance });

  /** What is seen of the kinds over a backing, by quadrature; and how near the closed form is to its limit, 1. */
  function byQuadrature(
    K: number,
    S: number,
    X: number,
    kinds: readonly { readonly perMm: number; readonly R: number }[],
    Rg: number,
  ): { readonly expected: number; readonly C: number } {
    const mu = kinds.reduce((sum, { perMm }) => sum + perMm, 0);
    const seen = (z: number): number =>
      Math.exp(-mu * z) * kinds.reduce((sum, { perMm, R }) => sum + perMm * layerReflectance(K, S, z, R), 0);
    const thick = reflectancesInfinite(constantSpectrum(K), constantSpectrum(S))[0]!;
    return {
      expected: integral(seen, 1 / (mu + 2 * (K + S) + 1e-6), X) + Math.exp(-mu * X) * layerReflectance(K, S, X, Rg),
      C: Math.max(...kinds.map(({ R }) => Math.abs((thick * (R - thick)) / (1 - thick * R)))),
    };
  }

  test('reflectanceWithFlakes is the integral, the series to 1e-8 and its fallback to 1e-6, for any plastic, flakes, thickness and backing', () => {
    let [series, fallback] = [0, 0];
    fc.assert(
      fc.property(extreme, extreme, extreme, fc.tuple(kind, kind), reflectance, (K, S, X, kinds, Rg) => {
        const { expected, C } = byQuadrature(K, S, X, kinds, Rg);
        const flakes = kinds.map(({ perMm, R }) => ({ perMm, reflectance: constantSpectrum(R) }));
        const found = reflectanceWithFlakes(constantSpectrum(K), constantSpectrum(S), X, flakes, constantSpectrum(Rg));
        if (C <= 0.8) series++;
        else fallback++;
        expectClose(found[0]!, expected, C <= 0.8 ? 1e-8 : 1e-6);
        expectAllClose(found, constantSpectrum(found[0]!), 0);
      }),
      { numRuns: 1000 },
    );
    expect(series).toBeGreaterThan(100);
    expect(fallback).toBeGreaterThan(100);
  });

  test('reflectanceWithFlakes goes from the series to its fallback without a step', () => {
    const coefficient = fc.double({ min: -3, max: 1, noNaN: true }).map((power) => 10 ** power);
    fc.assert(
      fc.property(coefficient, coefficient, thickness, (S, perMm, X) => {
        // A black flake, for which C is −Rinf²: it passes −0.8 here.
        const thick = Math.sqrt(0.8);
        const at = (Rinf: number): number => {
          const K = (S * (1 - Rinf) ** 2) / (2 * Rinf);
          const flakes = [{ perMm, reflectance: constantSpectrum(0) }];
          return reflectanceWithFlakes(constantSpectrum(K), constantSpectrum(S), X, flakes, constantSpectrum(0.9))[0]!;
        };
        expectClose(at(thick - 1e-9), at(thick + 1e-9), 1e-6);
      }),
    );
  });

  test('reflectanceWithFlakes in plastic that only absorbs has the closed form F μ (1 − e^(−(μ+2K)X))/(μ + 2K) + Rg e^(−(μ+2K)X)', () => {
    fc.assert(
      fc.property(magnitude, thickness, thickness, reflectance, reflectance, (K, X, mu, F, Rg) => {
        const rate = mu + 2 * K;
        const expected = ((F * mu) / rate) * -Math.expm1(-rate * X) + Rg * Math.exp(-rate * X);
        const flakes = [{ perMm: mu, reflectance: constantSpectrum(F) }];
        const found = reflectanceWithFlakes(constantSpectrum(K), constantSpectrum(0), X, flakes, constantSpectrum(Rg));
        expectClose(found[0]!, expected, 1e-7);
      }),
    );
  });

  test('reflectanceWithFlakes without flake is the layer, and without thickness the backing', () => {
    fc.assert(
      fc.property(spectrum(magnitude), spectrum(magnitude), thickness, spectrum(reflectance), (K, S, X, Rg) => {
        expectAllClose(reflectanceWithFlakes(K, S, X, [], Rg), layerReflectances(K, S, X, Rg), 0);
        const flakes = [{ perMm: 1, reflectance: constantSpectrum(0.5) }];
        expectAllClose(reflectanceWithFlakes(K, S, 0, flakes, Rg), Rg, 1e-15);
      }),
      { numRuns: 30 },
    );
  });

  test('reflectanceWithFlakes of so much flake that nothing else is seen is the flake', () => {
    const flakes = [{ perMm: 1e6, reflectance: constantSpectrum(0.7) }];
    const found = reflectanceWithFlakes(constantSpectrum(1), constantSpectrum(1), 10, flakes, constantSpectrum(0));
    expectClose(found[0]!, 0.7, 1e-5);
  });

  test('reflectanceWithFlakes is between 0 and 1 and never NaN, whatever is put in', () => {
    const flake: fc.Arbitrary<SpreadFlake> = fc.record({ perMm: extreme, reflectance: spectrum(reflectance) });
    fc.assert(
      fc.property(extreme, extreme, extreme, fc.array(flake, { maxLength: 3 }), reflectance, (K, S, X, flakes, Rg) => {
        const found = reflectanceWithFlakes(constantSpectrum(K), constantSpectrum(S), X, flakes, constantSpectrum(Rg));
        for (const R of found) expect(R >= 0 && R <= 1).toBe(true);
      }),
      { numRuns: 500 },
    );
  });

  test('reflectanceWithFlakes doesn’t mind one kind given as two halves, nor their order', () => {
    const half = { perMm: 0.2, reflectance: constantSpectrum(0.8) };
    const other = { perMm: 0.1, reflectance: constantSpectrum(0.1) };
    const [K, S, Rg] = [constantSpectrum(0.1), constantSpectrum(0.3), constantSpectrum(0.03)];
    const whole = reflectanceWithFlakes(K, S, 6, [{ ...half, perMm: 0.4 }, other], Rg);
    expectAllClose(reflectanceWithFlakes(K, S, 6, [half, other, half], Rg), whole, 1e-14);
  });
});

describe('random plates thrown into a slab', () => {
  test.each<FlakeShape>(['hex', 'square', 'round'])(
    'reflectanceWithFlakes and flakeCoverage are what a line of sight finds among random %s plates, within three standard errors',
    (shape) => {
      const random = sequence(20_260_314);
      const size = 1.5;
      const X = 6;
      const perMl = 90;
      const [K, S, F, Rg] = [0.05, 0.12, 0.8, 0.03];
      const lines = 20_000;
      let covered = 0;
      let sum = 0;
      let squares = 0;
      for (let line = 0; line < lines; line++) {
        const { depth: first } = firstMet([{ shape, size, perMl }], X, random);
        const R = first <= X ? layerReflectance(K, S, first, F) : layerReflectance(K, S, X, Rg);
        if (first <= X) covered++;
        sum += R;
        squares += R * R;
      }
      const perMm = ((perMl / 1000) * flakeArea(shape, size)) / 2;
      const share = flakeCoverage([{ perMm }], X);
      expectClose(covered / lines, share, 3 * Math.sqrt((share * (1 - share)) / lines), 'coverage');
      const found = reflectanceWithFlakes(
        constantSpectrum(K),
        constantSpectrum(S),
        X,
        [{ perMm, reflectance: constantSpectrum(F) }],
        constantSpectrum(Rg),
      );
      const mean = sum / lines;
      const error = Math.sqrt((squares / lines - mean * mean) / lines);
      expect(error).toBeLessThan(0.002);
      expectClose(mean, found[0]!, 3 * error, 'reflectance');
    },
  );
});
