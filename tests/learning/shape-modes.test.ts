import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { LearnedShelf } from '../../src/learning/learned-shelf.ts';
import { shapeModes } from '../../src/learning/shape-modes.ts';
import { symmetricEigen } from '../../src/learning/symmetric-eigen.ts';
import { BAND_COUNT, WAVELENGTHS } from '../../src/optics/spectrum.ts';
import { MATERIAL_PRIORS } from '../../src/tables/material-priors.ts';

test('the eigenvalues of a chain of springs are those of the closed form', () => {
  // Second differences of n points: 2 − 2 cos(kπ/(n + 1)).
  const n = 12;
  const chain = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    chain[i * n + i] = 2;
    if (i > 0) chain[i * n + i - 1] = chain[(i - 1) * n + i] = -1;
  }
  symmetricEigen(chain, n).forEach(({ value, vector }, index) => {
    const k = n - index;
    expect(value).toBeCloseTo(2 - 2 * Math.cos((k * Math.PI) / (n + 1)), 12);
    // Its shape is sin(ikπ/(n + 1)), of one sign or the other.
    const scale = Math.sqrt(2 / (n + 1)) * Math.sign(vector[0]!);
    for (let i = 0; i < n; i++) expect(vector[i]).toBeCloseTo(scale * Math.sin(((i + 1) * k * Math.PI) / (n + 1)), 10);
  });
});

test('axes of any symmetric matrix put it together again', () => {
  const entries = fc.array(fc.double({ min: -3, max: 3, noNaN: true }), { minLength: 25, maxLength: 25 });
  fc.assert(
    fc.property(entries, (values) => {
      const A = values.map((_, i) => values[i]! + values[(i % 5) * 5 + Math.floor(i / 5)]!);
      const pairs = symmetricEigen(A, 5);
      for (let i = 0; i < 25; i++) {
        const sum = pairs.reduce((s, p) => s + p.value * p.vector[Math.floor(i / 5)]! * p.vector[i % 5]!, 0);
        expect(sum).toBeCloseTo(A[i]!, 10);
      }
      expect(pairs.map(({ value }) => value)).toEqual(pairs.map(({ value }) => value).sort((x, y) => y - x));
    }),
  );
});

test.each(Object.entries(MATERIAL_PRIORS))(
  'the modes of a %s hold all but a little of what is in doubt',
  (_, prior) => {
    const { levelSd, shapeSd } = prior.absorption;
    const modes = shapeModes(levelSd, shapeSd);
    for (let i = 0; i < BAND_COUNT; i++) {
      const held = modes.reduce((sum, mode) => sum + mode[i]! ** 2, 0);
      const all = levelSd ** 2 + shapeSd ** 2;
      expect(held).toBeLessThanOrEqual(all + 1e-9);
      // The ends of the spectrum hang together with one side only.
      expect(held / all).toBeGreaterThan(i < 2 || i > BAND_COUNT - 3 ? 0.93 : 0.985);
    }
    const at = (nm: number): number => WAVELENGTHS.indexOf(nm);
    const apart = modes.reduce((sum, mode) => sum + mode[at(500)]! * mode[at(555 + 5)]!, 0);
    expect(apart).toBeCloseTo(levelSd ** 2 + shapeSd ** 2 * Math.exp(-((60 / 55) ** 2) / 2), 1);
  },
);

test('a learned shelf of nothing is a plain value', () => {
  const nothing: LearnedShelf = {
    data: { materials: [], looks: [] },
    theta: [],
    weights: { looks: [], looksAlone: [], cups: {}, labels: {} },
    optics: { backings: { white: 0.9, black: 0.03 }, path: { d: 0.43, s0: 0.6 }, crowding: 0 },
    constants: {},
  };
  expect(JSON.parse(JSON.stringify(nothing))).toEqual(nothing);
});
