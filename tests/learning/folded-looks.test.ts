import { describe, expect, test } from 'vitest';
import { fitTheta } from '../../src/learning/fit-theta.ts';
import { foldedProblem } from '../../src/learning/folded-looks.ts';
import { learn } from '../../src/learning/learn.ts';
import type { LearningData } from '../../src/learning/learning-data.ts';
import { withModelMetrics } from '../../src/learning/model-metrics.ts';
import { ShelfEquations } from '../../src/learning/normal-equations.ts';
import { Posterior } from '../../src/learning/posterior.ts';
import { shelfProblem } from '../../src/learning/shelf-problem.ts';
import { simulatedBook } from './simulated-book.ts';

const { data } = simulatedBook({ seed: 3, materials: 6, recipes: 240, rounds: 3 });

describe('a book of more than 600 looks', () => {
  test('is fitted to whole cups of 600 of them in full, those of rare materials among them', () => {
    const rare: LearningData = {
      materials: data.materials,
      looks: data.looks.filter(({ layers, cup }) => cup > 'r0230' || layers[0]!.contents.every(([id]) => id !== 'm03')),
    };
    const problem = shelfProblem({ ...rare, looks: [...rare.looks, ...doubled(rare)] });
    const { full, folded } = foldedProblem(problem);
    const looksOf = (part: typeof full): number => part.cups.reduce((sum, { looks }) => sum + looks.length, 0);
    expect(looksOf(full)).toBeLessThanOrEqual(600);
    expect(looksOf(full)).toBeGreaterThan(590);
    expect(looksOf(full) + looksOf(folded)).toBe(problem.data.looks.length);
    expect(folded.labels).toEqual([]);
    const shuffled = foldedProblem(shelfProblem({ ...rare, looks: [...doubled(rare), ...rare.looks].reverse() }));
    expect(shuffled.full.cups.map(({ cup }) => cup)).toEqual(full.cups.map(({ cup }) => cup));
    for (const { looks } of folded.cups)
      for (const { layers } of looks) for (const [id] of layers[0]!.contents) expect(id).not.toBe('m03');
  });

  test('learns what it would from all of them in full', () => {
    const learned = learn(data);
    const problem = shelfProblem(data);
    const { weights } = new Posterior(learned);
    const theta = Float64Array.from(learned.theta);
    const exact = fitTheta(new ShelfEquations(withModelMetrics(problem, theta), weights), theta);
    for (const [i, value] of exact.entries()) expect(Math.abs(value - learned.theta[i]!)).toBeLessThan(0.05);
  });

  test('does not believe a false look that is folded in', () => {
    const { folded } = foldedProblem(shelfProblem(data));
    const look = folded.cups[0]!.looks[1]!;
    const other = data.looks.find(({ overWhite }) => Math.abs(overWhite!.L - look.overWhite!.L) > 25)!;
    const falsified = { ...look, overWhite: other.overWhite!, overBlack: other.overBlack! };
    const { weights, data: sorted } = learn({
      ...data,
      looks: data.looks.map((each) => (each.key === look.key ? falsified : each)),
    });
    expect(weights.looks[sorted.looks.findIndex(({ key }) => key === look.key)]).toBeLessThan(0.05);
    expect(weights.looks.filter((weight) => weight < 0.5).length).toBeLessThan(0.03 * weights.looks.length);
  });
});

/** The same looks once more, of other cups. */
function doubled({ looks }: LearningData): LearningData['looks'] {
  return looks
    .filter(({ layers }) => layers[0]!.contents.every(([id]) => id !== 'm03'))
    .map((look) => ({ ...look, key: `again ${look.key}`, cup: `again ${look.cup}` }));
}
