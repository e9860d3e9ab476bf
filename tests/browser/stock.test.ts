import { describe, expect, test } from 'vitest';
import { compileBook } from '../../src/book/compile-book.ts';
import { firstRecipeFor, nextAdditionFor } from '../../src/book/match/ask-matching.ts';
import { adviceFor, firstAnswers } from '../../src/browser/match/ask.ts';
import { shelfLeft } from '../../src/browser/match/shelf-left.ts';
import { begunAnew, type Work, withSteps } from '../../src/browser/match/work.ts';
import { newWork, withBookTarget, withRecipe } from '../../src/browser/match/work-begun.ts';
import { recipeFile } from '../../src/browser/match/work-recipe.ts';
import type { TaughtMatchData } from '../../src/render/pages/match.ts';
import { firstRecipeText } from '../../src/words/first-recipe.ts';
import { runsShortText } from '../../src/words/stock.ts';
import { expectClose } from '../optics/close.ts';
import { compiled, FILES, leaf } from './match-book.ts';
import { taughtBook } from './taught-book.ts';

/** The book with so much left of its peat, and perhaps of its plastic. */
function shelf(peat: string, plastic?: string): { readonly data: TaughtMatchData; readonly files: typeof FILES } {
  const files = [
    ...FILES.filter(({ path }) => !/peat|supple/.test(path)),
    {
      path: 'shelf/colorants/peat.md',
      text: `---\ntitle: Peat\nstock: ${peat}\nlook: { kind: dye, colour: "#7a4a24", dose: 20 drops per 120 ml }\n---\n`,
    },
    {
      path: 'shelf/plastics/supple.md',
      text: `---\ntitle: Supple\n${plastic === undefined ? '' : `stock: ${plastic}\n`}---\n`,
    },
  ];
  const { book } = compileBook(files);
  return { data: taughtBook(book!), files };
}

const peatOf = (work: Work, data: TaughtMatchData): number =>
  shelfLeft(work, data).find(({ id }) => id === 'peat')!.stockGrams!;
const begun = (data: TaughtMatchData, inStock: boolean): Work => ({
  ...withBookTarget(newWork(data), 'leaf', data),
  inStock,
});

