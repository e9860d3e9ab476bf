import fc from 'fast-check';
import { test } from 'vitest';
import { labOf } from '../../src/optics/cielab.ts';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
import type { SpreadFlake } from '../../src/optics/flake.ts';
import { flakedSlopes, layerSlopes } from '../../src/optics/layer-slopes.ts';
import { BAND_COUNT, constantSpectrum } from '../../src/optics/spectrum.ts';
import { expectClose } from '../optics/close.ts';
import { layerReflectance } from '../optics/one-band.ts';
import { reflectanceWithFlakes } from '../optics/one-flaked-layer.ts';

const logs = (from: number, to: number): fc.Arbitrary<number> =>
  fc.double({ min: from, max: to, noNaN: true }).map((power) => 10 ** power);
const coefficients = fc.oneof({ weight: 8, arbitrary: logs(-5, 1.5) }, { weight: 1, arbitrary: fc.constant(0) });
const thicknesses = logs(-1, 1.3);
const backings = fc.double({ min: 0, max: 1, noNaN: true });

test('layerSlopes(K, S, thickness, Rg) has the reflectance of layerReflectance, and its slopes', () => {
  fc.assert(
    fc.property(coefficients, coefficients, thicknesses, backings, (K, S, thickness, Rg) => {
      const out = new Float64Array(4);
      layerSlopes(K, S, thickness, Rg, out);
      const what = `K ${K}, S ${S}, thickness ${thickness}, Rg ${Rg}`;
      expectClose(out[0]!, layerReflectance(K, S, thickness, Rg), 1e-12, what);
      // At K = 0 the slope is that to the right.
      const slope = (at: (x: number) => number, x: number): number => {
        const h = 1e-4 * (x + 1e-3 / thickness);
        return x > h ? (at(x + h) - at(x - h)) / (2 * h) : (4 * at(x + h) - 3 * at(x) - at(x + 2 * h)) / (2 * h);
      };
      const close = (value: number, expected: number, name: string): void =>
        expectClose(value, expected, 2e-3 * Math.abs(expected) + 1e-5 * thickness, `${name}, ${what}`);
      close(
        out[1]!,
        slope((x) => layerReflectance(x, S, thickness, Rg), K),
        'by K',
      );
      close(
        out[2]!,
        slope((x) => layerReflectance(K, x, thickness, Rg), S),
        'by S',
      );
      const Rh = Rg > 0.5 ? Rg - 1e-5 : Rg + 1e-5;
      close(
        out[3]!,
        (layerReflectance(K, S, thickness, Rh) - layerReflectance(K, S, thickness, Rg)) / (Rh - Rg),
        'by Rg',
      );
    }),
    { numRuns: 500 },
  );
});

test('flakedSlopes(…) is within ΔE00 0.05 of reflectanceWithFlakes for the loads of a cup', () => {
  fc.assert(
    fc.property(
      logs(-3, 0.8),
      logs(-3, 0.8),
      fc.double({ min: 2, max: 14, noNaN: true }),
      logs(-3, -0.5),
      backings,
      (K, S, thickness, perMm, Rg) => {
        const flakes: SpreadFlake[] = [
          { perMm, reflectance: constantSpectrum(0.6) },
          { perMm: perMm / 3, reflectance: constantSpectrum(0.05) },
        ];
        const exact = reflectanceWithFlakes(
          constantSpectrum(K),
          constantSpectrum(S),
          thickness,
          flakes,
          constantSpectrum(Rg),
        );
        const out = new Float64Array(4);
        const fast = Float64Array.from({ length: BAND_COUNT }, (_, band) => {
          flakedSlopes(K, S, thickness, flakes, band, Rg, out);
          return out[0]!;
        });
        expectClose(
          deltaE00(labOf(fast), labOf(exact)),
          0,
          0.05,
          `K ${K}, S ${S}, ${thickness} mm, ${perMm} per mm, Rg ${Rg}`,
        );
      },
    ),
    { numRuns: 200 },
  );
});
