import { join } from 'node:path';
import { expect, test } from 'vitest';
import { compileBook } from '../../src/book/compile-book.ts';
import { firstRecipeFor } from '../../src/book/match/ask-matching.ts';
import { adviceFor, firstAnswers } from '../../src/browser/match/ask.ts';
import { readWork } from '../../src/browser/match/read-work.ts';
import { isRoundFault, roundOf } from '../../src/browser/match/typed-round.ts';
import { type Work, withSides, withSteps } from '../../src/browser/match/work.ts';
import { newWork, stepsOf, withRecipe } from '../../src/browser/match/work-begun.ts';
import { recipeFile } from '../../src/browser/match/work-recipe.ts';
import { targetFile } from '../../src/browser/match/work-target.ts';
import { baseOfCup } from '../../src/matching/mix/cup-model.ts';
import { shelfByName } from '../../src/matching/shelf/match-material.ts';
import { bodyViews } from '../../src/optics/cup-body.ts';
import { hexFromLab } from '../../src/optics/display.ts';
import { USUAL_OPTICS } from '../../src/optics/optical-model.ts';
import type { TaughtMatchData } from '../../src/render/pages/match.ts';
import { readBook } from '../../src/shell/read-book.ts';
import { required } from '../../src/values/required.ts';
import { expectClose } from '../optics/close.ts';
import { ROOT } from '../run-cupbook.ts';
import { taughtBook } from './taught-book.ts';

/** The shelf and the molds of the demo book. */
const FILES = readBook(join(ROOT, 'recipes')).sources.filter(({ path }) => /^(?:book\.md$|molds\/|shelf\/)/.test(path));

/** What stands on the bench. */
const BENCH = ['sedge', 'lamp-black', 'chalk', 'peat', 'brass-pearl', 'blue-hush', 'violet-hush', 'flood-yellow'];

const BIG_BLACK = { hex: '#1d1c1b', sizeMm: 1.016, coverage: 0.1 };
/** A solid olive back with large black flake in it, and a belly that shows what lies behind it: cut apart. */
const SIDES = [
  { name: 'back', overWhite: '#3b4a2a', overBlack: '#384526', thicknessMm: 11, flakes: [BIG_BLACK] },
  { name: 'belly', overWhite: '#d9c7b0', overBlack: '#7a7068', thicknessMm: 11, flakes: [] },
];

test('a solid side with large flake and a see-through one go through match, and through Match to a log with heats that check takes', () => {
  const data = taughtBook(compileBook(FILES).book!);
  let work: Work = {
    ...withSides({ ...newWork(data), arrangement: 'apart', title: 'Smelt fry' }, SIDES),
    mold: 'minnow-3',
    plastic: 'supple',
    plasticMl: 120,
    tolerance: 2.5,
    without: data.materials.flatMap(({ id, kind }) =>
      kind === 'plastic' || kind === 'flake' || BENCH.includes(id) ? [] : [id],
    ),
  };
  const answers = firstAnswers(work, data);
  const flakes = answers.map(({ recipe }) => recipe.proposals[0]!.cups[0]!.flakes.map(({ material }) => material));
  expect(flakes).toEqual([['black-hex-040'], []]);
  for (const [index, { recipe }] of answers.entries()) work = withRecipe(work, index, recipe.proposals[0]!, data);

  // Each cup is poured and looked at, first as a chip in the hand and then as a bait, and mended once in between.
  for (const index of [0, 1]) {
    for (const chip of ['3', undefined]) {
      work = lookedAt(work, index, chip, data);
      const [proposal] = adviceFor(work, index, data).next.proposals;
      if (chip !== undefined && proposal) work = withSteps(work, index, ...stepsOf(proposal, data, false));
    }
  }
  expect(readWork(JSON.stringify(work))).toEqual(work);

  const target = targetFile(work, new Set(), data.settings)!;
  const id = target.name.replace(/\.md$/, '');
  const recipe = recipeFile(work, { made: '2026-03-14', taken: new Set(), target: id, unit: data.settings });
  const { book, diagnostics } = compileBook([
    ...FILES,
    { path: `targets/${target.name}`, text: target.text },
    { path: `colours/${recipe.name}`, text: recipe.text },
  ]);
  const told = diagnostics.filter(({ file }) => file.startsWith('targets/') || file.startsWith('colours/'));
  expect(told, recipe.text).toEqual([]);
  const [made] = book!.recipes;
  for (const { name, rounds, heats } of made!.cups) {
    expect(rounds.length).toBeGreaterThan(1);
    expect(rounds[0]!.seen[0]).toMatchObject({ thicknessMm: 3, after: '10 min' });
    expect(heats, name).toMatchObject({ heats: rounds.length });
  }
  // The book has made the looks, so a chip is as far off as its recipe, and the mended cup nearly right.
  for (const [index, { cup, rounds }] of made!.match!.cups.entries()) {
    expect(
      rounds.map(({ moved }) => moved),
      cup,
    ).toEqual(['thickness', undefined]);
    expectClose(rounds[0]!.verdict.deltaE, answers[index]!.recipe.proposals[0]!.deltaE, 2, cup);
    expect(rounds[1]!.verdict.deltaE, cup).toBeLessThan(4);
  }

  const command = firstRecipeFor(book!, required(book!.targets, id), { most: 3, plasticMl: 120 });
  expect(command.map(({ part, recipe: { advice } }) => [part, advice.kind])).toEqual([
    ['back', 'make'],
    ['belly', 'make'],
  ]);
});

/** A round with a pour and a look, of the colours that the book predicts. */
function lookedAt(work: Work, index: number, chip: string | undefined, data: TaughtMatchData): Work {
  const { now } = adviceFor(work, index, data);
  const shelf = shelfByName(data.materials);
  const { mix, flakes } = baseOfCup(now.cup, (name) => required(shelf, name), USUAL_OPTICS);
  const views = bodyViews({ ...mix, flakes }, chip === undefined ? 11 : Number(chip), USUAL_OPTICS);
  const round = roundOf(
    {
      pour: '20',
      overWhite: hexFromLab(views.overWhite).hex,
      overBlack: hexFromLab(views.overBlack).hex,
      note: '',
      heat: '168',
      again: chip === undefined ? '1' : '0',
      how: { ...(chip === undefined ? {} : { chip }), after: '10 min', wet: false },
    },
    now.volumeMl,
    data.settings,
  );
  if (isRoundFault(round)) throw new Error(round.fault);
  return withSteps(work, index, ...round);
}
