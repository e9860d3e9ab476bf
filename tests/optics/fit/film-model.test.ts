import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  backingInside,
  filmState,
  type LayerSlopes,
  layerSlopes,
  mixFilm,
} from '../../../src/optics/fit/film-model.ts';
import { BESIDE_GLOSS, IN_AIR, surfaceInward, surfaceOutward } from '../../../src/optics/surface.ts';
import { expectClose } from '../close.ts';
import { layerReflectance } from '../one-band.ts';

const logs = fc.double({ min: -9, max: 7, noNaN: true }).map(Math.exp);
const unit = fc.double({ min: 0, max: 0.99, noNaN: true });

test('layerSlopes(K, S, thickness, Rg) is the layer with its surface, and the slopes are those of a small step', () => {
  const at = (K: number, S: number, thickness: number, Rg: number): number =>
    surfaceOutward(layerReflectance(K, S, thickness, Rg), IN_AIR);
  fc.assert(
    fc.property(logs, logs, fc.double({ min: 0.2, max: 5, noNaN: true }), unit, (K, S, thickness, Rg) => {
      const out: LayerSlopes = { R: 0, byK: 0, byS: 0 };
      layerSlopes(K, S, thickness, Rg, IN_AIR, out);
      expectClose(out.R, at(K, S, thickness, Rg), 1e-13);
      const h = 1e-4;
      const byLnK = (at(K * (1 + h), S, thickness, Rg) - at(K * (1 - h), S, thickness, Rg)) / (2 * h);
      const byLnS = (at(K, S * (1 + h), thickness, Rg) - at(K, S * (1 - h), thickness, Rg)) / (2 * h);
      expectClose(out.byK * K, byLnK, 1e-7, 'by ln K');
      expectClose(out.byS * S, byLnS, 1e-7, 'by ln S');
    }),
    { numRuns: 1000 },
  );
});

test('layerSlopes(…, surface) leaves the gloss out where the instrument does', () => {
  const out: LayerSlopes = { R: 0, byK: 0, byS: 0 };
  layerSlopes(1e6, 1e-6, 1, 0.5, BESIDE_GLOSS, out);
  expectClose(out.R, 0, 1e-9);
});

test('mixFilm(film) takes fractions by mass through the factors, so that their scale does not matter', () => {
  const band = (value: number): Float64Array => Float64Array.of(value);
  const materials = [
    { absorption: band(2), scattering: band(10), factor: 1 },
    { absorption: band(6), scattering: band(2), factor: 3 },
  ];
  for (const scale of [1, 0.01, 100]) {
    const state = filmState(1, 2);
    mixFilm({ materials: [0, 1], amounts: [0.6 * scale, 0.4 * scale] }, materials, 'fractions', state);
    // 0.6 · 1 against 0.4 · 3 is one third against two thirds.
    expectClose(state.K[0]!, 2 / 3 + 12 / 3, 1e-12);
    expectClose(state.S[0]!, 10 / 3 + 4 / 3, 1e-12);
  }
});

test('mixFilm(film) adds concentrations as they are', () => {
  const band = (value: number): Float64Array => Float64Array.of(value);
  const materials = [
    { absorption: band(0.01), scattering: band(0.02), factor: 1 },
    { absorption: band(6), scattering: band(2), factor: 1 },
  ];
  const state = filmState(1, 2);
  mixFilm({ materials: [0, 1], amounts: [1, 0.005] }, materials, 'concentrations', state);
  expectClose(state.K[0]!, 0.04, 1e-12);
  expectClose(state.S[0]!, 0.03, 1e-12);
});

test('backingInside(backing) is the backing without its surface, never black nor perfect', () => {
  expectClose(backingInside([0.5], IN_AIR)[0]!, surfaceInward(0.5, IN_AIR), 1e-15);
  expect(backingInside([0.01], IN_AIR)[0]).toBeGreaterThan(0);
  expect(backingInside([1.1], IN_AIR)[0]).toBeLessThan(1);
});
