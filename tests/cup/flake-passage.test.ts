import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { tooNarrow } from '../../src/cup/flake-passage.ts';

const INCH = 25.4;

describe('tooNarrow(flake, mold)', () => {
  // Common practice, no source: a gate at least twice the flake, a thin part at least once.
  test.each([
    ['an eighth of an inch in claws of 2.6 mm', 0.125 * INCH, { thinMm: 2.6 }, 'thin'],
    ['an eighth of an inch through a gate of 6 mm', 0.125 * INCH, { gateMm: 6, thinMm: 4.5 }, 'gate'],
    ['an eighth of an inch through a quarter', 0.125 * INCH, { gateMm: 0.25 * INCH, thinMm: 0.125 * INCH }, undefined],
    ['.062 through 3 mm', 0.062 * INCH, { gateMm: 3, thinMm: 1.6 }, 'gate'],
    ['.040 through 3 mm into a tail of 1.6 mm', 0.04 * INCH, { gateMm: 3, thinMm: 1.6 }, undefined],
    ['.062 poured open into a tip of 4.5 mm', 0.062 * INCH, { thinMm: 4.5 }, undefined],
  ] as const)('%s', (_, flake, mold, at) => {
    expect(tooNarrow(flake, mold)?.at).toBe(at);
  });

  test('a smaller flake and a wider mold never jam where the larger and the narrower pass', () => {
    const mm = fc.double({ min: 0.1, max: 8, noNaN: true });
    fc.assert(
      fc.property(mm, mm, mm, fc.double({ min: 1, max: 3, noNaN: true }), (flake, gateMm, thinMm, times) => {
        fc.pre(tooNarrow(flake, { gateMm, thinMm }) === undefined);
        expect(tooNarrow(flake / times, { gateMm, thinMm })).toBeUndefined();
        expect(tooNarrow(flake, { gateMm: gateMm * times, thinMm: thinMm * times })).toBeUndefined();
        expect(tooNarrow(flake, { thinMm })).toBeUndefined();
      }),
    );
  });
});
