import fc from 'fast-check';
import { expect, test } from 'vitest';
import { hexOf } from '../../src/optics/display.ts';
import { constantSpectrum } from '../../src/optics/spectrum.ts';
import { bait } from '../../src/render/swatch/bait.ts';
import { baitLength, baitShape } from '../../src/render/swatch/bait-shapes.ts';
import { recipeCoats } from '../../src/render/swatch/coat.ts';
import { type FlakeKind, flakeField, seenDepth } from '../../src/render/swatch/flake-field.ts';
import { type FlakePattern, flakePatterns } from '../../src/render/swatch/flake-pattern.ts';
import { pour } from '../../src/render/swatch/pour.ts';
import { randomFrom } from '../../src/render/swatch/random-from.ts';
import { discHeight } from '../../src/render/swatch/section.ts';
import { streakPatterns } from '../../src/render/swatch/streaks.ts';
import { BLACK_CARD, luminance, tint, WHITE_CARD } from '../../src/render/swatch/tint.ts';
import { BLACK_BACKING, WHITE_BACKING } from '../../src/tables/backings.ts';
import { SAMPLE_BOOK } from './sample-book.ts';

const HEXAGON: FlakeKind = { hex: '#b8693a', sizeMm: 1.016, outline: 'hexagon', finish: 'metallic', flakesPerMl: 80 };
const DUST: FlakeKind = { hex: '#c0c0c8', sizeMm: 0.2032, outline: 'square', finish: 'hologram', flakesPerMl: 6000 };
const CLEAR = { thicknessMm: 10, contrastRatio: 0 };

const mold = SAMPLE_BOOK.molds.find(({ id }) => id === 'minnow-3')!;
const recipe = SAMPLE_BOOK.recipes.find(({ id }) => id === 'alder-smoke')!;

test('the bare cards have the colours of the book’s backings', () => {
  // A card as it is bought, without plastic on it.
  expect(hexOf(constantSpectrum(WHITE_BACKING)).hex).toBe(WHITE_CARD);
  expect(hexOf(constantSpectrum(BLACK_BACKING)).hex).toBe(BLACK_CARD);
});

test('randomFrom(text) repeats itself and differs from text to text', () => {
  const first = randomFrom('alder-smoke');
  const again = randomFrom('alder-smoke');
  const numbers = Array.from({ length: 1000 }, first);
  expect(Array.from({ length: 1000 }, again)).toEqual(numbers);
  expect(randomFrom('alder-smokf')()).not.toBe(numbers[0]);
});

test('randomFrom(text) is even: 20 cells of 1000 numbers each, by chi-square', () => {
  const random = randomFrom('even');
  const cells = new Array<number>(20).fill(0);
  for (let at = 0; at < 20_000; at++) cells[Math.floor(random() * 20)]!++;
  const chi2 = cells.reduce((sum, count) => sum + (count - 1000) ** 2 / 1000, 0);
  // 99.9 % point of chi-square with 19 degrees of freedom, from memory: 43.8.
  expect(chi2).toBeLessThan(43.8);
});

test('flakeField(kind, depth, seed, budget) holds as many flakes as the cup has in that volume', () => {
  const { sideMm, flakes } = flakeField(HEXAGON, CLEAR, 'dense', 5000);
  const expected = (HEXAGON.flakesPerMl * sideMm ** 2 * CLEAR.thicknessMm) / 1000;
  expect(Math.abs(flakes.length - expected)).toBeLessThanOrEqual(1);
});

test('flakeField(kind, depth, seed, budget) keeps the density whatever the budget', () => {
  fc.assert(
    fc.property(fc.integer({ min: 40, max: 2000 }), fc.constantFrom(HEXAGON, DUST), (budget, kind) => {
      const { sideMm, flakes } = flakeField(kind, CLEAR, 'seed', budget);
      const perSquareMm = (kind.flakesPerMl * CLEAR.thicknessMm) / 1000;
      expect(Math.abs(flakes.length - perSquareMm * sideMm ** 2)).toBeLessThanOrEqual(1);
    }),
  );
});

