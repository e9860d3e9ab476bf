import { expect, test } from 'vitest';
import { adviceFor, firstAnswers } from '../../src/browser/match/ask.ts';
import { cupHeat } from '../../src/browser/match/cup-heat.ts';
import { logView } from '../../src/browser/match/log-view.ts';
import { mixView } from '../../src/browser/match/mix-view.ts';
import { withSteps } from '../../src/browser/match/work.ts';
import { withRecipe } from '../../src/browser/match/work-begun.ts';
import { compiled, leaf } from './match-book.ts';
import { taughtBook } from './taught-book.ts';

const DATA = taughtBook(
  compiled({
    path: 'shelf/plastics/supple.md',
    text: '---\ntitle: Supple\nhighest: 185 C\nworking: { from: 165 C, to: 177 C }\n---\n',
  }),
);
const shown = { data: DATA, materials: new Map(DATA.materials.map((material) => [material.id, material])) };
const work = withRecipe(leaf(), 0, firstAnswers(leaf(), DATA)[0]!.recipe.proposals[0]!, DATA);

test('cupHeat(cup) is how hot it may get, at what heat it is poured, and what has no limit on the shelf', () => {
  const words = cupHeat({ plastics: { supple: 120 }, materials: { peat: 0.1 } }, shown);
  expect(words).toEqual([
    'Never above 185 °C (Supple sets the limit).',
    'Pour at 165 to 177 °C.',
    'No maximum on file for Peat: ask the supplier.',
  ]);
});

test('what is to be mixed is filled into its mold as that is filled', () => {
  const { now } = adviceFor(work, 0, DATA);
  const filledBy = (method: 'injected' | 'poured'): string => {
    const data = { ...DATA, molds: DATA.molds.map((mold) => ({ ...mold, method })) };
    return mixView(work.cups[0]!, now.cup, 0, {}, work, { ...shown, data }).toString();
  };
  expect(filledBy('injected')).toContain('Shoot hot and quick');
  expect(filledBy('poured')).toContain('Fill the mold slowly');
});

test('what is to be mixed says first how hot it may get; once it is mixed, the cup does', () => {
  const { now } = adviceFor(work, 0, DATA);
  const mix = mixView(work.cups[0]!, now.cup, 0, {}, work, shown).toString();
  expect(mix).toMatch(
    /^<h3>Mix this<\/h3><p class="heat"><strong>Never above 185\s°C \(Supple sets the limit\)\.<\/strong> Pour at/,
  );
  expect(mix).toMatch(
    /<details class="match-order"><summary>Order of work<\/summary><ol[\s\S]*Stir in Peat[\s\S]*Wear goggles/,
  );
  expect(logView(work.cups[0]!.steps, now, shown).toString()).not.toContain('°C');
  const poured = withSteps(work, 0, { do: 'pour', ml: 14 });
  const log = logView(poured.cups[0]!.steps, adviceFor(poured, 0, DATA).now, shown).toString();
  expect(log).toContain('Max 185 °C (Supple).');
});
