import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { labOf } from '../../src/optics/cielab.ts';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
import { reflectancesInfinite } from '../../src/optics/kubelka-munk.ts';
import { constantSpectrum } from '../../src/optics/spectrum.ts';
import { type Layer, stackReflectance, swirlReflectance } from '../../src/optics/stack.ts';
import { BESIDE_GLOSS, IN_AIR, surfaceOutwardSpectrum } from '../../src/optics/surface.ts';
import { magnitude, reflectance, spectrum, thickness } from './arbitrary.ts';
import { expectAllClose, expectClose } from './close.ts';
import { layerReflectance, layerTransmittance } from './one-band.ts';

const body = (K: number, S: number): { absorption: Float64Array; scattering: Float64Array } => ({
  absorption: constantSpectrum(K),
  scattering: constantSpectrum(S),
});

const layer: fc.Arbitrary<Layer> = fc.record({
  absorption: spectrum(magnitude),
  scattering: spectrum(magnitude),
  thickness,
});

describe('stackReflectance', () => {
  test('stackReflectance worked by hand: two clear layers over 0.9 pass the light four times', () => {
    const R = stackReflectance(
      [
        { ...body(0.1, 0), thickness: 2 },
        { ...body(0.3, 0), thickness: 1 },
      ],
      0.9,
    );
    expectClose(R[0]!, 0.9 * Math.exp(-2 * (0.1 * 2 + 0.3 * 1)), 1e-15);
  });

  test('stackReflectance of layers is Kubelka’s sum of the light that goes back and forth between them', () => {
    fc.assert(
      fc.property(
        magnitude,
        magnitude,
        thickness,
        magnitude,
        magnitude,
        thickness,
        reflectance,
        (K1, S1, X1, K2, S2, X2, Rg) => {
          // J. Opt. Soc. Am. 44:330 (1954): R = R1 + T1² R2 / (1 − R1 R2), R2 that of the far layer on its backing.
          const R1 = layerReflectance(K1, S1, X1, 0);
          const T1 = layerTransmittance(K1, S1, X1);
          const R2 = layerReflectance(K2, S2, X2, Rg);
          fc.pre(R1 * R2 < 0.999);
          const stack = stackReflectance(
            [
              { ...body(K1, S1), thickness: X1 },
              { ...body(K2, S2), thickness: X2 },
            ],
            Rg,
          );
          expectClose(stack[0]!, R1 + (T1 * T1 * R2) / (1 - R1 * R2), 1e-11);
        },
      ),
    );
  });

  test('stackReflectance of two equal halves is the whole layer', () => {
    fc.assert(
      fc.property(layer, reflectance, (whole, backing) => {
        const half = { ...whole, thickness: whole.thickness / 2 };
        expectAllClose(stackReflectance([half, half], backing), stackReflectance([whole], backing), 1e-11);
      }),
      { numRuns: 60 },
    );
  });

  test('stackReflectance is between 0 and 1, and is the near layer alone where that one hides all', () => {
    fc.assert(
      fc.property(fc.array(layer, { maxLength: 4 }), reflectance, (layers, backing) => {
        for (const R of stackReflectance(layers, backing)) expect(R >= 0 && R <= 1).toBe(true);
        const hiding = { absorption: constantSpectrum(1), scattering: constantSpectrum(1), thickness: 1e4 };
        expectAllClose(
          stackReflectance([hiding, ...layers], backing),
          reflectancesInfinite(hiding.absorption, hiding.scattering),
          1e-12,
        );
      }),
      { numRuns: 40 },
    );
  });

  test('stackReflectance depends on the order: why the two sides of a laminate differ', () => {
    const [peat, cream] = [body(0.6, 0.3), body(0.01, 0.5)];
    const [near, far] = [
      [peat, cream],
      [cream, peat],
    ].map((sides) =>
      labOf(
        stackReflectance(
          sides.map((side) => ({ ...side, thickness: 4 })),
          0.9,
        ),
      ),
    );
    expect(deltaE00(near!, far!)).toBeGreaterThan(10);
  });

  test('stackReflectance without layers is the backing, a number or a spectrum, never the same array', () => {
    const backing = constantSpectrum(0.4);
    expectAllClose(stackReflectance([], 0.4), backing, 0);
    const R = stackReflectance([], backing);
    expectAllClose(R, backing, 0);
    expect(R).not.toBe(backing);
  });

  test('stackReflectance goes out through a surface once, at the end', () => {
    const layers = [{ ...body(0.1, 0.3), thickness: 3 }];
    for (const surface of [IN_AIR, BESIDE_GLOSS]) {
      expectAllClose(
        stackReflectance(layers, 0.9, surface),
        surfaceOutwardSpectrum(stackReflectance(layers, 0.9), surface),
        0,
      );
    }
  });

  test('stackReflectance with flake in one layer is that layer over the rest', () => {
    const flakes = [{ perMm: 0.3, reflectance: constantSpectrum(0.8) }];
    const near = { ...body(0.05, 0.02), thickness: 3, flakes };
    const far = { ...body(0.4, 0.6), thickness: 3 };
    const under = stackReflectance([far], 0.03);
    expectAllClose(stackReflectance([near, far], 0.03), stackReflectance([near], under), 0);
    expect(stackReflectance([near, far], 0.03)[0]!).toBeGreaterThan(
      stackReflectance([{ ...near, flakes: [] }, far], 0.03)[0]! + 0.1,
    );
  });

  test('stackReflectance refuses a thickness below 0 and a backing in percent', () => {
    expect(() => stackReflectance([{ ...body(1, 1), thickness: -1 }], 0.9)).toThrow(/thickness -1 mm/);
    expect(() => stackReflectance([{ ...body(1, 1), thickness: 1 }], 90)).toThrow(/Rg 90/);
    expect(() => stackReflectance([], constantSpectrum(0.5).subarray(1))).toThrow(/35 bands/);
  });
});

describe('streaks', () => {
  test('swirlReflectance is the mean by area, and lies between its extremes', () => {
    fc.assert(
      fc.property(spectrum(reflectance), spectrum(reflectance), thickness, (one, other, share) => {
        const mean = swirlReflectance([
          { reflectance: one, share },
          { reflectance: other, share: 1 },
        ]);
        mean.forEach((R, band) => {
          expectClose(R, (share * one[band]! + other[band]!) / (share + 1), 1e-14);
        });
      }),
      { numRuns: 40 },
    );
  });

  test('streaks refuse shares of 0 and no cups', () => {
    expect(() => swirlReflectance([])).toThrow(/No cups/);
    const grey = constantSpectrum(0.5);
    expect(() => swirlReflectance([{ reflectance: grey, share: 0 }])).toThrow(/Share is 0/);
    expect(() => swirlReflectance([{ reflectance: grey, share: Number.NaN }])).toThrow(/Share is NaN/);
  });
});
