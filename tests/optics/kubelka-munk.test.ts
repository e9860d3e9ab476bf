import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isOpticalFault } from '../../src/optics/fault.ts';
import {
  absorptionToScattering,
  invertTwoBackings,
  layerReflectances,
  reflectancesInfinite,
} from '../../src/optics/kubelka-munk.ts';
import { BAND_COUNT, constantSpectrum } from '../../src/optics/spectrum.ts';
import { extreme, magnitude, reflectance, spectrum, thickness } from './arbitrary.ts';
import { expectAllClose, expectClose } from './close.ts';
import { layerReflectance, layerTransmittance, reflectanceInfinite } from './one-band.ts';
import { referenceNumbers, referenceTest, referenceText } from './reference.ts';

describe('published and independently computed values', () => {
  // Twelve significant digits are printed; the largest value is 1, so that 5e-13 is half the last.
  referenceTest(
    'layerReflectance and layerTransmittance agree with 40-digit arithmetic to the last printed digit',
    () => {
      const rows = referenceNumbers('km_layer_computed.csv');
      expect(rows.length).toBe(36);
      for (const [K, S, X, Rg, R, R0, Rw, T, Rinf] of rows as [number, ...number[]][]) {
        const what = `K ${K}, S ${S}, thickness ${X}`;
        expectClose(layerReflectance(K, S!, X!, Rg!), R!, 5e-13, `R, ${what}`);
        expectClose(layerReflectance(K, S!, X!, 0), R0!, 5e-13, `R0, ${what}`);
        expectClose(layerReflectance(K, S!, X!, 1), Rw!, 5e-13, `Rw, ${what}`);
        expectClose(layerTransmittance(K, S!, X!), T!, 5e-13, `T, ${what}`);
        if (S! > 0) expectClose(reflectanceInfinite(K / S!), Rinf!, 5e-13, `Rinf, ${what}`);
      }
    },
  );

  referenceTest('reflectanceInfinite and absorptionToScattering reproduce the published mixing vectors', () => {
    const { single_constant, two_constant } = JSON.parse(referenceText('km_published_vectors.json'));
    for (const { c, R } of single_constant.cases) {
      const KS = (band: number): number =>
        c.reduce(
          (sum: number, share: number, i: number) =>
            sum + share * absorptionToScattering(single_constant.pigment_reflectances[i][band]),
          0,
        );
      expectAllClose(
        Array.from(R, (_, band) => reflectanceInfinite(KS(band))),
        R,
        5e-16 * 2,
        `mix ${c}`,
      );
    }
    for (const { c, R } of two_constant.cases) {
      const sum = (of: number[][], band: number): number =>
        c.reduce((total: number, share: number, i: number) => total + share * of[i]![band]!, 0);
      const mixed = Array.from(R, (_, band) =>
        reflectanceInfinite(sum(two_constant.pigment_K, band) / sum(two_constant.pigment_S, band)),
      );
      expectAllClose(mixed, R, 5e-16 * 2, `two-constant mix ${c}`);
    }
  });

  test('reflectanceInfinite(0.5) is (3 − √5)/2, worked by hand: a = 1.5, b = √1.25', () => {
    expectClose(reflectanceInfinite(0.5), (3 - Math.sqrt(5)) / 2, 1e-16);
  });

  test('layerReflectance(K, S, X, Rg) solves dR/dx = S − 2 (K + S) R + S R², integrated step by step', () => {
    const slope = (K: number, S: number, R: number): number => S - 2 * (K + S) * R + S * R * R;
    for (const [K, S, X, Rg] of [
      [0.5, 1, 1, 0.8],
      [0.001, 2, 3, 0],
      [3, 0.01, 0.7, 1],
      [0, 0.4, 5, 0.1],
      [0.2, 0, 4, 0.9],
      [8, 6, 0.5, 0.03],
    ] as const) {
      const steps = 4000;
      const h = X / steps;
      let R: number = Rg;
      for (let step = 0; step < steps; step++) {
        const k1 = slope(K, S, R);
        const k2 = slope(K, S, R + (h / 2) * k1);
        const k3 = slope(K, S, R + (h / 2) * k2);
        const k4 = slope(K, S, R + h * k3);
        R += (h / 6) * (k1 + 2 * k2 + 2 * k3 + k4);
      }
      expectClose(layerReflectance(K, S, X, Rg), R, 1e-11, `K ${K}, S ${S}, thickness ${X}, Rg ${Rg}`);
    }
  });

  test('layerReflectance is Kubelka’s own form wherever that one is well conditioned', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 5, noNaN: true }),
        fc.double({ min: 0.01, max: 5, noNaN: true }),
        fc.double({ min: 0.1, max: 5, noNaN: true }),
        reflectance,
        (K, S, X, Rg) => {
          const a = 1 + K / S;
          const b = Math.sqrt(a * a - 1);
          const bcoth = b / Math.tanh(b * S * X);
          expectClose(layerReflectance(K, S, X, Rg), (1 - Rg * (a - bcoth)) / (a - Rg + bcoth), 1e-12);
          const T = b / (a * Math.sinh(b * S * X) + b * Math.cosh(b * S * X));
          expectClose(layerTransmittance(K, S, X), T, 1e-12);
        },
      ),
    );
  });
});

