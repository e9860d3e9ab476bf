import { describe, expect, test } from 'vitest';
import { compileBook } from '../../../src/book/compile-book.ts';
import type { Recipe } from '../../../src/book/model/recipe.ts';
import { LOOK_STEP } from '../../../src/book/publish/look-only.ts';
import { publishedBook } from '../../../src/book/publish/published-book.ts';
import { hidesText } from '../../../src/render/words.ts';
import { DEMO_BOOK } from '../../render/demo-book.ts';
import { attack, boxOf, knowledgeOf, modelOf } from './attack.ts';
import { asLookOnly, readFromEdition } from './demo-looks.ts';
import { BoxFitter, outsideOf } from './fit-box.ts';
import { type LookModel, suspectsOf } from './look-model.ts';
import { columnsOf } from './minimal-sets.ts';
import { UNTAUGHT_DEMO_BOOK, untaughtSources } from './untaught-demo.ts';

const BOOK = UNTAUGHT_DEMO_BOOK;
const SHARED = DEMO_BOOK;
const LOOKS = BOOK.recipes.filter(({ publish }) => publish === 'look').map(({ id }) => id);
const recipeOf = (id: string): Recipe => BOOK.recipes.find((recipe) => recipe.id === id)!;

/** Usual doses from which a fit may begin: from one it may end short of the box. */
const STARTS = [0.3, 0.1, 1, 0.03];

/** The true doses of a recipe in the columns of a model. */
function truth(model: LookModel, recipe: Recipe): { suspects: number[]; doses: Float64Array } {
  const ids = [...new Set(recipe.cups.flatMap(({ contents }) => contents.map(({ material }) => material)))];
  const suspects = ids.map((id) => model.suspects.findIndex((suspect) => suspect.id === id)).filter((at) => at >= 0);
  const doses = columnsOf(suspects, model.cups).map(({ cup, suspect }) => {
    const { id, usualDose } = model.suspects[suspect]!;
    const content = recipe.cups[cup]!.contents.find(({ material }) => material === id);
    return (content?.gramsPerMl ?? 0) / usualDose;
  });
  return { suspects, doses: Float64Array.from(doses) };
}

describe('the attacker’s model', () => {
  test.each(['nells-umbrella', 'hornbeam-hush', 'late-bus', 'thunder-over-chapel', 'millrace-marble'])(
    'sees what the book sees: the true doses of %s are in the box, however fine its digits',
    (id) => {
      const { look, knowledge } = asLookOnly(BOOK, id, 0.2);
      const model = modelOf(look, knowledge);
      const { suspects, doses } = truth(model, recipeOf(id));
      const columns = columnsOf(suspects, model.cups);
      const values = new Float64Array(model.rows);
      model.see(columns, doses, values, new Float64Array(model.rows * columns.length));
      // The book's plastics of one cup may differ from the other's, and its rule for flake is finer by ΔE00 0.05.
      expect(Math.sqrt(outsideOf(values, boxOf(look)))).toBeLessThan(0.1);
    },
  );
  test('knows how its numbers change with each dose', () => {
    for (const id of ['nells-umbrella', 'thunder-over-chapel']) {
      const { look, knowledge } = asLookOnly(BOOK, id, 2);
      const model = modelOf(look, knowledge);
      const { suspects, doses } = truth(model, recipeOf(id));
      const columns = columnsOf(suspects, model.cups);
      const [values, slopes] = [new Float64Array(model.rows), new Float64Array(model.rows * columns.length)];
      model.see(columns, doses, values, slopes);
      for (let j = 0; j < columns.length; j++) {
        const more = doses.slice();
        more[j]! += 1e-5;
        const then = new Float64Array(model.rows);
        model.see(columns, more, then, new Float64Array(slopes.length));
        for (let row = 0; row < model.rows; row++) {
          const slope = slopes[row * columns.length + j]!;
          expect(Math.abs((then[row]! - values[row]!) / 1e-5 - slope)).toBeLessThan(1e-3 * (1 + Math.abs(slope)));
        }
      }
    }
  });
});

