import { expect, test } from 'vitest';
import { offersInstead } from '../../src/browser/find-offers.ts';
import { vocabularyOf } from '../../src/browser/near-words.ts';
import type { Question } from '../../src/browser/question.ts';

const THINGS = ['green stained water', 'brown copper flake', 'green flake'];
const vocabulary = vocabularyOf(THINGS);
const count = async ({ words }: Question): Promise<number> =>
  THINGS.filter((thing) => words.split(' ').every((word) => thing.includes(word.replaceAll('"', '')))).length;
const offers = async (words: string): Promise<readonly string[]> =>
  (await offersInstead({ words, filters: {} }, await count({ words, filters: {} }), vocabulary, count)).map(
    ({ says, found }) => `${says}: ${found}`,
  );

test('offersInstead(question) offers each word out where nothing has them all, if that finds something', async () => {
  expect(await offers('copper flake green')).toEqual(['Without “copper”: 1', 'Without “green”: 1']);
});

test('offersInstead(question) takes no word out where something is found, or where there is one alone', async () => {
  expect(await offers('green flake')).toEqual([]);
  expect(await offers('purple')).toEqual([]);
});

test('offersInstead(question) keeps words in quotes together, and the colour that is asked for', async () => {
  const question = { words: '"copper flake" green', filters: {}, near: '#84562a' };
  const together = async ({ words }: Question): Promise<number> =>
    THINGS.filter((thing) =>
      (words.match(/"[^"]*"|\S+/g) ?? []).every((each) => thing.includes(each.replaceAll('"', ''))),
    ).length;
  const found = await offersInstead(question, 0, vocabulary, together);
  expect(found.map(({ says }) => says)).toEqual(['Without “copper flake”', 'Without “green”']);
  expect(found.map(({ question: { words, near } }) => [words, near])).toEqual([
    ['green', '#84562a'],
    ['"copper flake"', '#84562a'],
  ]);
});