test('flakeField(kind, depth, seed, budget) shows half of the faces on average, as Cauchy has it', () => {
  const { flakes } = flakeField({ ...HEXAGON, flakesPerMl: 400 }, CLEAR, 'cauchy', 40_000);
  const mean = flakes.reduce((sum, { facing }) => sum + facing, 0) / flakes.length;
  expect(flakes.length).toBeGreaterThan(5000);
  expect(mean).toBeCloseTo(0.5, 1);
});

test('seenDepth(depth) is the whole body where it is clear, and less the more it hides', () => {
  expect(seenDepth(CLEAR)).toBe(10);
  expect(seenDepth({ thicknessMm: 10, contrastRatio: 0.99 })).toBeLessThan(
    seenDepth({ thicknessMm: 10, contrastRatio: 0.95 }),
  );
});

test('flakePatterns(kinds, depth, options) repeats without a seam: what leaves on one side comes in on the other', () => {
  const [{ definition }] = flakePatterns([HEXAGON], CLEAR, { id: 'p', seed: 's', budget: 200, scale: 1 }) as [
    FlakePattern,
  ];
  const text = definition.toString();
  const side = Number(/width="(\d+)"/.exec(text)![1]);
  const starts = [...text.matchAll(/M(-?\d+) (-?\d+)/g)].map(([, x, y]) => [Number(x), Number(y)] as const);
  const beyond = starts.filter(([x]) => x < 0);
  expect(beyond.length).toBeGreaterThan(0);
  for (const [x, y] of beyond) {
    expect(starts.some(([otherX, otherY]) => Math.abs(otherX - x - side) <= 1 && Math.abs(otherY - y) <= 1)).toBe(true);
  }
});

test('flakePatterns(kinds, depth, options) draws flakes at their true size', () => {
  const [{ definition }] = flakePatterns(
    [HEXAGON],
    { ...CLEAR, flat: true },
    { id: 'p', seed: 's', budget: 60, scale: 1 },
  ) as [FlakePattern];
  const flat = definition.toString();
  const [, first] = /d="M-?\d+ -?\d+l([^z]+)z/.exec(flat)!;
  const steps = first!.match(/-?\d+/g)!.map(Number);
  // Corner to corner of a hexagon is its side: across flats over the root of three, in hundredths of a mm.
  expect(Math.hypot(steps[0]!, steps[1]!)).toBeCloseTo((100 * HEXAGON.sizeMm) / Math.sqrt(3), -0.5);
});

test('flakePatterns(kinds, depth, options) is nothing where no flake is', () => {
  expect(flakePatterns([], CLEAR, { id: 'p', seed: 's', budget: 60, scale: 1 })).toEqual([]);
  expect(flakePatterns([{ ...HEXAGON, flakesPerMl: 0 }], CLEAR, { id: 'p', seed: 's', budget: 60, scale: 1 })).toEqual(
    [],
  );
});

test('pour(coats, options) and bait(recipe, mold, options) draw the same every time', () => {
  const options = { id: 'x', seed: 'alder-smoke', budget: 100, label: 'A' };
  const coats = recipeCoats(recipe, mold);
  expect(pour(coats, options).toString()).toBe(pour(recipeCoats(recipe, mold), options).toString());
  expect(bait(recipe, mold, options).toString()).toBe(bait(recipe, mold, options).toString());
});

test('pour(coats, options) shows body, other side and thin part over white and over black', () => {
  const drawing = pour(recipeCoats(recipe, mold), { id: 'x', seed: 's', budget: 50, label: '' }).toString();
  for (const look of [recipe.body, recipe.other!, recipe.thin]) {
    expect(drawing).toContain(`fill="${look.overWhite.hex}"`);
    expect(drawing).toContain(`fill="${look.overBlack.hex}"`);
  }
  expect(drawing).toContain('aria-hidden="true"');
});

test('pour(coats, options) stays below twenty kilobytes with the budget of the wall', () => {
  for (const each of SAMPLE_BOOK.recipes) {
    const own = SAMPLE_BOOK.molds.find(({ id }) => id === each.mold)!;
    expect(
      pour(recipeCoats(each, own), { id: 'x', seed: each.id, budget: 140, label: '' }).toString().length,
    ).toBeLessThan(20_000);
  }
});

