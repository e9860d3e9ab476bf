import fc from 'fast-check';
import { expect, test } from 'vitest';
import { hexOf } from '../../src/optics/display.ts';
import { constantSpectrum } from '../../src/optics/spectrum.ts';
import { baitOutline } from '../../src/render/swatch/bait-outline.ts';
import { recipeCoats } from '../../src/render/swatch/coat.ts';
import { coatFlakes } from '../../src/render/swatch/coat-flakes.ts';
import { type Depth, type FlakeKind, flakeField, seenDepth } from '../../src/render/swatch/flake-field.ts';
import { flakePatterns } from '../../src/render/swatch/flake-pattern.ts';
import { pour } from '../../src/render/swatch/pour.ts';
import { streakPatterns } from '../../src/render/swatch/streaks.ts';
import { BLACK_CARD, luminance, tint, WHITE_CARD } from '../../src/render/swatch/tint.ts';
import { baitShape } from '../../src/shapes/bait-shapes.ts';
import { BLACK_BACKING, WHITE_BACKING } from '../../src/tables/backings.ts';
import { randomFrom } from '../../src/values/random-from.ts';
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

/** Where the flakes of a drawing begin, and the steps of the first. */
function marksOf(definition: string): { readonly starts: readonly (readonly [number, number])[]; first: number[] } {
  const starts: (readonly [number, number])[] = [];
  let first: number[] = [];
  for (const [, data] of definition.matchAll(/ d="([^"]+)"/g)) {
    let [x, y] = [0, 0];
    for (const [, move, steps] of data!.matchAll(/m([^lh]+)(?:h0|l([^z]+)z)/g)) {
      const [dx, dy] = move!.match(/-?\d+/g)!.map(Number) as [number, number];
      [x, y] = [x + dx, y + dy];
      starts.push([x, y]);
      if (first.length === 0) first = (steps ?? '').match(/-?\d+/g)?.map(Number) ?? [];
    }
  }
  return { starts, first };
}

/** Millimetres of a unit of a pattern whose drawing is in mm. */
const unitMm = (definition: string): number => Number(/ scale\(([\d.]+)\)/.exec(definition)![1]);

test('flakePatterns(kinds, depths, options) repeats without a seam: what leaves on one side comes in on the other', () => {
  for (const kind of [HEXAGON, DUST]) {
    const { definitions } = flakePatterns([kind], [CLEAR], { id: 'p', seed: 's', budget: 200, scale: 1 });
    const text = definitions.join('');
    const side = Number(/width="(\d+)"/.exec(text)![1]);
    const { starts } = marksOf(text);
    const beyond = starts.filter(([x]) => x < 0);
    expect(beyond.length).toBeGreaterThan(0);
    for (const [x, y] of beyond) expect(starts).toContainEqual([x + side, y]);
  }
});

test('flakePatterns(kinds, depths, options) draws flakes at their true size', () => {
  for (const sizeMm of [0.635, 1.016, 3.175]) {
    const flat = { ...CLEAR, flat: true };
    const { definitions } = flakePatterns([{ ...HEXAGON, sizeMm }], [flat], {
      id: 'p',
      seed: 's',
      budget: 60,
      scale: 1,
    });
    const text = definitions.join('');
    const { first } = marksOf(text);
    // Opposite corners of a hexagon are two of its sides apart, a side the size across flats over the root of three.
    const [x, y] = [first[0]! + first[2]! + first[4]!, first[1]! + first[3]! + first[5]!];
    const cornersMm = Math.hypot(x, y) * unitMm(text);
    expect(Math.abs(cornersMm / ((2 * sizeMm) / Math.sqrt(3)) - 1)).toBeLessThan(0.05);
  }
});