describe('the attack', () => {
  test('finds the very recipe where digits are fine, so that it is no straw man', () => {
    const id = 'treasurers-gloves';
    const { look, knowledge } = asLookOnly(BOOK, id, 0.05);
    const { sets, main } = attack(look, knowledge, { most: 3 });
    const { contents } = recipeOf(id).cups[0]!;
    expect(sets.map((set) => [...set].sort())).toEqual([contents.map(({ material }) => material).sort()]);
    const dose = contents.find(({ material }) => material === main!.material)!.gramsPerMl;
    expect(main!.low / dose).toBeGreaterThan(0.95);
    expect(main!.high / dose).toBeLessThan(1.05);
  });
  test('finds no set that does not have every digit', () => {
    const { look, knowledge } = asLookOnly(BOOK, 'treasurers-gloves', LOOK_STEP);
    const model = modelOf(look, knowledge);
    const box = boxOf(look);
    const { sets } = attack(look, knowledge, { most: 3 });
    expect(sets.length).toBeGreaterThan(0);
    for (const set of sets) {
      const suspects = set.map((id) => model.suspects.findIndex((suspect) => suspect.id === id));
      const columns = columnsOf(suspects, 1);
      const fits = STARTS.map((dose) =>
        new BoxFitter(model, box).fit(columns, new Float64Array(columns.length).fill(dose)),
      );
      const { outside, doses } = fits.reduce((best, fit) => (fit.outside < best.outside ? fit : best));
      const values = new Float64Array(model.rows);
      model.see(columns, doses, values, new Float64Array(model.rows * columns.length));
      // Nothing, to a ten-thousandth of a digit.
      expect([set, outside.toFixed(4), outsideOf(values, box).toFixed(4)]).toEqual([set, '0.0000', '0.0000']);
    }
  });
});

describe.each(LOOKS)('the shared edition of the demo book, of %s', (id) => {
  test('has no colour but its four, and no number but their contrast', async () => {
    const { look, strayColours, numbers } = await readFromEdition(SHARED, id, LOOK_STEP);
    expect(strayColours).toEqual([]);
    const parts = [look.body, look.thin, look.other].filter((part) => part !== undefined);
    const told = parts.map(({ contrastRatio }) => hidesText(contrastRatio).replace(' %', ''));
    expect([...new Set(numbers)].filter((number) => !told.includes(number))).toEqual([]);
    for (const { overWhite, overBlack } of parts) {
      for (const { lab } of [overWhite, overBlack]) {
        for (const value of [lab.L, lab.a, lab.b]) expect(Number.isInteger(value / LOOK_STEP)).toBe(true);
      }
    }
  });
});

test('another recipe that has every digit of a look leaves the same bytes in the shared edition', () => {
  const id = 'nells-umbrella';
  const { look, knowledge } = asLookOnly(BOOK, id, LOOK_STEP);
  const model = modelOf(look, knowledge);
  const box = boxOf(look);
  const { sets } = attack(look, knowledge, { most: 3 });
  expect(sets.length).toBeGreaterThan(0);
  const own = recipeOf(id).source.text;
  const recipeOfSet = (set: readonly string[]): string => {
    const suspects = set.map((name) => model.suspects.findIndex((suspect) => suspect.id === name));
    const { doses } = new BoxFitter(model, box).fit(columnsOf(suspects, 1), new Float64Array(set.length).fill(0.3));
    const add = set.map((name, at) => {
      const grams = doses[at]! * model.suspects[suspects[at]!]!.usualDose * 100;
      return `${name}: ${grams.toFixed(4)} g`;
    });
    const text = own.replace(
      /cups:[\s\S]*?\n---/,
      `cups:\n  body:\n    plastic: 100 ml supple\n    add: { ${add.join(', ')} }\n---`,
    );
    expect(text).not.toBe(own);
    return text;
  };
  // The shelf, the molds, and few colours: those of the whole book would take a minute.
  const { sources: all, photos } = untaughtSources();
  const few = all.filter(
    ({ path }) =>
      /^(?:book\.md|shelf\/|molds\/)/.test(path) || [`colours/${id}.md`, 'colours/weir-foam.md'].includes(path),
  );
  const edition = (text: string): string => {
    const sources = few.map((source) => (source.path === `colours/${id}.md` ? { ...source, text } : source));
    const { book, diagnostics } = compileBook(sources, { photos });
    expect(diagnostics.filter(({ severity }) => severity === 'error')).toEqual([]);
    return JSON.stringify(publishedBook(book!));
  };
  const same = edition(own);
  // The colours of each set are those of the look; of its flake the word may be another.
  const other = sets
    .slice(0, 6)
    .map(recipeOfSet)
    .find((text) => edition(text) === same);
  expect(other).toBeDefined();
  expect(edition(other!.replace(/mallow-pink: [\d.]+ g/, 'mallow-pink: 4 g'))).not.toBe(same);
});

test('knowledgeOf(book, id) is the worst that can be: the whole shelf, the mold, the plastic and the shares', () => {
  const { materials, shares } = knowledgeOf(BOOK, 'hornbeam-hush');
  expect(materials.length).toBe(BOOK.materials.length);
  expect(suspectsOf(materials).length).toBeGreaterThan(20);
  expect(shares).toEqual([0.5, 0.5]);
});
