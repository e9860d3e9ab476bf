import { expect, test } from 'vitest';
import type { Repeatability } from '../../src/book/model/recipe.ts';
import { bookWith, file, recipeOf } from './sample.ts';

const TEA = 'plastic: 100 ml, add: { tea: 9 drops }';
const HIDING = 'plastic: 100 ml, add: { milk: 4 g }';

function madeAgain(front: string): Repeatability {
  const book = bookWith({
    'shelf/powders/milk.md': file('title: Milk\nlook: { kind: white, colour: "#f4f2ec", dose: 1 % }'),
    'shelf/colorants/tea.md': file('title: Tea\nlook: { kind: dye, colour: "#7a4a24", dose: 20 drops per 100 ml }'),
    'colours/bait.md': file(`title: Bait\nmold: minnow\n${front}`),
  });
  return recipeOf(book, 'bait').repeatability;
}

const solid = madeAgain(`cups: { body: { ${TEA} } }`).bySpoonAndDrop!;

test('a swirl with clear plastic varies as its one coloured cup does, for each is seen by itself', () => {
  const swirl = madeAgain(`pattern: swirl\ncups: { body: { ${TEA} }, clear: { plastic: 100 ml } }`);
  expect(swirl.bySpoonAndDrop).toBeCloseTo(solid, 1);
});

test('what lies behind a shell that hides it makes no bait vary', () => {
  const core = madeAgain(`pattern: core\ncups: { shell: { share: 90%, ${HIDING} }, core: { share: 10%, ${TEA} } }`)
    .bySpoonAndDrop!;
  const shell = madeAgain(`cups: { body: { ${HIDING} } }`).bySpoonAndDrop!;
  expect(core).toBeLessThan(solid / 2);
  expect(core).toBeLessThan(2 * shell + 0.3);
});

test('a laminate varies with both of its cups, on either side', () => {
  const pair = (far: string): number =>
    madeAgain(`pattern: laminate\ncups: { back: { ${TEA} }, belly: { ${far} } }`).bySpoonAndDrop!;
  const clear = pair('plastic: 100 ml');
  // Beside clear plastic the back alone varies; beside a stronger cup there are two that do, and the darker one by more.
  expect(clear).toBeGreaterThan(0);
  expect(pair('plastic: 100 ml, add: { tea: 20 drops }')).toBeGreaterThan(clear + 0.3);
});

test('plastic alone has nothing to measure', () => {
  expect(madeAgain('cups: { body: { plastic: 100 ml } }')).toEqual({});
});