describe('laws', () => {
  test('layerReflectance is between 0 and 1 whatever the layer, to the limits of what it takes', () => {
    fc.assert(
      fc.property(extreme, extreme, extreme, reflectance, (K, S, X, Rg) => {
        const R = layerReflectance(K, S, X, Rg);
        expect(R).toBeGreaterThanOrEqual(0);
        expect(R).toBeLessThanOrEqual(1);
        const T = layerTransmittance(K, S, X);
        expect(T).toBeGreaterThanOrEqual(0);
        expect(T).toBeLessThanOrEqual(1);
      }),
      { numRuns: 2000 },
    );
  });

  test('layerReflectance on a backing of Rinf is Rinf, whatever the thickness', () => {
    fc.assert(
      fc.property(magnitude, magnitude, thickness, (K, S, X) => {
        fc.pre(S > 0);
        const Rinf = reflectanceInfinite(K / S);
        expectClose(layerReflectance(K, S, X, Rinf), Rinf, 1e-12);
      }),
    );
  });

  test('layerReflectance over black tends to Rinf as the layer grows, rising all the way', () => {
    fc.assert(
      fc.property(magnitude, magnitude, thickness, (K, S, X) => {
        fc.pre(S > 1e-4 && K > 1e-4);
        const thin = layerReflectance(K, S, X, 0);
        expect(layerReflectance(K, S, 2 * X, 0)).toBeGreaterThanOrEqual(thin - 1e-15);
        expectClose(layerReflectance(K, S, 1e8, 0), reflectanceInfinite(K / S), 1e-12);
      }),
    );
  });

  test('layerReflectance(0, S, X, 1) is 1: what absorbs nothing on a perfect white is white', () => {
    fc.assert(fc.property(magnitude, thickness, (S, X) => expectClose(layerReflectance(0, S, X, 1), 1, 1e-12)));
  });

  test('layerReflectance without thickness is its backing', () => {
    fc.assert(
      fc.property(magnitude, magnitude, reflectance, (K, S, Rg) =>
        expectClose(layerReflectance(K, S, 0, Rg), Rg, 1e-15),
      ),
    );
  });

  test('layerReflectance reaches its limits without a jump: S → 0 gives Rg e^(−2KX), K → 0 the scattering form', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 5, noNaN: true }), thickness, reflectance, (coefficient, X, Rg) => {
        const clear = Rg * Math.exp(-2 * coefficient * X);
        const white = (coefficient * X * (1 - Rg) + Rg) / (1 + coefficient * X * (1 - Rg));
        expectClose(layerReflectance(coefficient, 0, X, Rg), clear, 1e-14, 'S = 0');
        expectClose(layerReflectance(0, coefficient, X, Rg), white, 1e-13, 'K = 0');
        // A trillionth of the other coefficient moves R by no more than its share of the light's path.
        const trace = 1e-12 * coefficient;
        expectClose(layerReflectance(coefficient, trace, X, Rg), clear, 1e-10, 'S → 0');
        expectClose(layerReflectance(trace, coefficient, X, Rg), white, 1e-4, 'K → 0');
        expectClose(layerReflectance(Number.MIN_VALUE, coefficient, X, Rg), white, 1e-13, 'K as small as can be');
      }),
    );
  });

  test('layerReflectance falls as K rises, and lies between its backing and Rinf', () => {
    fc.assert(
      fc.property(magnitude, magnitude, thickness, reflectance, (K, S, X, Rg) => {
        fc.pre(S > 0);
        const R = layerReflectance(K, S, X, Rg);
        expect(layerReflectance(K * 1.1, S, X, Rg)).toBeLessThanOrEqual(R + 1e-13);
        const Rinf = reflectanceInfinite(K / S);
        expect(R).toBeGreaterThanOrEqual(Math.min(Rg, Rinf) - 1e-12);
        expect(R).toBeLessThanOrEqual(Math.max(Rg, Rinf) + 1e-12);
      }),
    );
  });

  test('a layer and its transmittance keep Kubelka’s composition: R = R0 + T² Rg / (1 − R0 Rg)', () => {
    fc.assert(
      fc.property(magnitude, magnitude, thickness, fc.double({ min: 0, max: 0.99, noNaN: true }), (K, S, X, Rg) => {
        const R0 = layerReflectance(K, S, X, 0);
        const T = layerTransmittance(K, S, X);
        expectClose(layerReflectance(K, S, X, Rg), R0 + (T * T * Rg) / (1 - R0 * Rg), 1e-12);
      }),
    );
  });

  test('absorptionToScattering(reflectanceInfinite(KS)) is KS', () => {
    fc.assert(
      fc.property(fc.double({ min: -4, max: 6, noNaN: true }), (power) => {
        const KS = 10 ** power;
        expectClose(absorptionToScattering(reflectanceInfinite(KS)) / KS, 1, 1e-10);
      }),
    );
  });

  test('layerReflectances and reflectancesInfinite are their scalar forms, band by band, also into their own backing', () => {
    fc.assert(
      fc.property(spectrum(magnitude), spectrum(magnitude), thickness, spectrum(reflectance), (K, S, X, Rg) => {
        const expected = Rg.map((g, band) => layerReflectance(K[band]!, S[band]!, X, g));
        expectAllClose(layerReflectances(K, S, X, Array.from(Rg)), expected, 0);
        expectAllClose(layerReflectances(K, S, X, Rg, Rg), expected, 0);
        const infinite = S.map((s, band) => (s > 0 ? reflectanceInfinite(K[band]! / s) : 0));
        expectAllClose(reflectancesInfinite(K, S), infinite, 1e-12);
      }),
      { numRuns: 30 },
    );
  });
});

