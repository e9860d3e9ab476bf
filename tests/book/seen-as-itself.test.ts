import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { nextAdditionFor } from '../../src/book/match/ask-matching.ts';
import type { Book } from '../../src/book/model.ts';
import { LOOKING_ERROR } from '../../src/matching/target/target-part.ts';
import { verdictText } from '../../src/words/verdict.ts';
import { bookWith, compileWith, file, recipeOf } from './sample.ts';

const LIGHTS = ['D65', 'D50', 'A', 'F11', 'LED-B1'] as const;

const short = (low: number, high: number): fc.Arbitrary<number> =>
  fc.double({ min: low, max: high, noNaN: true }).map((value) => Number(value.toFixed(2)));

/** Lab as an instrument says it: most of these no screen shows, and many no thing is. */
const lab = fc.tuple(short(0, 105), short(-150, 150), short(-150, 150));

/** A colour over white and one over black that is no lighter than looking's error allows, under one light. */
const pair = fc
  .record({ white: lab, black: lab, light: fc.constantFrom(...LIGHTS), off: short(0, 0.9 * LOOKING_ERROR) })
  .map(({ white, black: [L, a, b], light, off }) => ({
    white,
    black: [Math.min(L, Number((white[0] + off).toFixed(2))), a, b] as const,
    light,
  }))
  // Adapted to daylight, what is far outside all that is seen can come out reversed.
  .filter(({ light, white, black }) => light === 'D65' || black[0] < white[0] - 20);

const views = (white: readonly number[], black: readonly number[], light: string): string =>
  `over-white: { lab: [${white.join(', ')}], light: ${light} }, over-black: { lab: [${black.join(', ')}], light: ${light} }`;

function bookOf(target: string, seen: string): Book {
  return bookWith({
    'targets/lure.md': file(`title: Old lure\nmold: minnow\nparts:\n  body: { ${target} }`),
    'colours/pool.md': file(
      `title: Pool\nmold: minnow\nfor: lure\ncups:\n  body:\n    plastic: 100 ml\n    log:\n      - add: { peat: 10 drops }\n      - pour: 10 ml\n        seen: { ${seen} }`,
    ),
  });
}

/** What the cup of `bookOf` is believed to be before any look. */
const BELIEVED = recipeOf(
  bookWith({
    'colours/pool.md': file(
      'title: Pool\nmold: minnow\ncups:\n  body:\n    plastic: 100 ml\n    add: { peat: 10 drops }',
    ),
  }),
  'pool',
).body;

/** How near a colour is to what is believed, along each axis: nobody doubts such a look. */
const near = short(-3, 3);

describe('a target that is seen as itself', () => {
  test('is ΔE 0 and within tolerance, whatever its colour and light; next asks for another look at most', () => {
    fc.assert(
      fc.property(pair, ({ white, black, light }) => {
        const same = views(white, black, light);
        const { diagnostics } = compileWith({
          'targets/lure.md': file(`title: Old lure\nparts:\n  body: { ${same} }`),
        });
        // Under another light than daylight a lightness can leave what a file may say once it is adapted.
        fc.pre(diagnostics.length === 0);
        const book = bookOf(same, same);
        const recipe = recipeOf(book, 'pool');
        const { verdict } = recipe.match!.cups[0]!.rounds[0]!;
        expect(verdict).toMatchObject({ deltaE: 0, within: true });
        expect(verdictText(verdict)).toMatch(/^within tolerance: you won’t see it \(ΔE (0\.0|less than 0\.1)\)$/);
        const next = nextAdditionFor(book, recipe, recipe.cups[0]!, book.targets.find(({ id }) => id === 'lure')!);
        expect(next.now).toMatchObject({ deltaE: 0, within: true });
        expect(next.proposals).toEqual([]);
        // Most of these colours no cup of peat can have: a look that cannot be of its cup is doubted.
        if (next.doubt) expect(next).toMatchObject({ advice: { because: 'look-first' }, doubt: { kind: 'misfit' } });
        else expect(next.advice.kind).toBe('leave-it');
      }),
      { numRuns: 40 },
    );
  });

  test('is left as it is where the cup can be so', () => {
    fc.assert(
      fc.property(near, near, near, (...off) => {
        const [white, black] = [BELIEVED.overWhite.lab, BELIEVED.overBlack.lab].map(({ L, a, b }) =>
          [L, a, b].map((value, axis) => Number((value + off[axis]!).toFixed(2))),
        );
        const same = views(white!, black!, 'D65');
        const book = bookOf(same, same);
        const recipe = recipeOf(book, 'pool');
        const next = nextAdditionFor(book, recipe, recipe.cups[0]!, book.targets.find(({ id }) => id === 'lure')!);
        expect([next.now?.deltaE, next.doubt, next.advice.kind]).toEqual([0, undefined, 'leave-it']);
      }),
      { numRuns: 10 },
    );
  });

  test('was squeezed through what a screen shows before', () => {
    const same = views([60, 90, 60], [30, 60, 40], 'D65');
    expect(recipeOf(bookOf(same, same), 'pool').match!.cups[0]!.rounds[0]!.verdict.deltaE).toBe(0);
  });
});

describe('a pair that is lighter over black than over white', () => {
  const next = (target: string, seen: string): ReturnType<typeof nextAdditionFor> => {
    const book = bookOf(target, seen);
    const recipe = recipeOf(book, 'pool');
    return nextAdditionFor(book, recipe, recipe.cups[0]!, book.targets.find(({ id }) => id === 'lure')!);
  };

  test('by less than looking errs counts as opaque, in the book as in next, and says so', () => {
    const opaque = views([50, 10, 10], [50, 10, 10], 'D65');
    const noisy = views([50, 10, 10], [52, 10, 10], 'D65');
    const book = bookOf(opaque, noisy);
    const { verdict } = recipeOf(book, 'pool').match!.cups[0]!.rounds[0]!;
    expect(verdict).toMatchObject({
      deltaE: 0,
      within: true,
      opacity: { contrast: 1, target: 1, deltaE: 0, evened: 'seen' },
    });
    expect(next(opaque, noisy).now).toMatchObject({ deltaE: 0, within: true });
    expect(next(noisy, opaque).now!.opacity).toMatchObject({ evened: 'target' });
  });

  test('by more is an error at its place, so that no command goes by it', () => {
    const { diagnostics } = compileWith({
      'targets/lure.md': file(`title: Old lure\nparts:\n  body: { ${views([50, 10, 10], [54, 10, 10], 'D65')} }`),
    });
    expect(diagnostics).toMatchObject([{ code: 'seen/reversed', severity: 'error', file: 'targets/lure.md' }]);
  });
});
