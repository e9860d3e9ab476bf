import { describe, expect, test } from 'vitest';
import { bookWith, compileWith, file, recipeOf } from './sample.ts';

const BOOK = 'title: Two Cups\nleft-in-cup: 3 ml';
// Four of 3 ml and a sprue of 6 ml: a shot is 18 ml.
const mold = (...more: readonly string[]): string =>
  file(['title: Minnow', 'cavities: 4', 'cavity: 3 ml', 'sprue: 6 ml', 'body: 9 mm', 'thin: 2 mm', ...more].join('\n'));
const laminate = (share: string, pattern = 'laminate'): string =>
  file(
    `title: Smoke\nmold: minnow\npattern: ${pattern}\nbaits: 60\ncups:\n  back: { share: ${share}, plastic: 80 ml supple, add: { peat: 9 drops } }\n  belly: { plastic: 80 ml supple }`,
  );
const files = (book: string, inMold: readonly string[], recipe: string): Readonly<Record<string, string>> => ({
  'book.md': file(`${BOOK}\n${book}`),
  'molds/minnow.md': mold(...inMold),
  'colours/smoke.md': recipe,
});
const batch = (...[book, inMold, recipe]: Parameters<typeof files>): ReturnType<typeof recipeOf>['batch'] =>
  recipeOf(bookWith(files(book, inMold, recipe)), 'smoke').batch;

describe('a batch', () => {
  // 60 baits are 15 shots: 60 × 3 ml + 15 × 6 ml = 270 ml, of which the back takes half.
  // Plastic is filled to the next mark of a measuring cup, every 5 ml, above what is needed and what stays in the cup.
  const expectBack = (
    neededMl: number,
    [book, inMold, pattern]: readonly [book: string, inMold: readonly string[], pattern?: string],
  ): void => {
    const recipe = recipeOf(bookWith(files(book, inMold, laminate('50%', pattern))), 'smoke');
    const { split, volumeMl } = recipe.batch.cups[0]!;
    const { volumePerPlastic } = recipe.cups[0]!;
    expect(volumeMl).toBeCloseTo(volumePerPlastic * 5 * Math.ceil((neededMl / split + 3) / volumePerPlastic / 5), 9);
  };

  test('loses what is usual of how the mold is filled, unless the book says what is lost', () => {
    // Common practice, no source: 10 to 20 % injected, 5 to 10 % by hand.
    expectBack(135 * 1.1, ['', []]);
    expectBack(135 * 1.15, ['', ['method: injected']]);
    expectBack(135 * 1.08, ['', ['method: poured']]);
    expectBack(135 * 1.04, ['loss: 4 %', ['method: injected']]);
  });

  test('pours layers by hand, whatever the mold is else filled with', () => {
    const injector = 'tools: { injector: { holds: 60 ml } }';
    expectBack(135 * 1.08, [injector, ['method: injected'], 'layered']);
    expect(batch(injector, ['method: injected'], laminate('50%', 'layered')).cups[0]!.fills).toBeUndefined();
  });

  test('fills an injector for each side, and counts what stays in it once', () => {
    const injector = 'tools: { injector: { holds: 60 ml, left: 8 ml } }';
    const { cups } = batch(injector, ['method: injected'], laminate('50%'));
    // 9 ml of a shot are the back's: 52 ml give 5, and 15 shots take 3 fills.
    expect(cups.map(({ fills }) => fills)).toEqual(
      cups.map(() => [{ mold: 'minnow', shotMl: 9, shotsAFill: 5, fills: 3 }]),
    );
    expectBack(135 * 1.15 + 8, [injector, ['method: injected']]);
    expect(batch(injector, [], laminate('50%')).cups[0]!.fills).toBeUndefined();
  });

  test('makes more than it is asked for where some are thrown away: the mold’s part, else the book’s', () => {
    const line = (book: string, inMold: readonly string[]): unknown => batch(book, inMold, laminate('50%')).lines[0];
    expect(line('', [])).toEqual({ mold: 'minnow', baits: 60, shots: 15 });
    // 60 / 0.95 = 63.2
    expect(line('rejects: 5 %', [])).toEqual({ mold: 'minnow', baits: 60, made: 64, shots: 16 });
    // 60 / 0.9 = 66.7
    expect(line('rejects: 5 %', ['rejects: 10 %'])).toEqual({ mold: 'minnow', baits: 60, made: 67, shots: 17 });
  });
});

test('sides that an injector does not give are told of, and answered by a share, a manifold, or a pour by hand', () => {
  const told = (share: string, inMold: readonly string[], pattern?: string): readonly string[] =>
    compileWith(files('', inMold, laminate(share, pattern))).diagnostics.map(({ code }) => code);
  expect(told('30%', ['method: injected'])).toEqual(['recipe/uneven-shares']);
  expect(told('44%', ['method: injected'])).toEqual(['recipe/uneven-shares']);
  expect(told('45%', ['method: injected'])).toEqual([]);
  expect(told('30%', ['method: injected', 'manifold: 33 %'])).toEqual([]);
  expect(told('50%', ['method: injected', 'manifold: 33 %'])).toEqual(['recipe/uneven-shares']);
  const [odd] = compileWith(files('', ['method: injected', 'manifold: 33 %'], laminate('50%'))).diagnostics;
  expect(odd).toMatchObject({
    expected: '28 % to 38 %',
    why: 'its manifold gives the first cup as much, whatever is in it',
    fix: 'write `share: 33 %` for the first cup, or correct `manifold` in molds/minnow.md',
  });
  expect(told('30%', ['method: poured'])).toEqual([]);
  expect(told('30%', [])).toEqual([]);
  expect(told('30%', ['method: injected'], 'layered')).toEqual([]);
});

test('a tube is dipped on rods unless its file says otherwise', () => {
  const method = (...more: readonly string[]): unknown =>
    bookWith({ 'molds/minnow.md': mold(...more) }).molds.find(({ id }) => id === 'minnow')!.method;
  expect(method()).toBeUndefined();
  expect(method('shape: tube')).toBe('dipped');
  expect(method('shape: tube', 'method: injected')).toBe('injected');
});