describe('invertTwoBackings', () => {
  test('invertTwoBackings finds the K and S that a layer over any two backings was made from', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 2, noNaN: true }),
        fc.double({ min: 0, max: 2, noNaN: true }),
        fc.double({ min: 0.1, max: 2, noNaN: true }),
        fc.double({ min: 0, max: 0.3, noNaN: true }),
        fc.double({ min: 0.5, max: 1, noNaN: true }),
        (K, S, X, Rblack, Rwhite) => {
          const R0 = layerReflectance(K, S, X, Rblack);
          const R = layerReflectance(K, S, X, Rwhite);
          fc.pre(R - R0 > 1e-3);
          const found = invertTwoBackings({ R0, Rblack, R, Rwhite, thickness: X });
          if (isOpticalFault(found)) expect.fail(found.message);
          expectClose(found.K, K, 1e-8, 'K');
          expectClose(found.S, S, 1e-8, 'S');
        },
      ),
      { numRuns: 1000 },
    );
  });

  test('invertTwoBackings gives a fault or finite K and S >= 0 that show what was seen, whatever is put in', () => {
    const anything = fc.oneof(reflectance, fc.constantFrom(Number.NaN, -0.1, 1.1, Number.POSITIVE_INFINITY));
    fc.assert(
      fc.property(
        anything,
        anything,
        anything,
        anything,
        fc.oneof(extreme, fc.constant(Number.NaN)),
        (R0, Rblack, R, Rwhite, X) => {
          const found = invertTwoBackings({ R0, Rblack, R, Rwhite, thickness: X });
          if (isOpticalFault(found)) {
            expect(found.message).toMatch(/^[A-Z].{20,}$/);
            return;
          }
          expect(Number.isFinite(found.K) && Number.isFinite(found.S)).toBe(true);
          expect(found.K).toBeGreaterThanOrEqual(0);
          expect(found.S).toBeGreaterThanOrEqual(0);
        },
      ),
      { numRuns: 3000 },
    );
  });

  const film = { R0: 0.2, Rblack: 0.03, R: 0.6, Rwhite: 0.9, thickness: 1 };

  test.each([
    ['a film that hides its backing', { ...film, R0: 0.4, R: 0.4 }, 'opaque'],
    ['a film that is darker over white', { ...film, R0: 0.6, R: 0.2 }, 'darker-over-white'],
    ['more contrast than the backings have', { ...film, R0: 0.02, R: 0.95 }, 'unphysical'],
    ['a backing darker than its film could make it', { ...film, R0: 0.001, R: 0.6 }, 'unphysical'],
    ['percent', { ...film, R: 60 }, 'out-of-range'],
    ['no number', { ...film, R0: Number.NaN }, 'out-of-range'],
    ['backings exchanged', { ...film, Rblack: 0.9, Rwhite: 0.03 }, 'out-of-range'],
    ['no thickness', { ...film, thickness: 0 }, 'out-of-range'],
  ] as const)('invertTwoBackings diagnoses %s', (_, seen, fault) => {
    expect(invertTwoBackings(seen)).toMatchObject({ fault });
  });
});

