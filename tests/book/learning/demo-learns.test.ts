import { expect, test } from 'vitest';
import { deltaE00 } from '../../../src/optics/delta-e00.ts';
import { DEMO_BOOK, WHOLE_DEMO_BOOK } from '../../render/demo-book.ts';
import { recipeOf } from '../sample.ts';

/** Recipes of the demo book of which the cup was looked at as it is now. */
const SEEN = WHOLE_DEMO_BOOK.recipes.filter(({ known }) => known.how === 'seen');

test('the demo book shows each cup that was looked at as it was seen, within what a look is worth', () => {
  expect(SEEN.map(({ id }) => id)).toEqual(expect.arrayContaining(['quagmire-waltz', 'rowan-week', 'tannery-bend']));
  for (const { id, body, cups } of SEEN.filter((recipe) => recipe.cups.length === 1)) {
    const [look] = cups[0]!.rounds.at(-1)!.seen;
    if (look?.thicknessMm !== undefined || !look?.overWhite) continue;
    expect([id, deltaE00(body.overWhite.lab, look.overWhite.lab) < look.doubt!.bound]).toEqual([id, true]);
  }
});

test('the demo book has learned of its bottles, and readers have what published looks alone have taught', () => {
  const learned = WHOLE_DEMO_BOOK.materials.filter(({ learnedFrom = 0 }) => learnedFrom > 0);
  expect(learned.length).toBeGreaterThan(15);
  const { recipes, chips } = WHOLE_DEMO_BOOK;
  const isFull = ({ publish }: { readonly publish?: string }): boolean => publish === 'full';
  const published = [
    ...recipes.filter(isFull).map(({ id }) => id),
    ...chips.filter(isFull).map(({ id }) => `chips/${id}`),
  ];
  const secret = DEMO_BOOK.learned.data.looks.filter(({ key }) => !published.some((id) => key.startsWith(`${id}/`)));
  expect(secret).toEqual([]);
  expect(WHOLE_DEMO_BOOK.learned.data.looks.length).toBeGreaterThan(DEMO_BOOK.learned.data.looks.length);
  expect(recipeOf(DEMO_BOOK, 'rowan-week').known).toEqual({ how: 'seen' });
});
