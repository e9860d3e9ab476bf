import { expect, test } from 'vitest';
import { compileBook } from '../../src/book/compile-book.ts';
import { nextAdditionFor } from '../../src/book/match/ask-matching.ts';
import { adviceFor, firstAnswers } from '../../src/browser/match/ask.ts';
import { typedAmount } from '../../src/browser/match/dose-text.ts';
import { mixView } from '../../src/browser/match/mix-view.ts';
import { dosedIn, logShelf } from '../../src/browser/match/page-shelf.ts';
import { settledWork } from '../../src/browser/match/settle-work.ts';
import { shelfLeft } from '../../src/browser/match/shelf-left.ts';
import { type Work, withSteps } from '../../src/browser/match/work.ts';
import { newWork, stepsOf, withBookTarget, withRecipe } from '../../src/browser/match/work-begun.ts';
import { cupNow } from '../../src/browser/match/work-log.ts';
import { recipeFile } from '../../src/browser/match/work-recipe.ts';
import { isMeasurable } from '../../src/cup/cut-measures.ts';
import { required } from '../../src/values/required.ts';
import { nextAdditionText } from '../../src/words/next-addition.ts';
import { recipeOf } from '../book/sample.ts';
import { FILES } from './match-book.ts';
import { taughtBook } from './taught-book.ts';

const text = (front: string): string => `---\n${front}\n---\n`;
/** A shelf on which a drop of black is far too much for a pale target, and the black is cut. */
const SHELF = [
  ...FILES.filter(({ path }) => !/soot|book\.md/.test(path)),
  { path: 'book.md', text: text('title: Bench\ntools: { spoons: [1/4 tsp, 1/8 tsp, 1 pinch] }') },
  {
    path: 'shelf/colorants/soot.md',
    text: text(
      'title: Soot\nstock: 5 g\nlook: { kind: pigment, colour: "#1a1a1a", dose: 2 drops per 100 ml }\ndensity: 1.2 g/ml',
    ),
  },
  {
    path: 'shelf/additives/softener.md',
    text: text('title: Softener\nstock: 50 ml\ndensity: 0.9 g/ml\ndrop: 0.05 ml'),
  },
  {
    path: 'shelf/colorants/soot-cut.md',
    text: text('title: Soot Cut\ncut: { of: soot, with: softener, one-in: 10 }'),
  },
  {
    path: 'shelf/colorants/chalk.md',
    text: text('title: Chalk\nlook: { kind: white, colour: "#f2f1ec", dose: 20 drops per 100 ml }'),
  },
];
/** White with so little black that half a drop of the bottle makes it, in as much plastic as a match begins with. */
const MADE = recipeOf(
  compileBook([
    ...SHELF,
    {
      path: 'colours/mist.md',
      text: text(
        'title: Mist\nmold: minnow\ncups: { body: { plastic: 100 ml supple, add: { chalk: 20 drops, soot-cut: 5 drops } } }',
      ),
    },
  ]).book!,
  'mist',
);
const BOOK = [
  ...SHELF,
  {
    path: 'targets/mist.md',
    text: text(
      `title: Mist\nmold: minnow\ntolerance: 1\nover-white: "${MADE.body.overWhite.hex}"\nover-black: "${MADE.body.overBlack.hex}"`,
    ),
  },
];
const { book } = compileBook(BOOK);
const DATA = taughtBook(book!);
const CUT = DATA.materials.find(({ id }) => id === 'soot')!.cuts![0]!;
const mist = (): Work => withBookTarget(newWork(DATA), 'mist', DATA);
const begun = (): Work => withRecipe(mist(), 0, firstAnswers(mist(), DATA)[0]!.recipe.proposals[0]!, DATA);
const stockOf = (work: Work, id: string): number => shelfLeft(work, DATA).find((each) => each.id === id)!.stockGrams!;

test('firstRecipe counts of a cut what is too little of its bottle, and the cut is no bottle of its own', () => {
  const [{ recipe }] = firstAnswers(mist(), DATA) as [ReturnType<typeof firstAnswers>[number]];
  const [best] = recipe.proposals;
  const [soot] = best!.cups[0]!.amounts.filter(({ material }) => material === 'soot');
  expect(soot).toMatchObject({ cut: { id: 'soot-cut' }, tool: 'drops', text: expect.stringMatching(/^\d+ drops?$/) });
  // The grams are those of the bottle: 0.05 ml a drop, a tenth of it at 1.2 g/ml.
  expect(soot!.grams).toBeCloseTo(Number.parseInt(soot!.text, 10) * 0.05 * 0.1 * 1.2, 9);
  expect(best!.cups[0]!.amounts.some(({ material }) => material === 'soot-cut')).toBe(false);
  const straight = compileBook(BOOK.filter(({ path }) => !path.includes('soot-cut')));
  const without = firstAnswers(mist(), taughtBook(straight.book!))[0]!.recipe.proposals;
  expect(best!.deltaE).toBeLessThan(Math.min(...without.map(({ deltaE }) => deltaE)));
});

