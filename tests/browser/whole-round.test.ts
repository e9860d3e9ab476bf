import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { logShelf } from '../../src/browser/match/page-shelf.ts';
import { withoutWholeRound } from '../../src/browser/match/whole-round.ts';
import { doings, type Work, withSteps } from '../../src/browser/match/work.ts';
import { match, matchBook, worksOf } from './matches.ts';

/** Of two matches that follow one another, whether a shot of both cups lies between them. */
const isShotOfBoth = (before: Work, after: Work): boolean =>
  after.cups.length === 2 && after.cups.every((cup, at) => cup.steps.length > before.cups[at]!.steps.length);

describe('withoutWholeRound(…)', () => {
  test('takes a shot of both cups back from both, whichever is asked, and leaves alone what was done to one', () => {
    let shots = 0;
    fc.assert(
      fc.property(matchBook, match, (book, drawn) => {
        const shelf = logShelf(book.data);
        const works = worksOf({ ...drawn, target: 'elver' }, book);
        for (const [at, after] of works.entries()) {
          const before = works[at - 1];
          if (before === undefined || after === before) continue;
          const back = [0, 1].map((index) => withoutWholeRound(after, index, shelf));
          if (!isShotOfBoth(before, after)) continue;
          shots += 1;
          expect(back.map((each) => each?.work)).toEqual([before, before]);
          expect(back.map((each) => each?.other)).toEqual(
            [1, 0].map((other) => doings(after.cups[other]!.steps).at(-1)),
          );
          // What was done to the other cup since stays.
          const plastic = { do: 'plastic', ml: 3 } as const;
          expect(withoutWholeRound(withSteps(after, 1, plastic), 0, shelf)?.work).toEqual(
            withSteps(before, 1, plastic),
          );
          expect(withoutWholeRound(withSteps(after, 0, plastic), 0, shelf)).toBeUndefined();
        }
      }),
    );
    expect(shots).toBeGreaterThan(20);
  });
});
