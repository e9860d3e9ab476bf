import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Lab } from '../../src/optics/cielab.ts';
import { averagePhotos } from '../../src/photo/average-photos.ts';
import { doubtOf } from '../../src/photo/photo-doubt.ts';
import type { PhotoFlake, PhotoMeasured } from '../../src/photo/photo-measured.ts';

const TERMS = { tone: 2, paper: 0.8, camera: 1.5, field: 0.4, mixed: 0, own: 0.1, clip: 0 };

function photo(overWhite: Lab, others: Partial<PhotoMeasured> = {}): PhotoMeasured {
  return {
    kind: 'measured',
    card: 'small',
    overWhite,
    overBlack: { L: overWhite.L - 20, a: overWhite.a, b: overWhite.b },
    contrast: { ratio: 0.4, bound: 0.06 },
    doubt: doubtOf(TERMS),
    noFlake: 'none-seen',
    baitPixels: [],
    zonePixels: [],
    warnings: [],
    ...others,
  };
}

const at = (L: number): PhotoMeasured => photo({ L, a: 10, b: 20 });

test('one photo is its own mean, and none is a slip of the program', () => {
  const one = at(50);
  expect(averagePhotos([one])).toBe(one);
  expect(() => averagePhotos([])).toThrow(RangeError);
});

test('colours and contrast are means', () => {
  const { overWhite, overBlack, contrast } = averagePhotos([
    photo({ L: 50, a: 10, b: 20 }, { contrast: { ratio: 0.4, bound: 0.06 } }),
    photo({ L: 53, a: 11, b: 17 }, { contrast: { ratio: 0.46, bound: 0.06 } }),
  ]);
  expect(overWhite).toEqual({ L: 51.5, a: 10.5, b: 18.5 });
  expect(overBlack?.L).toBe(31.5);
  expect(contrast?.ratio).toBeCloseTo(0.43, 12);
});

test('three shots of one moment gain only what is each photo’s own', () => {
  const { doubt } = averagePhotos([at(50), at(50), at(50)]);
  const expected = 2.1 * Math.sqrt(4 + 0.64 + 2.25 + (0.16 + 0.01) / 3);
  expect(doubt.bound).toBeCloseTo(expected, 9);
});

test('photos that lie as far apart as their doubt allows gain as three in other light do, and no more', () => {
  // One photo is within 2.1 · √7.06 = 5.58; half of the squares goes by a third.
  const { doubt, warnings } = averagePhotos([at(46.4), at(50), at(53.6)]);
  expect(doubt.bound / at(50).doubt.bound).toBeGreaterThan(0.8);
  expect(doubt.bound / at(50).doubt.bound).toBeLessThan(0.86);
  expect(warnings).toEqual([]);
});

test('photos that are hardly of one bait are doubted more than one of them, and it is said', () => {
  const { doubt, warnings } = averagePhotos([at(30), at(70)]);
  expect(doubt.bound).toBeGreaterThan(at(50).doubt.bound);
  expect(doubt.largest).toBe('own');
  expect(warnings).toEqual(['photos-differ']);
});

test('a mean of photos within their doubt is never doubted more than one, nor less than by all of them for itself', () => {
  const L = fc.double({ min: 48, max: 52, noNaN: true });
  fc.assert(
    fc.property(fc.array(L, { minLength: 2, maxLength: 6 }), (all) => {
      const { doubt, overWhite } = averagePhotos(all.map(at));
      const one = at(50).doubt.bound;
      expect(doubt.bound).toBeLessThanOrEqual(one * (1 + 1e-9));
      expect(doubt.bound).toBeGreaterThan(one * Math.sqrt(0.5));
      expect(doubt.bound).toBeCloseTo(2.1 * Math.hypot(...Object.values(doubt.terms)), 9);
      expect(overWhite!.L).toBeGreaterThanOrEqual(Math.min(...all) - 1e-9);
    }),
  );
});

test('halves that two photos show between them are put together', () => {
  const { overBlack: _, contrast: __, ...white } = at(50);
  const { overWhite: ___, contrast: ____, ...black } = at(60);
  const both = averagePhotos([
    { ...white, warnings: ['one-half', 'shadow'] },
    { ...black, warnings: ['one-half'] },
  ]);
  expect([both.overWhite?.L, both.overBlack?.L, both.contrast]).toEqual([50, 40, undefined]);
  expect(both.warnings).toEqual(['shadow']);
});

const flake = (sizeMm: number, coverage: number, lab: Lab, count = 20): PhotoFlake => ({
  sizeMm,
  coverage,
  coverageSd: coverage / Math.sqrt(count),
  lab,
  count,
});
const GOLD = { L: 70, a: 5, b: 50 };
const BLACK = { L: 12, a: 0, b: 0 };
const flaked = (...flakes: PhotoFlake[]): PhotoMeasured => {
  const { noFlake: _, ...rest } = at(50);
  return { ...rest, flakes };
};

test('kinds of flake are paired by colour, and a photo too small to show any has no say', () => {
  const { flakes } = averagePhotos([
    flaked(flake(1, 0.06, BLACK), flake(0.4, 0.04, GOLD, 30)),
    flaked(flake(0.44, 0.05, { L: 74, a: 4, b: 47 }, 40)),
    photo({ L: 50, a: 10, b: 20 }, { noFlake: 'too-few-pixels' }),
  ]);
  expect(flakes?.map(({ count }) => count)).toEqual([40, 20]);
  expect(flakes?.[0]?.sizeMm).toBeCloseTo(0.42, 9);
  expect(flakes?.map(({ coverage }) => Number(coverage.toFixed(9)))).toEqual([0.045, 0.03]);
});

test('a kind that one photo shows as two covers no more than the photos show', () => {
  const dull = { L: 55, a: 5, b: 48 };
  const { flakes } = averagePhotos([
    flaked(flake(0.4, 0.06, GOLD), flake(0.4, 0.06, dull)),
    flaked(flake(0.4, 0.12, GOLD)),
  ]);
  expect(flakes).toHaveLength(2);
  expect(flakes!.reduce((sum, { coverage }) => sum + coverage, 0)).toBeCloseTo(0.12, 9);
});

test('what one of three photos takes for flake is none', () => {
  const { flakes, noFlake } = averagePhotos([flaked(flake(1, 0.01, BLACK)), at(50), at(50)]);
  expect([flakes, noFlake]).toEqual([undefined, 'none-seen']);
  expect(averagePhotos([1, 2].map(() => ({ ...at(50), noFlake: 'too-few-pixels' as const }))).noFlake).toBe(
    'too-few-pixels',
  );
});
