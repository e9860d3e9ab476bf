import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Figures, firstOf, inOrder } from '../../src/matching/proposals/order.ts';

const TOLERANCE = 2;

const figures = fc.record({
  deltaE: fc.double({ min: 0, max: 6, noNaN: true }),
  isOverfull: fc.boolean(),
  scatter: fc.double({ min: 0, max: 2, noNaN: true }),
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
  deltaE: 0.5,
  isOverfull: false,
  scatter: 0.2,
  bottles: 2,
  liquid: 0.01,
  lampDeltaE: 1,
  hueAway: 0.1,
  black: 0,
  cost: 2,
  names: ['peat', 'straw'],
};
const first = (...each: readonly Partial<Figures>[]): number =>
  each
    .map((some, index) => ({ ...PLAIN, names: [`${index}`], ...some, index }))
    .sort((one, other) => inOrder(one, other, TOLERANCE))[0]!.index;

describe('the order of proposals', () => {
  test('inOrder(…) is one order: two are never each before the other, and of three the first is before the last', () => {
    fc.assert(
      fc.property(figures, figures, figures, (a, b, c) => {
        const sign = (one: Figures, other: Figures): number => Math.sign(inOrder(one, other, TOLERANCE));
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
    ['what is within tolerance', { deltaE: 1.9, bottles: 4 }, { deltaE: 2.4, bottles: 1 }],
    ['what is within, and leaves no cup too full', { bottles: 4 }, { isOverfull: true, bottles: 2 }],
    ['what is within rather than less full', { isOverfull: true }, { deltaE: 2.4 }],
    ['what stays within though drops scatter', { deltaE: 1, bottles: 3 }, { deltaE: 1.9, scatter: 1, bottles: 2 }],
    ['what is nearer, where both are out of reach', { deltaE: 3, bottles: 4 }, { deltaE: 4, bottles: 1 }],
    ['the fewest bottles of what is within', { deltaE: 1.7, bottles: 2 }, { deltaE: 0.2, bottles: 3 }],
    ['the least liquid', { deltaE: 1.1, liquid: 0.03 }, { deltaE: 0.3, liquid: 0.05 }],
    ['the safest under other lights', { lampDeltaE: 2, hueAway: 0.6 }, { lampDeltaE: 5, hueAway: 0.1 }],
    ['the nearest hues', { hueAway: 0.1, black: 1 }, { hueAway: 0.6, black: 0 }],
    ['the least black', { black: 0.1, cost: 4 }, { black: 0.5, cost: 1 }],
    ['the nearer one, where all else is alike', { deltaE: 0.3, cost: 4 }, { deltaE: 0.6, cost: 1 }],
    ['the cheaper one at last', { cost: 1 }, { cost: 2 }],
  ])('inOrder(…) takes first %s', (_, one, other) => {
    expect(first(one, other)).toBe(0);
    expect(first(other, one)).toBe(1);
  });

  test('firstOf(…) leaves out what only adds a bottle to one that comes before, for no gain', () => {
    const more = { ...PLAIN, bottles: 3, names: ['peat', 'rust', 'straw'] };
    const own = (each: Figures): Figures => each;
    expect(firstOf([more, PLAIN], own, TOLERANCE, 3)).toEqual([PLAIN]);
    const nearer = { ...more, deltaE: 0.1 };
    expect(firstOf([nearer, PLAIN], own, TOLERANCE, 3)).toEqual([PLAIN, nearer]);
  });
});
