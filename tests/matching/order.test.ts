import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Figures, firstOf, inOrder, yardstickFor } from '../../src/matching/proposals/order.ts';

const TOLERANCE = 2;

const figures = fc.record({
  expected: fc.double({ min: 0, max: 6, noNaN: true }),
  likely: fc.double({ min: 0, max: 1, noNaN: true }),
  isOverfull: fc.boolean(),
  scatter: fc.double({ min: 0, max: 2, noNaN: true }),
  untried: fc.nat(2),
  bottles: fc.nat(4),
  liquid: fc.double({ min: 0, max: 0.06, noNaN: true }),
  lampDeltaE: fc.double({ min: 0, max: 10, noNaN: true }),
  hueAway: fc.double({ min: 0, max: 1, noNaN: true }),
  black: fc.double({ min: 0, max: 2, noNaN: true }),
  cost: fc.double({ min: 0, max: 5, noNaN: true }),
  names: fc.uniqueArray(fc.constantFrom('peat', 'rust', 'sedge', 'straw'), { minLength: 1, maxLength: 4 }),
});

/** Two bottles that are right, and of which nothing else is to be said. */
const PLAIN: Figures = {
  expected: 0.5,
  likely: 0.95,
  isOverfull: false,
  scatter: 0.2,
  untried: 0,
  bottles: 2,
  liquid: 0.01,
  lampDeltaE: 1,
  hueAway: 0.1,
  black: 0,
  cost: 2,
  names: ['peat', 'straw'],
};
const first = (...each: readonly Partial<Figures>[]): number => {
  const all = each.map((some, index) => ({ ...PLAIN, names: [`${index}`], ...some, index }));
  const yardstick = yardstickFor(all, TOLERANCE);
  return all.sort((one, other) => inOrder(one, other, yardstick))[0]!.index;
};

describe('the order of proposals', () => {
  test('inOrder(…) is one order: two are never each before the other, and of three the first is before the last', () => {
    fc.assert(
      fc.property(figures, figures, figures, (a, b, c) => {
        const yardstick = yardstickFor([a, b, c], TOLERANCE);
        const sign = (one: Figures, other: Figures): number => Math.sign(inOrder(one, other, yardstick));
        expect(sign(a, a)).toBe(0);
        expect(sign(a, b)).toBe(0 - sign(b, a));
        if (sign(a, b) <= 0 && sign(b, c) <= 0) expect(sign(a, c)).toBeLessThanOrEqual(0);
      }),
    );
  });

  test('firstOf(…) is the same in whatever order the proposals come', () => {
    fc.assert(
      fc.property(fc.array(figures, { maxLength: 8 }), fc.nat(), (all, turn) => {
        const turned = all.map((_, index) => all[(index + turn) % all.length]!);
        const own = (each: Figures): Figures => each;
        expect(firstOf(turned, own, TOLERANCE, 3)).toEqual(firstOf(all, own, TOLERANCE, 3));
      }),
    );
  });

  test.each<[string, Partial<Figures>, Partial<Figures>]>([
    [
      'what is nearer by more than making it scatters',
      { expected: 2.4, likely: 0.4, bottles: 4 },
      { expected: 3, likely: 0.3, bottles: 1 },
    ],
    [
      'the fewest bottles, where that is all it gains',
      { expected: 2.8, likely: 0.3, bottles: 1 },
      { expected: 2.4, likely: 0.4, bottles: 4 },
    ],
    [
      'the fewest bottles, where drops scatter the nearest by more',
      { expected: 3.3, likely: 0.3, bottles: 1 },
      { expected: 2.4, likely: 0.4, scatter: 2, bottles: 4 },
    ],
    ['what leaves no cup too full', { bottles: 4 }, { isOverfull: true, bottles: 2 }],
    ['what is likely right rather than less full', { isOverfull: true }, { expected: 2.4, likely: 0.3 }],
    ['what is likely right', { expected: 1, bottles: 3 }, { expected: 1.3, likely: 0.8, bottles: 2 }],
    [
      'what tries one bottle, where that makes it little worse',
      { expected: 3.9, likely: 0.3, untried: 1 },
      { expected: 2.4, likely: 0.4 },
    ],
    [
      'what is nearer rather than what tries a bottle far off',
      { expected: 2.4, likely: 0.4 },
      { expected: 4.5, likely: 0.2, untried: 1 },
    ],
    ['what tries one bottle, rather than fewer that are known', { untried: 1, bottles: 3 }, { bottles: 2 }],
    [
      'what is likely right rather than what tries a bottle',
      { expected: 1, bottles: 3 },
      { expected: 1.3, likely: 0.8, untried: 1 },
    ],
    ['the fewest bottles of what is likely right', { expected: 1.2, bottles: 2 }, { expected: 0.2, bottles: 3 }],
    ['the least liquid', { expected: 1.1, liquid: 0.03 }, { expected: 0.3, liquid: 0.05 }],
    ['the safest under other lights', { lampDeltaE: 2, hueAway: 0.6 }, { lampDeltaE: 5, hueAway: 0.1 }],
    ['the nearest hues', { hueAway: 0.1, black: 1 }, { hueAway: 0.6, black: 0 }],
    ['the least black', { black: 0.1, cost: 4 }, { black: 0.5, cost: 1 }],
    ['the nearer one, where all else is alike', { expected: 0.3, cost: 4 }, { expected: 0.6, cost: 1 }],
    ['the cheaper one at last', { cost: 1 }, { cost: 2 }],
  ])('inOrder(…) takes first %s', (_, one, other) => {
    expect(first(one, other)).toBe(0);
    expect(first(other, one)).toBe(1);
  });

  test('firstOf(…) never puts first what is neither likely right nor within a step of the nearest', () => {
    fc.assert(
      fc.property(fc.array(figures, { minLength: 1, maxLength: 8 }), (all) => {
        const [best] = firstOf(all, (each) => each, TOLERANCE, 1);
        const { least, step } = yardstickFor(all, TOLERANCE);
        expect(best!.likely >= 0.85 || best!.expected < least + step + (best!.untried === 1 ? 1.5 : 0)).toBe(true);
        expect(step).toBeGreaterThanOrEqual(0.5);
      }),
    );
  });

  test('firstOf(…) has one that tries no bottle, where it gives more than one', () => {
    const trying = ['rust', 'sedge', 'olive'].map((name) => ({ ...PLAIN, untried: 1, names: [name] }));
    const known = { ...PLAIN, expected: 0.6, bottles: 3 };
    const own = (each: Figures): Figures => each;
    expect(firstOf([...trying, known], own, TOLERANCE, 3).map(({ names }) => names[0])).toEqual([
      'olive',
      'rust',
      'peat',
    ]);
    expect(firstOf([...trying, known], own, TOLERANCE, 1)[0]!.untried).toBe(1);
    // It is another proposal than one that adds a bottle to it to try that.
    const more = { ...known, untried: 1, bottles: 4, names: ['olive', 'peat', 'straw'] };
    expect(firstOf([more, known], own, TOLERANCE, 3)).toEqual([more, known]);
  });

  test('firstOf(…) leaves out what only adds a bottle to one that comes before, for no gain', () => {
    const more = { ...PLAIN, bottles: 3, names: ['peat', 'rust', 'straw'] };
    const own = (each: Figures): Figures => each;
    expect(firstOf([more, PLAIN], own, TOLERANCE, 3)).toEqual([PLAIN]);
    const nearer = { ...more, expected: 0.1 };
    expect(firstOf([nearer, PLAIN], own, TOLERANCE, 3)).toEqual([PLAIN, nearer]);
  });
});
