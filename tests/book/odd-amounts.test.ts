import fc from 'fast-check';
import { expect, test } from 'vitest';
import { compileWith, file } from './sample.ts';

const amount = (least: number, most: number): fc.Arbitrary<string> =>
  fc
    .double({ min: Math.log10(least), max: Math.log10(most), noNaN: true })
    .map((exponent) => (10 ** exponent).toFixed(6).replace(/\.?0+$/, '') || '1');

const bench = fc.record({
  drops: fc.boolean(),
  scale: fc.constantFrom('0.001 g', '0.01 g', '0.1 g', '1 g', '1/8 oz'),
  spoons: fc.constantFrom('', ', spoons: []', ', spoons: [1 tsp]'),
});

test('compileBook(…) computes every small dose, whatever the scale, the share and the batch', () => {
  fc.assert(
    fc.property(
      bench,
      amount(0.01, 20),
      fc.constantFrom('100 ml', 'gal', '1 l'),
      fc.constantFrom('1%', '2%', '40%'),
      fc.integer({ min: 1, max: 40 }),
      ({ drops, scale, spoons }, drop, per, share, baits) => {
        const { book, diagnostics } = compileWith({
          'book.md': file(`title: T\ntools: { drops: ${drops}, scale: ${scale}${spoons} }`),
          'colours/smoke.md': file(
            [
              `title: Smoke\nmold: minnow\npattern: tipped\nbaits: ${baits}\ncups:`,
              `  body: { plastic: 120 ml, add: { peat: ${drop} drops per ${per}, frost: 0.01 % } }`,
              `  tip: { share: ${share}, plastic: 120 ml, add: { peat: ${drop} drops per ${per} } }`,
            ].join('\n'),
          ),
        });
        expect(diagnostics).toEqual([]);
        const { expected, bound } = book!.recipes[0]!.spread;
        expect(expected).toBeGreaterThan(0);
        expect(bound).toBeLessThan(150);
      },
    ),
    { numRuns: 40 },
  );
});
