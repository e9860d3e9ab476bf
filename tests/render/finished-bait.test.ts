import { describe, expect, test } from 'vitest';
import type { Look } from '../../src/book/model/looks.ts';
import { lookDoubt } from '../../src/optics/look-doubt.ts';
import { lookWords } from '../../src/render/look-words.ts';
import { bookOf, pageOf, SAMPLE_BOOK, SAMPLE_FILES } from './sample-book.ts';

const METRIC = { volume: 'ml' } as const;

describe('lookWords(look)', () => {
  test.each<readonly [Look, string]>([
    [{}, ''],
    [{ doubt: lookDoubt('screen') }, ''],
    [{ wet: true, after: 'hot' }, 'Wet, while hot.'],
    [{ after: 'next day', thicknessMm: 3, doubt: lookDoubt('screen', 5) }, 'Next day, 3 mm, within ΔE 5.'],
    [{ after: '10 min', contrastDoubt: 0.03, checked: true }, 'After 10 min, hiding within 3 %, looked at twice.'],
    [{ wet: true, camera: 'the old phone' }, 'Wet, photo by the old phone.'],
  ])('of %j is “%s”', (look, words) => {
    expect(lookWords(look, METRIC)).toBe(words);
  });

  test('has the thickness in the unit of the book', () => {
    expect(lookWords({ thicknessMm: 9.525 }, { volume: 'fl oz' })).toBe('0.375 in.');
  });
});

test('a recipe shows how its finished bait was seen, in its maker’s words, and after which rounds', async () => {
  const files = {
    ...SAMPLE_FILES,
    'colours/weir-foam.md': SAMPLE_FILES['colours/weir-foam.md']!.replace(
      'cups:',
      'seen:\n  - { over-white: "#b09468", over-black: "#6a5a44", rounds: { body: 2 }, after: next day, note: that is foam }\n  - { side: body, over-white: "#b8a078", wet: true }\ncups:',
    ),
  };
  const page = await pageOf('recipe', 'weir-foam', bookOf(files));
  const section = page.slice(page.indexOf('id="bait"'), page.indexOf('id="target"'));
  expect(section).toContain('“that is foam”');
  expect(section).toContain('Next day. Poured after round 2 of the body.');
  expect(section).toContain('<h4>Body</h4>');
  expect(section).toContain('Weir Foam, body up, as seen');
  expect(page.slice(page.indexOf('id="story"'), page.indexOf('id="rounds"'))).toContain('the finished bait');
  expect(await pageOf('recipe', 'weir-foam', SAMPLE_BOOK)).not.toContain('id="bait"');
});

test('a round shows every look at its pour, the one that it is judged by first', async () => {
  const files = {
    ...SAMPLE_FILES,
    'colours/weir-foam.md': SAMPLE_FILES['colours/weir-foam.md']!.replace(
      'seen: { over-white: "#b8a078" }',
      'seen: [{ over-white: "#b09868", after: hot, note: muddy }, { over-white: "#b8a078", after: next day }, { thickness: 3 mm, after: hot, note: no colour }]',
    ),
  };
  const page = await pageOf('recipe', 'weir-foam', bookOf(files));
  const section = page.slice(page.indexOf('id="rounds"'), page.indexOf('id="target"'));
  const places = [
    'Next day. Against what this book has learned from all looks: ',
    '“muddy”',
    'While hot. Against what this book has learned from all looks: ',
    '“no colour”',
    'While hot, 3 mm.',
  ].map((words) => section.indexOf(words));
  expect(places.every((place) => place > 0)).toBe(true);
  expect(places).toEqual([...places].sort((one, other) => one - other));
  expect(section.match(/<li class="round">/g)).toHaveLength(2);
});