describe('what is left for a match', () => {
  test('is the stock less what went into its cups, those that were given up and what was poured of them too', () => {
    const { data } = shelf('2 ml', '500 ml');
    const grams = data.materials.find(({ id }) => id === 'peat')!.stockGrams!;
    const add = { do: 'add' as const, amounts: [{ material: 'peat', dose: '8 drops', grams: 0.4 }] };
    const one = withSteps(begun(data, true), 0, add, { do: 'pour', ml: 30 }, { do: 'see', overWhite: '#c8a47c' });
    expect(peatOf(one, data)).toBeCloseTo(grams - 0.4, 9);
    const two = begunAnew(one, 0, [{ ...add, recipe: true }]);
    expect(peatOf(two, data)).toBeCloseTo(grams - 0.8, 9);
    // Begun anew before anybody looked, the first was never made.
    const never = begunAnew(withSteps(begun(data, true), 0, add), 0, [add]);
    expect(peatOf(never, data)).toBeCloseTo(grams - 0.4, 9);
    const plastic = shelfLeft(withSteps(two, 0, { do: 'plastic', ml: 20 }), data).find(({ id }) => id === 'supple')!;
    expect(plastic.stockGrams! / plastic.gramsPerMl).toBeCloseTo(500 - 2 * two.plasticMl - 20, 6);
    expect(shelfLeft(two, data).find(({ id }) => id === 'soot')!.stockGrams).toBeUndefined();
  });

  test('caps what is asked for next, where only what is left is asked for', () => {
    const { data } = shelf('0.6 ml');
    const [answer] = firstAnswers(begun(data, true), data);
    const work = withSteps(
      withRecipe(begun(data, true), 0, answer!.recipe.proposals[0]!, data),
      0,
      { do: 'pour', ml: 14 },
      { do: 'see', overWhite: '#d8c4a4', overBlack: '#8a7a66' },
    );
    const left = peatOf(work, data);
    const { proposals } = adviceFor(work, 0, data).next;
    for (const { additions } of proposals)
      for (const { material, grams } of additions) if (material === 'peat') expect(grams).toBeLessThan(left + 1e-6);
    const all = adviceFor({ ...work, inStock: false }, 0, data).next.proposals;
    expect(Math.max(...all.flatMap(({ additions }) => additions.map(({ grams }) => grams)))).toBeGreaterThan(left);
  });

  test('is told where a proposal asks for more, on the page and by the command', () => {
    const { data, files } = shelf('0.2 ml', '90 ml');
    const { recipe } = firstAnswers(begun(data, false), data)[0]!;
    const units = data.settings;
    const short = runsShortText(recipe.proposals[0]!.runsShort!, units);
    expect(short).toBe('Not enough on the shelf: 4 drops of Peat and 90 ml of Supple left.');
    expect(firstRecipeText(recipe, units)).toContain(short);
    const none = firstAnswers(begun(shelf('0').data, false), shelf('0').data)[0]!.recipe.proposals[0]!;
    expect(runsShortText(none.runsShort!, units)).toBe('Not enough on the shelf: no Peat left.');
    const { book } = compileBook(files);
    const target = book!.targets.find(({ id }) => id === 'leaf')!;
    const [answer] = firstRecipeFor(book!, target, { most: 4, plasticMl: data.plasticMl });
    expect(firstRecipeText(answer!.recipe, book!.settings)).toBe(firstRecipeText(recipe, units));
    expect(firstAnswers(leaf(), taughtBook(compiled()))[0]!.recipe.proposals[0]!.runsShort).toBeUndefined();
  });

  test('is shared by the two cups of a laminate', () => {
    const { data } = shelf('0.6 ml');
    const work: Work = { ...withBookTarget(newWork(data), 'elver', data), inStock: true };
    const left = peatOf(work, data);
    const { proposals } = firstAnswers(work, data)[0]!.recipe;
    expect(proposals.length).toBeGreaterThan(0);
    for (const { cups } of proposals) {
      const peat = cups.flatMap(({ amounts }) => amounts.filter(({ material }) => material === 'peat'));
      expect(peat.reduce((sum, { grams }) => sum + grams, 0)).toBeLessThan(left + 1e-6);
    }
  });
});

test('a cup that is fuller than the book fills one is told the same on the page and by the command', () => {
  const { data, files } = shelf('30 ml');
  const wide: Work = { ...begun(data, false), plasticMl: 300 };
  const work = withSteps(
    wide,
    0,
    { do: 'add', amounts: [{ material: 'peat', dose: '20 drops', grams: 1 }] },
    { do: 'pour', ml: 14 },
    { do: 'see', overWhite: '#e0c890', overBlack: '#4a4030' },
  );
  const { next } = adviceFor(work, 0, data);
  expect(next.crowded).toMatchObject({ kind: 'over-full' });
  const { text } = recipeFile(work, { made: '2026-03-14', taken: new Set() });
  const { book } = compileBook([...files, { path: 'colours/leaf-brown.md', text }]);
  const [recipe] = book!.recipes;
  const target = book!.targets.find(({ id }) => id === 'leaf')!;
  const told = nextAdditionFor(book!, recipe!, recipe!.cups[0]!, target);
  expect(told.crowded!.kind).toBe('over-full');
  expectClose(told.crowded!.plasticMl, next.crowded!.plasticMl, 1e-6);
  expect(told.crowded!.roomMl).toBe(next.crowded!.roomMl);
  for (const { cups } of next.startAgain ? [next.startAgain] : [])
    expect(cups[0]!.plasticMl).toBeLessThanOrEqual(data.settings.cupMl * data.settings.fill);
});
