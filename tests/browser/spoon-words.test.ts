import { describe, expect, test } from 'vitest';
import { adviceFor, firstAnswers } from '../../src/browser/match/ask.ts';
import { fileDose } from '../../src/browser/match/dose-text.ts';
import { logView } from '../../src/browser/match/log-view.ts';
import { mixView } from '../../src/browser/match/mix-view.ts';
import { spoonWords } from '../../src/browser/match/spoon-words.ts';
import { withRecipe } from '../../src/browser/match/work-begun.ts';
import { DATA, leaf } from './match-book.ts';

describe('spoons at the bench', () => {
  const bench = DATA.settings;

  test.each([
    ['5/16 tsp', '1/4 tsp + 1 pinch'],
    ['3/32 tsp', '1 pinch + 1 smidgen'],
    ['5/32 tsp', '1/8 tsp + 1 smidgen'],
    ['1 1/2 tsp', '1 tsp + 1/2 tsp'],
    ['2 tsp', '2 × 1 tsp'],
    ['1/4 tsp', '1/4 tsp'],
  ])('spoonWords(%s) names spoons that there are', (dose, words) => {
    expect(spoonWords(dose, bench)).toBe(words);
  });

  test.each(['3 drops', '0.25 g', '1/5 tsp', '1 dash', '1 %'])(
    'spoonWords(%s) leaves what no spoons make as it is',
    (dose) => {
      expect(spoonWords(dose, bench)).toBe(dose);
    },
  );

  test('spoonWords(fileDose(a sum of the book’s own spoons)) is that sum', () => {
    const ivory = DATA.materials.find(({ id }) => id === 'ivory')!;
    const scoops = {
      ...bench,
      spoons: [
        { ml: 0.6, name: '1 scoop' },
        { ml: 0.15, name: '1 small scoop' },
      ],
    };
    const text = '1 scoop + 1 small scoop';
    const dose = fileDose({ grams: 0.75 * ivory.gramsPerMl, text }, ivory);
    expect(dose).toBe('0.75 ml');
    expect(spoonWords(dose, scoops)).toBe(text);
  });

  test('what is to be mixed, and the log, name the spoons that the proposal named', () => {
    const shown = { data: DATA, materials: new Map(DATA.materials.map((material) => [material.id, material])) };
    const { target: _, sides, ...rest } = leaf();
    const pale = sides.map((side) => ({ ...side, overWhite: '#c4a480', overBlack: '#8e7e64' }));
    const begun = { ...rest, sides: pale, without: ['soot'] };
    const [answer] = firstAnswers(begun, DATA);
    const proposal = answer!.recipe.proposals.find(({ cups }) =>
      cups[0]!.amounts.some(({ text }) => text.includes('+')),
    )!;
    const work = withRecipe(begun, 0, proposal, DATA);
    const [cup] = work.cups;
    const { now } = adviceFor(work, 0, DATA);
    const mix = mixView(cup!, now.cup, 0, {}, work, shown).toString();
    const log = logView(cup!.steps, now, shown).toString();
    for (const { text } of proposal.cups[0]!.amounts) {
      expect(mix).toContain(`<b>${text}</b>`);
      expect(log).toContain(text);
    }
  });
});