test('a recipe with a cut is logged, taken from the shelf and written by the cut, and holds its two parts', () => {
  const work = begun();
  const [step] = work.cups[0]!.steps;
  const logged = step?.do === 'add' ? step.amounts.find(({ material }) => material === 'soot-cut') : undefined;
  const drops = Number.parseInt(logged!.dose, 10);
  expect(logged!.grams).toBeCloseTo(drops * CUT.gramsPerDrop!, 9);
  const { cup } = cupNow(work, 0, logShelf(DATA));
  expect(cup.materials).toMatchObject({
    soot: expect.closeTo(drops * 0.005 * 1.2, 9),
    softener: expect.closeTo(drops * 0.045 * 0.9, 9),
  });
  expect(Object.keys(cup.materials)).not.toContain('soot-cut');
  expect(stockOf(mist(), 'soot') - stockOf(work, 'soot')).toBeCloseTo(cup.materials.soot!, 9);
  expect(stockOf(mist(), 'softener') - stockOf(work, 'softener')).toBeCloseTo(cup.materials.softener!, 9);
  expect(recipeFile(work, { made: '2026-03-14', taken: new Set() }).text).toContain(`soot-cut: ${logged!.dose}`);
  expect(settledWork(work, DATA)).toEqual({ work, says: '' });
});

test('the page says of a cup with a cut in it what `next` says of its file, and its recipe is a book without errors', () => {
  let work = withSteps(begun(), 0, { do: 'pour', ml: 12 }, { do: 'see', overWhite: '#c4c2bd', overBlack: '#464646' });
  for (let round = 0; round < 2; round++) {
    const { next } = adviceFor(work, 0, DATA);
    const { name, text: recipe } = recipeFile(work, { made: '2026-03-14', taken: new Set() });
    const compiled = compileBook([...BOOK, { path: `colours/${name}`, text: recipe }]);
    expect(compiled.diagnostics.filter(({ severity }) => severity === 'error')).toEqual([]);
    const made = compiled.book!.recipes[0]!;
    const command = nextAdditionFor(
      compiled.book!,
      made,
      made.cups[0]!,
      required(new Map(compiled.book!.targets.map((target) => [target.id, target])), 'mist'),
    );
    const { settings } = DATA;
    expect(nextAdditionText(next, settings)).toBe(nextAdditionText(command, settings));
    const { materials } = cupNow(work, 0, logShelf(DATA)).last;
    for (const { material, gramsPerMl } of made.cups[0]!.contents)
      expect(materials[material]).toBeCloseTo(
        gramsPerMl * Object.values(cupNow(work, 0, logShelf(DATA)).last.plastics)[0]!,
        9,
      );
    const [best] = next.proposals;
    if (!best) break;
    work = withSteps(
      work,
      0,
      ...stepsOf(best, DATA, false),
      { do: 'pour', ml: 12 },
      { do: 'see', overWhite: '#bcb9b4', overBlack: '#4a4a4a' },
    );
  }
});

test('the page says to mix the cut by its name, and to stir in nothing by itself that comes with it', () => {
  const work = begun();
  const shown = { data: DATA, materials: new Map(DATA.materials.map((material) => [material.id, material])) };
  const { cup } = cupNow(work, 0, logShelf(DATA));
  const drawn = mixView(work.cups[0]!, cup, 0, {}, work, shown).toString();
  expect(drawn).toContain('Soot Cut (1 in 10)');
  expect(drawn.slice(drawn.indexOf('Order of work'))).toContain('Soot');
  expect(drawn).not.toContain('Softener');
});

test('a new cup is not given the softener that a cut brought into this one', () => {
  const spoilt = withSteps(
    mist(),
    0,
    { do: 'add', amounts: [{ material: 'soot-cut', dose: '200 drops', grams: 200 * CUT.gramsPerDrop! }] },
    { do: 'add', amounts: [{ material: 'softener', dose: '20 drops', grams: 0.9 }] },
    { do: 'pour', ml: 12 },
    { do: 'see', overWhite: '#4a4a48', overBlack: '#2a2a2a' },
  );
  const fresh = adviceFor(spoilt, 0, DATA).next.startAgain!;
  const softener = fresh.cups[0]!.amounts.find(({ material }) => material === 'softener');
  // As strong as in the cup but for what the cut brought: 20 drops, and in as much plastic.
  expect(softener!.grams).toBeCloseTo(0.9, 1);
});

test('typedAmount takes a dose of a cut as of any other bottle', () => {
  const cut = required(dosedIn(DATA), 'soot-cut');
  expect(cut.title).toBe('Soot Cut (1 in 10)');
  expect(typedAmount('6 drops', cut, { ml: 100, grams: 105 })).toEqual({
    material: 'soot-cut',
    dose: '6 drops',
    grams: expect.closeTo(6 * CUT.gramsPerDrop!, 12),
  });
});

test('isMeasurable of a dose that whole drops do not come near is false', () => {
  const drop = { grams: 0.06, text: '1 drop', tool: 'drops', effort: 1 } as const;
  expect(isMeasurable(0.02, [drop], DATA.settings)).toBe(false);
  expect(isMeasurable(0.055, [drop], DATA.settings)).toBe(true);
});