test('flakePatterns(kinds, depths, options) draws as many flakes as lie in the plastic over a square millimetre, thick or thin', () => {
  const thin = { ...CLEAR, thicknessMm: 2.5 };
  for (const kind of [{ ...HEXAGON, flakesPerMl: 400 }, DUST]) {
    const { fills, definitions } = flakePatterns([kind], [CLEAR, thin], { id: 'p', seed: 's', budget: 800, scale: 1 });
    const texts = definitions.map(String);
    const part = texts.find((text) => fills[1]![0]!.includes(/id="([^"]+)"/.exec(text)![1]!))!;
    const inSquare = (text: string): number => {
      const side = Number(/width="(\d+)"/.exec(texts[0]!)![1]);
      // Of a flake that is cut by the edge of the square, the places within the square add up to one.
      return marksOf(text).starts.filter(([x, y]) => x >= 0 && y >= 0 && x < side && y < side).length;
    };
    const areaMm2 = (Number(/width="(\d+)"/.exec(texts[0]!)![1]) * unitMm(texts[0]!)) ** 2;
    const perMm2 = (mm: number): number => (kind.flakesPerMl * mm) / 1000;
    expect(inSquare(part) / areaMm2 / perMm2(2.5)).toBeCloseTo(1, 1);
    expect(inSquare(texts.join('')) / areaMm2 / perMm2(10)).toBeCloseTo(1, 1);
  }
});

test('flakePatterns(kinds, depths, options) draws a cup once for all depths at which it is shown', () => {
  const options = { id: 'p', seed: 's', budget: 200, scale: 1 };
  const size = (depths: readonly Depth[]): number => flakePatterns([DUST], depths, options).definitions.join('').length;
  expect(size([CLEAR, { ...CLEAR, thicknessMm: 3 }])).toBeLessThan(1.5 * size([CLEAR]));
  const { fills } = flakePatterns([DUST], [CLEAR, CLEAR], options);
  expect(fills[0]).toEqual(fills[1]);
});

test('flakePatterns(kinds, depths, options) is nothing where no flake is', () => {
  const options = { id: 'p', seed: 's', budget: 60, scale: 1 };
  expect(flakePatterns([], [CLEAR], options)).toEqual({ fills: [[]], definitions: [] });
  expect(flakePatterns([{ ...HEXAGON, flakesPerMl: 0 }], [CLEAR], options)).toEqual({ fills: [[]], definitions: [] });
});

test('pour(coats, options) draws the same every time', () => {
  const options = { seed: 'alder-smoke', budget: 100 };
  const coats = recipeCoats(recipe, mold);
  expect(pour(coats, options).toString()).toBe(pour(recipeCoats(recipe, mold), options).toString());
});

test('pour(coats, options) shows body, other side and thin part over white and over black', () => {
  const drawing = pour(recipeCoats(recipe, mold), { seed: 's', budget: 50 }).toString();
  const { body, thin, other } = recipe.between;
  for (const look of [body, other!, thin]) {
    expect(drawing).toContain(`fill="${look.overWhite.hex}"`);
    expect(drawing).toContain(`fill="${look.overBlack.hex}"`);
  }
});

test('pour(coats, options) stays below sixteen kilobytes with the budget of a card', () => {
  for (const each of SAMPLE_BOOK.recipes) {
    const own = SAMPLE_BOOK.molds.find(({ id }) => id === each.mold)!;
    expect(pour(recipeCoats(each, own), { seed: each.id, budget: 72 }).toString().length).toBeLessThan(16_000);
  }
});

test('every number of a drawing is finite, for every shape', () => {
  for (const shape of ['minnow', 'worm', 'grub', 'craw', 'stick', 'tube', 'creature'] as const) {
    const drawing = baitOutline({ ...mold, shape }).toString();
    expect(drawing).not.toMatch(/NaN|Infinity|undefined/);
    const { thin, reachMm } = baitShape({ shape, lengthMm: 80, bodyMm: 10, thinMm: 2 });
    const lowest = Math.max(...thin.flatMap(({ middle, down }) => middle.map(([, y], at) => y + down[at]! * 0.5)));
    expect(lowest).toBeLessThanOrEqual(reachMm);
  }
});

