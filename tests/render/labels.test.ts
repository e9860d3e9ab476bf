import { expect, test } from 'vitest';
import { LABEL_SHEETS, labelsOn } from '../../src/render/label/label-sheet.ts';
import { hasRoomForAll } from '../../src/render/label/label-type.ts';
import { labelWords } from '../../src/render/label/label-words.ts';
import { bookOf, SAMPLE_BOOK, SAMPLE_FILES } from './sample-book.ts';

const recipe = SAMPLE_BOOK.recipes.find(({ id }) => id === 'alder-smoke')!;

test('labels of every size lie on their paper', () => {
  for (const { paper, columns, rows, widthMm, heightMm, leftMm, topMm, gapMm } of LABEL_SHEETS) {
    const [width, height] = paper === 'A4' ? [210, 297] : [215.9, 279.4];
    // As much at the right as at the left, below as above.
    expect(2 * leftMm + columns * widthMm + (columns - 1) * gapMm).toBeCloseTo(width, 5);
    expect(2 * topMm + rows * heightMm).toBeCloseTo(height, 5);
    expect(labelsOn({ columns, rows })).toBe(columns * rows);
  }
});

test('labelWords(book, recipe) names everything in the bait, the most of it first', () => {
  const { ingredients, address } = labelWords(SAMPLE_BOOK, recipe);
  expect(ingredients.startsWith('Supple, ')).toBe(true);
  for (const name of ['Peat', 'Lamp Black', 'Ivory Pearl', 'Copper hexagon']) expect(ingredients).toContain(name);
  expect(address).toBe('https://book.example/deep/colours/alder-smoke/');
});

test('a label of what readers don’t get in full names no material: a bag goes to readers', () => {
  const mine = bookOf(SAMPLE_FILES, 'mine');
  for (const id of ['hush', 'secret']) {
    const kept = mine.recipes.find((each) => each.id === id)!;
    const { ingredients, address } = labelWords(mine, kept);
    expect(ingredients).toMatch(/^Vinyl plastic with plasticiser(, | and )/);
    for (const { material } of kept.batch.materials)
      expect(ingredients).not.toContain(mine.materials.find((each) => each.id === material)!.title);
    expect(address === undefined).toBe(id === 'secret');
  }
});

test('hasRoomForAll(words, sheet) leaves out what has no room for all of it', () => {
  const words = labelWords(SAMPLE_BOOK, recipe);
  const small = LABEL_SHEETS.find(({ name }) => name === '63x38')!;
  const large = LABEL_SHEETS.find(({ name }) => name === '99x68')!;
  const many = { ...words, ingredients: 'Copper hexagon .040, '.repeat(15) };
  expect(hasRoomForAll(words, large)).toBe(true);
  expect(hasRoomForAll(many, large)).toBe(true);
  expect(hasRoomForAll(many, small)).toBe(false);
});