describe('programmer’s errors', () => {
  const clear = constantSpectrum(0);
  const grey = constantSpectrum(1);

  test.each([
    ['layerReflectances of K -1', () => layerReflectances(constantSpectrum(-1), grey, 1, clear), /K -1 per mm/],
    [
      'layerReflectances of S NaN',
      () => layerReflectances(grey, constantSpectrum(Number.NaN), 1, clear),
      /S NaN per mm/,
    ],
    ['layerReflectances of ∞ mm', () => layerReflectances(grey, grey, Number.POSITIVE_INFINITY, clear), /Infinity mm/],
    ['layerReflectances of 2e9', () => layerReflectances(constantSpectrum(2e9), grey, 1, clear), /0 to 1000000000/],
    ['absorptionToScattering(0)', () => absorptionToScattering(0), /Rinf is 0/],
    ['absorptionToScattering(45)', () => absorptionToScattering(45), /never percent/],
    ['layerReflectances of one band', () => layerReflectances([1], grey, 1, clear), /absorption has 1 bands; give 36/],
    [
      'layerReflectances over 2',
      () =>
        layerReflectances(
          grey,
          grey,
          1,
          grey.map((_, i) => (i < 3 ? 0 : 2)),
        ),
      /At 410 nm .* Rg 2/,
    ],
    ['reflectancesInfinite of K -1', () => reflectancesInfinite(constantSpectrum(-1), grey), /At 380 nm/],
  ])('%s throws RangeError naming the value and the remedy', (_, call, message) => {
    expect(call).toThrow(RangeError);
    expect(call).toThrow(message);
  });

  test('layerReflectances writes into the array that it is given', () => {
    const out = new Float64Array(BAND_COUNT);
    expect(layerReflectances(constantSpectrum(1), constantSpectrum(1), 1, constantSpectrum(0), out)).toBe(out);
  });
});