test('streakPatterns(coat, share, options) cover about its share of the tile', () => {
  for (const [share, lane] of [0.2, 0.4, 0.6].flatMap((each) => [0, 1, 2].map((at) => [each, at] as const))) {
    const coat = { white: '#ff0000', black: '#800000' };
    const text = streakPatterns(coat, share, { id: 's', scale: 1, lane }).toString();
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

test('streaks hold the flake of their own cup, at its true size', () => {
  const swirl = SAMPLE_BOOK.recipes.find(({ pattern }) => pattern === 'swirl')!;
  const own = SAMPLE_BOOK.molds.find(({ id }) => id === swirl.mold)!;
  expect(swirl.cups[1]!.flakes).not.toHaveLength(0);
  const flakesIn = (drawing: string): readonly string[] =>
    [.../<pattern id="s0-white"[^>]*>(.*?)<\/pattern>/s.exec(drawing)![1]!.matchAll(/fill="url\(#([^)]+)\)"/g)].map(
      ([, id]) => id!,
    );
  const scaleOf = (drawing: string, id: string): number =>
    Number(new RegExp(`<pattern id="${id}"[^>]* scale\\(([\\d.]+)\\)`).exec(drawing)![1]);
  const card = pour(recipeCoats(swirl, own), { seed: 'x', budget: 60 }).toString();
  const { streaks } = recipeCoats(swirl, own);
  const inMm = coatFlakes([streaks[0]!.coat], { id: 'x', seed: 'x', budget: 60, scale: 1 });
  const [id] = /url\(#([^)]+)\)/.exec(inMm.fills(streaks[0]!.coat)[0]!)!.slice(1);
  expect(flakesIn(card)).toHaveLength(swirl.cups[1]!.flakes.length);
  // A drawing in millimetres and one in the pixels of CSS, at 96 an inch.
  const ratio = scaleOf(card, flakesIn(card)[0]!) / scaleOf(inMm.definitions.join(''), id!);
  expect(Math.abs(ratio / (96 / 25.4) - 1)).toBeLessThan(0.05);
});

test('a swirl of three cups is drawn in three colours, each as large as its share', () => {
  const swirl = SAMPLE_BOOK.recipes.find(({ pattern }) => pattern === 'swirl')!;
  const own = SAMPLE_BOOK.molds.find(({ id }) => id === swirl.mold)!;
  const [first, second] = swirl.cups;
  const cups = [
    { ...first!, share: 0.5 },
    { ...second!, share: 0.3 },
    { ...first!, name: 'third', share: 0.2 },
  ];
  const { streaks } = recipeCoats({ ...swirl, cups }, own);
  const [over, under] = [streaks[1]!.share, streaks[0]!.share * (1 - streaks[1]!.share)];
  expect(over).toBeCloseTo(0.2, 9);
  expect(under).toBeCloseTo(0.3, 9);
  const coats = recipeCoats({ ...swirl, cups }, own);
  const drawn = pour(coats, { seed: 'x', budget: 60 }).toString();
  for (const lane of [0, 1]) expect(drawn.match(new RegExp(`fill="url\\(#s${lane}-white\\)"`, 'g'))).toHaveLength(1);
});

/** End points of the curves of a path: enough for its area. */
function cornersOf(path: string): readonly (readonly [number, number])[] {
  let [x, y] = [0, 0];
  return [...path.matchAll(/([MLc])([^MLc]+)/g)].map(([, command, rest]) => {
    const [dx, dy] = rest!
      .match(/-?(?:\d+\.?\d*|\.\d+)/g)!
      .map(Number)
      .slice(-2) as [number, number];
    [x, y] = command === 'c' ? [x + dx, y + dy] : [dx, dy];
    return [x, y] as const;
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
