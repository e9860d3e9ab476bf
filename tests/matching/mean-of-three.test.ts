import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { doubtOfThree } from '../../src/matching/target/mean-of-three.ts';
import { seenWith } from '../../src/matching/target/seen-with.ts';
import type { TargetPart } from '../../src/matching/target/target-part.ts';
import { lookDoubt } from '../../src/optics/look-doubt.ts';

/** A part of which one photo was noted with a doubt. */
const photo = (doubt: number, camera?: string): TargetPart => ({
  name: 'body',
  overWhite: { L: 50, a: 10, b: 10 },
  thicknessMm: 9,
  ...seenWith(lookDoubt('screen', doubt), camera),
});

describe('doubtOfThree()', () => {
  test('is what is to be written of the mean: the camera’s part as it was, the rest by the root of three', () => {
    // Of 2.9, which is a deviation of 1.163 along an axis: .6 of the camera, and .9960 / √3.
    expect(doubtOfThree(photo(2.9))).toBeCloseTo(2.073, 3);
    expect(doubtOfThree(photo(2.9, '1'))).toBeCloseTo(doubtOfThree(photo(2.9))!, 10);
  });

  test('is nothing where it was no photo, or all is known', () => {
    expect(doubtOfThree({ ...photo(1), means: 'instrument' })).toBeUndefined();
    const { axisSd: _, ...sure } = photo(1);
    expect(doubtOfThree(sure)).toBeUndefined();
  });

  test('is less than the doubt of one', () => {
    fc.assert(
      fc.property(fc.double({ min: 1.8, max: 20, noNaN: true }), fc.boolean(), (doubt, known) => {
        expect(doubtOfThree(photo(doubt, known ? '1' : undefined))).toBeLessThan(doubt);
      }),
    );
  });
});