test('every number of a drawing is finite, for every shape', () => {
  for (const shape of ['minnow', 'worm', 'grub', 'craw', 'stick', 'tube', 'creature'] as const) {
    const drawing = bait(recipe, { ...mold, shape }, { id: 'x', seed: shape, label: shape }).toString();
    expect(drawing).not.toMatch(/NaN|Infinity|undefined/);
    const { thin, reachMm } = baitShape(shape, 80, 10);
    const lowest = Math.max(...thin.flatMap(({ middle, down }) => middle.map(([, y], at) => y + down[at]! * 0.5)));
    expect(lowest).toBeLessThanOrEqual(reachMm);
  }
});

test('baitLength(mold) is as stated, or as the volume has it', () => {
  expect(baitLength({ shape: 'stick', lengthMm: 100, cavityMl: 6, bodyMm: 9 })).toBe(100);
  const long = baitLength({ shape: 'stick', cavityMl: 5, bodyMm: 9 });
  expect(long).toBeCloseTo(2 * baitLength({ shape: 'stick', cavityMl: 2.5, bodyMm: 9 }), 6);
});

test('discHeight(share) cuts a disc so that the share lies above', () => {
  expect(discHeight(0.5)).toBeCloseTo(1, 6);
  // A cap of half the radius: acos(1/2) − (1/2)·√(3)/2 over π.
  expect(discHeight((Math.acos(0.5) - 0.5 * Math.sqrt(0.75)) / Math.PI)).toBeCloseTo(0.5, 6);
});

test('streakPatterns(coat, share, options) cover about its share of the tile', () => {
  for (const share of [0.2, 0.4, 0.6]) {
    const text = streakPatterns({ white: '#ff0000', black: '#800000' }, share, { id: 's', scale: 1 }).toString();
    const [, width, height] = /width="([\d.]+)" height="([\d.]+)"/.exec(text)!.map(Number);
    const polygons = [
      .../ d="([^"]+)"/
        .exec(text)![1]!
        .split('z')
        .filter((part) => part !== ''),
    ].map((part) => cornersOf(part));
    const covered = area((x, y) => polygons.some((polygon) => inside(polygon, x, y)), width!, height!);
    expect(Math.abs(covered - share)).toBeLessThan(0.08);
  }
});

/** End points of the curves of a path: enough for its area. */
function cornersOf(path: string): readonly (readonly [number, number])[] {
  return [...path.matchAll(/([MLC])([^MLC]+)/g)].flatMap(([, command, rest]) => {
    const numbers = rest!.match(/-?\d+(?:\.\d+)?/g)!.map(Number);
    const points: [number, number][] = [];
    const step = command === 'C' ? 6 : 2;
    for (let at = step - 2; at < numbers.length; at += step) points.push([numbers[at]!, numbers[at + 1]!]);
    return points;
  });
}

function inside(polygon: readonly (readonly [number, number])[], x: number, y: number): boolean {
  let within = false;
  for (let at = 0, before = polygon.length - 1; at < polygon.length; before = at++) {
    const [[x0, y0], [x1, y1]] = [polygon[at]!, polygon[before]!];
    if (y0 > y !== y1 > y && x < ((x1 - x0) * (y - y0)) / (y1 - y0) + x0) within = !within;
  }
  return within;
}

function area(covered: (x: number, y: number) => boolean, width: number, height: number): number {
  let count = 0;
  const steps = 120;
  for (let row = 0; row < steps; row++) {
    for (let column = 0; column < steps; column++) {
      if (covered(((column + 0.5) * width) / steps, ((row + 0.5) * height) / steps)) count++;
    }
  }
  return count / steps ** 2;
}

test('tint(hex, towards, part) goes from one colour to the other', () => {
  expect([tint('#102030', '#ffffff', 0), tint('#102030', '#ffffff', 1), tint('#000000', '#ffffff', 0.5)]).toEqual([
    '#102030',
    '#ffffff',
    '#808080',
  ]);
});

test('luminance(hex) is that of sRGB', () => {
  expect(luminance('#ffffff')).toBeCloseTo(1, 12);
  // 18.4 % grey: IEC 61966-2-1 gives 0.2140 for the code 127.
  expect(luminance('#7f7f7f')).toBeCloseTo(0.2122, 3);
});
