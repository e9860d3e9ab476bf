import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  crowdingFactor,
  type LightPath,
  NO_PATH,
  pathFactor,
  pathFactorSlope,
  scatteredBefore,
  USUAL_OPTICS,
} from '../../src/optics/optical-model.ts';
import { BAND_COUNT, constantSpectrum } from '../../src/optics/spectrum.ts';
import { alongPath, type Layer, stackReflectance } from '../../src/optics/stack.ts';
import { BESIDE_GLOSS, fresnelSurface } from '../../src/optics/surface.ts';
import { INDEX_PLASTIC } from '../../src/tables/surface.ts';
import { magnitude, reflectance, spectrum, thickness } from './arbitrary.ts';
import { expectAllClose, expectClose } from './close.ts';

const path: fc.Arbitrary<LightPath> = fc.record({
  d: fc.double({ min: 0, max: 0.9, noNaN: true }),
  s0: fc.double({ min: 0.05, max: 5, noNaN: true }),
});
const scattered = fc.oneof(
  fc.constant(0),
  fc.double({ min: -4, max: 2, noNaN: true }).map((power) => 10 ** power),
);
const plain: fc.Arbitrary<Layer> = fc.record({
  absorption: spectrum(magnitude),
  scattering: spectrum(magnitude),
  thickness,
});
const flaked: fc.Arbitrary<Layer> = plain.map((layer) => ({
  ...layer,
  flakes: [{ perMm: 0.1, reflectance: constantSpectrum(0.6) }],
}));
const layers = fc.array(fc.oneof(plain, flaked), { minLength: 1, maxLength: 3 });

/** Mean of 1/cos of light that falls on a surface from all sides (Lambert) and is bent by it, some of it thrown back. */
function meanPath(n: number, thrownBack: (sin2: number, cos: number, inside: number) => number): number {
  const steps = 200_000;
  let light = 0;
  let way = 0;
  for (let i = 0; i < steps; i++) {
    const sin2 = (i + 0.5) / steps;
    const inside = Math.sqrt(1 - sin2 / (n * n));
    const entered = 1 - thrownBack(sin2, Math.sqrt(1 - sin2), inside);
    light += entered;
    way += entered / inside;
  }
  return way / light;
}

/** Fresnel's reflectance of light that is not polarised. */
function fresnel(n: number): (sin2: number, cos: number, inside: number) => number {
  return (_, cos, inside) => {
    const across = (cos - n * inside) / (cos + n * inside);
    const along = (n * cos - inside) / (n * cos + inside);
    return (across * across + along * along) / 2;
  };
}

describe('pathFactor', () => {
  test('the usual path of a clear body is that of light bent by a surface of n = 1.5, against diffuse light', () => {
    // Bent into everything (n = 1), light goes as in Kubelka's layer: twice the thickness.
    expectClose(
      meanPath(1.000001, () => 0),
      2,
      0.01,
    );
    const even = meanPath(INDEX_PLASTIC, () => 0);
    expectClose(even, 2 * INDEX_PLASTIC ** 2 * (1 - Math.sqrt(1 - 1 / INDEX_PLASTIC ** 2)), 1e-6);
    const throughSurface = meanPath(INDEX_PLASTIC, fresnel(INDEX_PLASTIC));
    expectClose(fresnel(INDEX_PLASTIC)(0, 1, 1), fresnelSurface(INDEX_PLASTIC).k1, 1e-12);
    for (const way of [even, throughSurface]) expectClose(1 - way / 2, USUAL_OPTICS.path.d, 0.01);
  });

  test('pathFactor is 1 − d where nothing scatters, 1 where all does, half way at s0, and grows between', () => {
    fc.assert(
      fc.property(path, scattered, scattered, ({ d, s0 }, one, other) => {
        expect(pathFactor({ d, s0 }, 0)).toBe(1 - d);
        expectClose(pathFactor({ d, s0 }, 1e12), 1, 1e-11);
        expectClose(pathFactor({ d, s0 }, s0), 1 - d / 2, 1e-15);
        const [less, more] = [Math.min(one, other), Math.max(one, other)];
        expect(pathFactor({ d, s0 }, more)).toBeGreaterThanOrEqual(pathFactor({ d, s0 }, less));
      }),
    );
  });

  test('pathFactorSlope is its slope', () => {
    fc.assert(
      fc.property(path, scattered, (path, at) => {
        const step = 1e-5 * (at + path.s0);
        // From above alone: below nothing there is none.
        const [here, half, whole] = [0, 1, 2].map((steps) => pathFactor(path, at + steps * step)) as [
          number,
          number,
          number,
        ];
        expectClose(pathFactorSlope(path, at), (4 * half - whole - 3 * here) / (2 * step), 1e-6 * (1 / path.s0));
      }),
    );
  });

  test('without a path K and S stay as they are', () => {
    fc.assert(fc.property(scattered, (at) => void expect(pathFactor(NO_PATH, at)).toBe(1)));
  });

  test('scatteredBefore finds what a bait scatters from what light meets of it', () => {
    fc.assert(
      fc.property(path, scattered, (path, at) => {
        expectClose(scatteredBefore(path, at * pathFactor(path, at)), at, 1e-9 * at + 1e-12);
      }),
    );
  });
});

