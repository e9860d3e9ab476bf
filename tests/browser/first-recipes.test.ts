import { join } from 'node:path';
import { expect, test } from 'vitest';
import { compileBook } from '../../src/book/compile-book.ts';
import { firstRecipeFor } from '../../src/book/match/ask-matching.ts';
import { firstAnswers } from '../../src/browser/match/ask.ts';
import { newWork, withBookTarget } from '../../src/browser/match/work-begun.ts';
import type { FirstRecipe } from '../../src/matching/first-recipe.ts';
import { readBook } from '../../src/shell/read-book.ts';
import { ROOT } from '../run-cupbook.ts';
import { taughtBook } from './taught-book.ts';

const BOOK = compileBook(readBook(join(ROOT, 'recipes')).sources).book!;

const told = ({ advice, proposals, leftOut }: FirstRecipe): unknown => ({
  advice,
  leftOut,
  proposals: proposals.map(({ cups }) =>
    cups.map(({ amounts }) => amounts.map(({ text, title, cut }) => [text, cut?.title ?? title])),
  ),
});

test.each(BOOK.targets.map(({ id }) => id))('first recipes for %s are the same on the page and from `match`', (id) => {
  const data = taughtBook(BOOK);
  const target = BOOK.targets.find((each) => each.id === id)!;
  const work = withBookTarget(newWork(data), id, data);
  const page = firstAnswers(work, data).map(({ part, recipe }) => [part, told(recipe)]);
  const command = firstRecipeFor(BOOK, target, { most: 4, plasticMl: work.plasticMl });
  expect(page).toEqual(command.map(({ part, recipe }) => [part, told(recipe)]));
  for (const { recipe } of command)
    expect(recipe.leftOut.map(({ material }) => material)).toEqual(
      expect.arrayContaining(['flood-yellow', 'mallow-pink']),
    );
});
