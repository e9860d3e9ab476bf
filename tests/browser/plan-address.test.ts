import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { batchAsked, batchQuery, linesAsked, planQuery } from '../../src/browser/plan-address.ts';

const usual = { baits: 18, mold: 'minnow-3' };
const molds = new Set(['minnow-3', 'craw-3']);
const recipes = new Set(['bog-myrtle', 'alder-smoke']);

describe('the batch of a recipe in the address', () => {
  test.each([
    ['baits=24&mold=craw-3', { baits: 24, mold: 'craw-3' }],
    ['baits=24', { baits: 24, mold: 'minnow-3' }],
    ['mold=craw-3', { baits: 18, mold: 'craw-3' }],
    ['', usual],
    ['baits=-3&mold=gone', usual],
    ['baits=1e9', usual],
    ['baits=2.5', usual],
    ['baits=&mold=', usual],
    ['mold=__proto__', usual],
  ])('batchAsked(%s) takes what makes sense', (query, asked) => {
    expect(batchAsked(new URLSearchParams(query), usual, molds)).toEqual(asked);
  });

  test('batchQuery(batch) is read again, and says nothing of what is usual', () => {
    expect(batchQuery(usual, usual)).toBe('');
    for (const batch of [
      { baits: 24, mold: 'craw-3' },
      { baits: 24, mold: 'minnow-3' },
      { baits: 18, mold: 'craw-3' },
    ])
      expect(batchAsked(new URLSearchParams(batchQuery(batch, usual)), usual, molds)).toEqual(batch);
  });
});

describe('the lines of a plan in the address', () => {
  const line = fc.record({
    recipe: fc.constantFrom(...recipes),
    mold: fc.constantFrom(...molds),
    baits: fc.integer({ min: 1, max: 100_000 }),
  });

  test('linesAsked(planQuery(lines)) are the lines', () => {
    fc.assert(
      fc.property(fc.array(line, { maxLength: 8 }), (lines) => {
        expect(linesAsked(new URLSearchParams(planQuery(lines)), { recipes, molds })).toEqual(lines);
      }),
    );
    expect(planQuery([{ recipe: 'bog-myrtle', mold: 'craw-3', baits: 37 }])).toBe('line=bog-myrtle.craw-3.37');
  });

  test('linesAsked(anything else) leaves out what the book does not have, and takes no more than a hundred', () => {
    const asked = (query: string): unknown => linesAsked(new URLSearchParams(query), { recipes, molds });
    expect(asked('line=gone.craw-3.3&line=bog-myrtle.gone.3&line=bog-myrtle.craw-3.0&line=bog-myrtle&line=')).toEqual(
      [],
    );
    expect(asked('line=bog-myrtle.craw-3.3.4&line=alder-smoke.craw-3.5')).toEqual([
      { recipe: 'alder-smoke', mold: 'craw-3', baits: 5 },
    ]);
    expect(linesAsked(new URLSearchParams('line=bog-myrtle.craw-3.1&'.repeat(200)), { recipes, molds })).toHaveLength(
      100,
    );
  });
});