describe('a bait and the path of light in it', () => {
  test('light passes a clear layer over a card twice, along its path', () => {
    const clear = { absorption: constantSpectrum(0.1), scattering: constantSpectrum(0), thickness: 3 };
    const R = stackReflectance([clear], 0.9, undefined, { d: 0.4, s0: 0.6 })[0]!;
    expectClose(R, 0.9 * Math.exp(-2 * 0.1 * 0.6 * 3), 1e-15);
  });

  test('without a path, and where much scatters, it is Kubelka and Munk’s', () => {
    fc.assert(
      fc.property(layers, reflectance, path, (layers, backing, path) => {
        const plain = stackReflectance(layers, backing, BESIDE_GLOSS);
        expectAllClose(stackReflectance(layers, backing, BESIDE_GLOSS, NO_PATH), plain, 0);
        const cloud = { absorption: constantSpectrum(0.5), scattering: constantSpectrum(1e7), thickness: 1 };
        const cloudy = [...layers, cloud];
        expectAllClose(
          stackReflectance(cloudy, backing, BESIDE_GLOSS, path),
          stackReflectance(cloudy, backing, BESIDE_GLOSS),
          1e-6,
        );
      }),
    );
  });

  test('a layer cut in two is the same layer', () => {
    fc.assert(
      fc.property(
        plain,
        fc.double({ min: 0, max: 1, noNaN: true }),
        reflectance,
        path,
        (whole, part, backing, path) => {
          const cut = [part, 1 - part].map((share) => ({ ...whole, thickness: share * whole.thickness }));
          expectAllClose(
            stackReflectance(cut, backing, BESIDE_GLOSS, path),
            stackReflectance([whole], backing, BESIDE_GLOSS, path),
            1e-11,
          );
        },
      ),
    );
  });

  test('alongPath gives the layers of that bait with K′ for K and S′ for S, whatever of it is looked through', () => {
    fc.assert(
      fc.property(layers, reflectance, path, (layers, backing, path) => {
        const met = alongPath(layers, path);
        expectAllClose(
          stackReflectance(met, backing, BESIDE_GLOSS),
          stackReflectance(layers, backing, BESIDE_GLOSS, path),
          1e-12,
        );
        for (let band = 0; band < BAND_COUNT; band++) {
          const all = layers.reduce((sum, { scattering, thickness }) => sum + scattering[band]! * thickness, 0);
          const factor = 1 - path.d / (1 + all / path.s0);
          for (const [i, { absorption, scattering }] of layers.entries()) {
            expectClose(met[i]!.absorption[band]!, absorption[band]! * factor, 1e-12 * absorption[band]!);
            expectClose(met[i]!.scattering[band]!, scattering[band]! * factor, 1e-12 * scattering[band]!);
          }
        }
      }),
    );
  });
});

test('crowdingFactor takes from scattering as load grows, and nothing where there is none', () => {
  expect(crowdingFactor(USUAL_OPTICS, 0.1)).toBe(1);
  expectClose(crowdingFactor({ crowding: 5 }, 0.02), Math.exp(-0.1), 1e-15);
  expect(crowdingFactor({ crowding: 5 }, 0)).toBe(1);
  // A cup that can't be: more of it than of the plastic.
  expect(crowdingFactor({ crowding: -5 }, 1e9)).toBe(crowdingFactor({ crowding: -5 }, 1));
});
