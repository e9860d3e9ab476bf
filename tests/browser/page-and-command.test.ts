import { describe, expect, test } from 'vitest';
import { nextAdditionFor } from '../../src/book/match/ask-matching.ts';
import type { Book, Cup } from '../../src/book/model.ts';
import { adviceFor } from '../../src/browser/match/ask.ts';
import { type Work, withSteps } from '../../src/browser/match/work.ts';
import { recipeFile } from '../../src/browser/match/work-recipe.ts';
import { required } from '../../src/values/required.ts';
import { compiled, DATA, leaf } from './match-book.ts';

/** The recipe that a match writes, in the book. */
function inBook(work: Work): {
  readonly book: Book;
  readonly cup: Cup;
  readonly next: ReturnType<typeof nextAdditionFor>;
} {
  const { name, text } = recipeFile(work, { made: '2026-03-14', taken: new Set() });
  const book = compiled({ path: `colours/${name}`, text });
  const [recipe] = book.recipes;
  const [cup] = recipe!.cups;
  return { book, cup: cup!, next: nextAdditionFor(book, recipe!, cup!, required(book.targets, work.target!)) };
}

const PEAT = { material: 'peat', dose: '6 drops', grams: 0.3 };

describe('a match on its page and in its recipe', () => {
  test('has rounds of the same numbers, whether or not somebody looked', () => {
    const added = withSteps(leaf(), 0, { do: 'add', amounts: [PEAT] });
    const poured = withSteps(added, 0, { do: 'pour', ml: 14 });
    const again = withSteps(poured, 0, { do: 'add', amounts: [PEAT] });
    const work = withSteps(again, 0, { do: 'pour', ml: 14 }, { do: 'see', overWhite: '#b8926a' });
    const { now } = adviceFor(work, 0, DATA);
    const { cup } = inBook(work);
    expect(now.rounds.map(({ number, seen }) => [number, seen.length > 0])).toEqual([
      [1, false],
      [2, true],
    ]);
    expect(cup.rounds.map(({ number, seen }) => [number, seen.length > 0])).toEqual([
      [1, false],
      [2, true],
    ]);
  });

  test('warns of foam in a cup that is too full, and proposes no new one that would be', () => {
    const full = withSteps({ ...leaf(), plasticMl: 300 }, 0, { do: 'add', amounts: [PEAT] });
    const work = withSteps(full, 0, { do: 'pour', ml: 14 }, { do: 'see', overWhite: '#b8926a', overBlack: '#5a4a3a' });
    const { next } = adviceFor(work, 0, DATA);
    expect(next.sentence).toContain('hot plastic foams');
    expect(next.sentence).toBe(inBook(work).next.sentence);
  });
});
