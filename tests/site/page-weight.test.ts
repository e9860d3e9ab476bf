import { statSync } from 'node:fs';
import { join } from 'node:path';
import { expect, inject, test } from 'vitest';
import { DEMO_BOOK } from '../render/demo-book.ts';

const weights = DEMO_BOOK.recipes.map(({ id, match }) => ({
  id,
  cups: match?.cups.length ?? 0,
  bytes: statSync(join(inject('site'), 'colours', id, 'index.html')).size,
}));

test('a recipe’s page is lighter than 45 kB', () => {
  expect(weights.length).toBeGreaterThan(30);
  expect(weights.filter(({ cups, bytes }) => cups < 2 && bytes >= 45_000)).toEqual([]);
});

test('that of a laminate that was matched, with the log and the chart of two cups, than 60 kB', () => {
  const two = weights.filter(({ cups }) => cups === 2);
  expect(two).not.toEqual([]);
  expect(two.filter(({ bytes }) => bytes >= 60_000)).toEqual([]);
});
