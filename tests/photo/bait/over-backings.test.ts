import fc from 'fast-check';
import { expect, test } from 'vitest';
import { layerReflectances } from '../../../src/optics/kubelka-munk.ts';
import { constantSpectrum } from '../../../src/optics/spectrum.ts';
import { overBackings } from '../../../src/photo/bait/over-backings.ts';
import { BLACK_BACKING, WHITE_BACKING } from '../../../src/tables/backings.ts';

/** A layer by Kubelka and Munk over a grey. */
const layer = (K: number, S: number, G: number): number =>
  layerReflectances(constantSpectrum(K), constantSpectrum(S), 6, constantSpectrum(G))[0]!;

const grey = (r: number, g = r, b = r): { r: number; g: number; b: number } => ({ r, g, b });

const coefficient = fc.double({ min: 0.001, max: 2, noNaN: true });
const paper = fc.double({ min: 0.6, max: 0.95, noNaN: true });
const ink = fc.double({ min: 0.01, max: 0.15, noNaN: true });

test('a layer of any K and S, seen over any paper and ink, is over the backings of the book what Kubelka and Munk say', () => {
  fc.assert(
    fc.property(coefficient, coefficient, paper, ink, (K, S, Gw, Gk) => {
      const seen = { white: grey(layer(K, S, Gw)), black: grey(layer(K, S, Gk)) };
      const over = overBackings(seen, { white: grey(Gw), black: grey(Gk) });
      expect(over.white.g).toBeCloseTo(layer(K, S, WHITE_BACKING), 6);
      expect(over.black.g).toBeCloseTo(layer(K, S, BLACK_BACKING), 6);
    }),
  );
});

test('each channel goes by itself, and a channel below 0 stays a number near it', () => {
  const over = overBackings(
    { white: grey(0.6, 0.3, -0.02), black: grey(0.2, 0.3, -0.01) },
    { white: grey(0.87), black: grey(0.05) },
  );
  expect(over.white.r).toBeGreaterThan(0.6);
  expect(over.black.r).toBeLessThan(0.2);
  expect(over.white.g).toBeCloseTo(0.3, 12);
  expect(over.white.b).toBeCloseTo(-0.02, 2);
});

test('on a card without a black half nothing is known of what passes, and the colours stay', () => {
  const seen = { white: grey(0.5), black: grey(0.4) };
  expect(overBackings(seen, { white: grey(0.87), black: grey(0.86) })).toEqual(seen);
});
