import { expect, test } from 'vitest';
import type { SpreadAdvice } from '../../src/book/model/recipe.ts';
import { bookWith, file, recipeOf } from './sample.ts';

/** What is advised of a recipe whose one drop of black moves it far, in 30 ml. */
function advice(settings: string): readonly SpreadAdvice[] {
  const book = bookWith({
    'book.md': file(`title: T\n${settings}`),
    'shelf/colorants/soot.md': file(
      'title: Soot\nlook: { kind: pigment, colour: "#101010", dose: 12 drops per 100 ml }',
    ),
    'colours/smoke.md': file(
      'title: Smoke\nmold: minnow\nbaits: 6\ncups: { body: { plastic: 100 ml, add: { frost: 1 %, soot: 2 drops } } }',
    ),
  });
  return recipeOf(book, 'smoke').repeatability.advice ?? [];
}

test('one drop that moves the colour too far: the batch that mends it, if a cup holds that much', () => {
  const [drop, ...others] = advice('tools: { spoons: [1 tsp] }\ncup: 1000 ml');
  expect(others).toEqual([]);
  expect(drop).toEqual({ kind: 'drop', title: 'Soot', deltaE: expect.any(Number), enoughMl: expect.any(Number) });
  expect(drop?.kind === 'drop' && drop.deltaE).toBeGreaterThan(2);
  expect(drop?.kind === 'drop' && drop.enoughMl).toBeLessThanOrEqual(500);
});

test('where no cup holds that much, another tool', () => {
  expect(advice('tools: { spoons: [1 tsp] }\ncup: 100 ml')).toEqual([
    { kind: 'drop', title: 'Soot', deltaE: expect.any(Number) },
  ]);
});
