import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { adviceFor } from '../../src/browser/match/ask.ts';
import { sidesView } from '../../src/browser/match/fields-view.ts';
import { isNoWork, readWork } from '../../src/browser/match/read-work.ts';
import { roundOf } from '../../src/browser/match/typed-round.ts';
import { type Work, withoutLastDone, withSteps } from '../../src/browser/match/work.ts';
import { newWork, withBookTarget } from '../../src/browser/match/work-begun.ts';
import { colourText, typedColour } from '../../src/browser/match/work-colour.ts';
import { recipeFile } from '../../src/browser/match/work-recipe.ts';
import { targetFile } from '../../src/browser/match/work-target.ts';
import { compiled, DATA } from './match-book.ts';
import { taughtBook } from './taught-book.ts';

const short = (low: number, high: number): fc.Arbitrary<number> =>
  fc.double({ min: low, max: high, noNaN: true }).map((value) => Number(value.toFixed(2)));

/** L, a, b of an instrument over white, and no lighter over black. */
const pair = fc.tuple(short(1, 105), short(-150, 150), short(-150, 150), short(0, 1), short(-150, 150)).map(
  ([L, a, b, share, c]) =>
    [
      [L, a, b],
      [Number((L * share).toFixed(2)), c, a],
    ] as const,
);

/** A match with a target of the book that an instrument measured. */
function begun(white: readonly number[], black: readonly number[], light = 'D65'): { work: Work; data: typeof DATA } {
  const text = `---\ntitle: Cast\nmold: minnow\nover-white: { lab: [${white.join(', ')}], light: ${light} }\nover-black: { lab: [${black.join(', ')}], light: ${light} }\n---\n`;
  const data = taughtBook(compiled({ path: 'targets/cast.md', text }));
  return { work: withBookTarget(newWork(data), 'cast', data), data };
}

/** The match with a look at its cup that saw the target, as its fields show it. */
function seenAsItself(work: Work): Work {
  const side = work.sides[0]!;
  const round = roundOf(
    { pour: '14', overWhite: colourText(side.overWhite!), overBlack: colourText(side.overBlack!), note: '' },
    120,
  );
  if ('fault' in round) throw new Error(round.fault);
  return withSteps(work, 0, { do: 'add', amounts: [{ material: 'peat', dose: '9 drops', grams: 0.45 }] }, ...round);
}

describe('what an instrument measured', () => {
  test('is judged as measured: a target seen as itself is ΔE 0 at the bench, in the book and after an import', () => {
    fc.assert(
      fc.property(pair, ([white, black]) => {
        const { work: cast, data } = begun(white, black);
        const work = seenAsItself(cast);
        expect(adviceFor(work, 0, data).next.now).toMatchObject({ deltaE: 0, within: true });
        const read = readWork(JSON.stringify(work));
        expect(isNoWork(read)).toBe(false);
        expect(read).toEqual(work);
        // Described at the bench, and taken away with its target.
        const { target: _, ...described } = work;
        const target = targetFile(described, new Set(), DATA.settings)!;
        const id = target.name.replace(/\.md$/, '');
        const recipe = recipeFile(described, { made: '2026-03-14', taken: new Set(), target: id });
        const book = compiled(
          { path: `targets/${target.name}`, text: target.text },
          { path: `colours/${recipe.name}`, text: recipe.text },
        );
        expect(book.recipes[0]!.match!.cups[0]!.rounds[0]!.verdict).toMatchObject({ deltaE: 0, within: true });
      }),
      { numRuns: 25 },
    );
  });

  test.each(['D50', 'A', 'F11', 'LED-B1'])('is ΔE 0 to itself under %s too', (light) => {
    const { work, data } = begun([62.1, 60.3, 71.9], [30.2, 20.1, 30.7], light);
    expect(adviceFor(seenAsItself(work), 0, data).next.now).toMatchObject({ deltaE: 0, within: true });
  });

  test('stands in its field as it was measured, and is there again when its round is taken back', () => {
    const { work, data } = begun([60, 90, 60], [30, 60.25, 40]);
    expect(sidesView(work, data).toString()).toContain('value="60 90 60"');
    expect(withoutLastDone(seenAsItself(work), 0).sides).toEqual(work.sides);
  });

  test.each([
    ['60 90 60', { L: 60, a: 90, b: 60 }],
    ['60, 90, -6.5', { L: 60, a: 90, b: -6.5 }],
    ['60,5 9,25 −6', { L: 60.5, a: 9.25, b: -6 }],
    ['60,90,6', { L: 60, a: 90, b: 6 }],
    ['#A4814F', '#a4814f'],
    ['a4814f', '#a4814f'],
    ['120 9 6', undefined],
    ['60 9', undefined],
    ['60 x 6', undefined],
    ['', undefined],
  ])('typedColour(%s)', (text, colour) => {
    expect(typedColour(text)).toEqual(colour);
  });
});

test('roundOf(a pair that is lighter over black) is a fault at that field, but not where looking errs by as much', () => {
  const typed = { pour: '14', overWhite: '50 10 10', note: '' };
  expect(roundOf({ ...typed, overBlack: '54 10 10' }, 120)).toMatchObject({
    field: 'overBlack',
    fault: expect.stringContaining('lighter than the one over white'),
  });
  expect(roundOf({ ...typed, overBlack: '52 10 10' }, 120)).toHaveLength(2);
});
