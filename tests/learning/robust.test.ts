import { describe, expect, test } from 'vitest';
import { fitTheta } from '../../src/learning/fit-theta.ts';
import { groupTests, lookTests } from '../../src/learning/group-tests.ts';
import { learn } from '../../src/learning/learn.ts';
import type { LearningData, TaughtLook } from '../../src/learning/learning-data.ts';
import { ShelfEquations } from '../../src/learning/normal-equations.ts';
import { Posterior } from '../../src/learning/posterior.ts';
import { shelfProblem } from '../../src/learning/shelf-problem.ts';
import { solveLinear } from '../../src/optics/linear-system.ts';
import { appliedMetric, localMetric } from '../../src/optics/local-metric.ts';
import { simulatedBook } from './simulated-book.ts';

const { data } = simulatedBook({ seed: 1, materials: 9, recipes: 16, rounds: 3 });

/** The same book with something false of a look. */
function withFalse(falsified: (look: TaughtLook) => TaughtLook | undefined): LearningData {
  return { ...data, looks: data.looks.map((look) => falsified(look) ?? look) };
}

/** A log in which another bottle was taken, from a round of a cup on. */
function swapped(from: string, cup: string, round: number): (look: TaughtLook) => TaughtLook | undefined {
  return (look) => {
    if (look.cup !== cup || look.round < round) return undefined;
    const layers = look.layers.map((layer) => {
      const there = new Set(layer.contents.map(([id]) => id));
      const other = data.materials.find(({ id, prior }) => prior.kind === 'pigment' && !there.has(id))!.id;
      const contents = layer.contents.map(([id, dose]) => [id === from ? other : id, dose] as const);
      return { ...layer, contents };
    });
    return { ...look, layers };
  };
}

describe('what is left out', () => {
  test('is tested as a fit without it would test it', () => {
    // One look a cup, so that nothing of its own cup is left.
    const looks = data.looks.filter(({ round }) => round === 1);
    const some = { ...data, looks };
    const problem = shelfProblem(some);
    const theta = fitTheta(new ShelfEquations(problem), new Float64Array(problem.unknowns.count));
    const tests = new Map(
      groupTests(problem, theta, new Map()).flatMap((each) => (each.kind === 'look' ? [[each.key, each]] : [])),
    );
    for (const look of looks.slice(0, 5)) {
      const rest = { ...some, looks: looks.filter((other) => other !== look) };
      const there = shelfProblem(rest);
      const without = fitTheta(new ShelfEquations(there), theta);
      const weights = { looks: rest.looks.map(() => 1), looksAlone: rest.looks.map(() => 1), cups: {}, labels: {} };
      const { optics, constants } = learn(rest);
      const posterior = new Posterior({ data: rest, theta: Array.from(without), weights, optics, constants });
      const item = problem.cups.find(({ cup }) => cup === look.cup)!.items[0]!;
      const { white, black } = posterior.looker.views(item.composition, posterior.state, { white: true, black: true });
      const off: number[] = [];
      const J: Float64Array[] = [];
      for (const [seen, view] of [
        [look.overWhite!, white!],
        [look.overBlack!, black!],
      ] as const) {
        const M = localMetric(seen);
        off.push(...appliedMetric(M, seen.L - view.lab.L, seen.a - view.lab.a, seen.b - view.lab.b));
        const count = item.composition.columns.length;
        const column = (c: number): readonly number[] =>
          appliedMetric(M, view.slopes[c]!, view.slopes[count + c]!, view.slopes[2 * count + c]!);
        for (let axis = 0; axis < 3; axis++) {
          const row = new Float64Array(without.length);
          for (const [c, place] of item.composition.columns.entries()) row[place] = column(c)[axis]!;
          J.push(row);
        }
      }
      const n = without.length;
      const C = J.flatMap((one, i) =>
        J.map((other, j) => {
          let sum = i === j ? 0.65 ** 2 + 0.35 ** 2 + look.axisSd ** 2 : 0;
          for (let a = 0; a < n; a++)
            if (one[a] !== 0) for (let b = 0; b < n; b++) sum += one[a]! * other[b]! * posterior.covariance[a * n + b]!;
          return sum;
        }),
      );
      const x = Float64Array.from(off);
      expect(solveLinear(Float64Array.from(C), x)).toBe(true);
      const chi2 = off.reduce((sum, value, i) => sum + value * x[i]!, 0);
      const found = tests.get(look.key)!;
      expect(found.dof).toBe(6);
      // Colours are no straight lines in theta; but nearly.
      expect(Math.abs(found.chi2 / chi2 - 1)).toBeLessThan(0.35);
    }
  });
});

describe('belief in what is noted', () => {
  test('is whole in a book without faults, but for a few', () => {
    const { weights } = learn(data);
    const all = [...weights.looks, ...Object.values(weights.labels).flat()];
    expect(all.filter((weight) => weight < 0.5).length).toBeLessThan(0.05 * all.length);
  });

  test('is lost by a cup with a swapped bottle from then on, and by no other', () => {
    const cup = data.looks[12]!.cup;
    const [first] = data.looks.find((look) => look.cup === cup)!.layers[0]!.contents.map(([id]) => id);
    const learned = learn(withFalse(swapped(first!, cup, 0)));
    const clean = learn(data);
    const kept = (from: typeof learned, inCup: boolean): readonly number[] =>
      from.weights.looks.filter((_, i) => (from.data.looks[i]!.cup === cup) === inCup);
    expect(Math.max(...kept(learned, true))).toBeLessThan(0.1);
    expect(kept(learned, false).filter((weight) => weight < 0.5).length).toBeLessThanOrEqual(
      kept(clean, false).filter((weight) => weight < 0.5).length + 1,
    );
    const found = lookTests(learned).filter(({ kind, p }) => kind === 'cup' && p < 1e-6);
    expect(found.map((each) => each.kind === 'cup' && each.cup)).toContain(cup);
    // What is learned is what it would be without the cup.
    const apart = learned.theta.map((value, i) => Math.abs(value - clean.theta[i]!));
    expect(apart.reduce((sum, value) => sum + value, 0) / apart.length).toBeLessThan(0.25);
  });

  test('is lost by one look of another cup, not by its neighbours', () => {
    const false_ = data.looks[13]!;
    const { overWhite, overBlack } = data.looks[40]!;
    const learned = learn(
      withFalse((look) => (look === false_ ? { ...look, overWhite: overWhite!, overBlack: overBlack! } : undefined)),
    );
    const weightOf = (key: string): number =>
      learned.weights.looks[learned.data.looks.findIndex((look) => look.key === key)]!;
    expect(weightOf(false_.key)).toBeLessThan(0.02);
    expect(weightOf(data.looks[12]!.key)).toBeGreaterThan(0.5);
    expect(weightOf(data.looks[14]!.key)).toBeGreaterThan(0.5);
  });

  test('is never lost by a look that was checked', () => {
    const false_ = data.looks[13]!;
    const { overWhite, overBlack } = data.looks[40]!;
    const learned = learn(
      withFalse((look) =>
        look === false_ ? { ...look, overWhite: overWhite!, overBlack: overBlack!, checked: true } : undefined,
      ),
    );
    expect(learned.weights.looks[learned.data.looks.findIndex(({ key }) => key === false_.key)]).toBe(1);
    expect(learned.weights.cups[false_.cup]?.[0]).toBeUndefined();
  });

  test('is lost by the label of another material', () => {
    const used = data.materials.find(
      ({ id, labels }) =>
        labels.length > 0 &&
        data.looks.filter(({ layers }) => layers[0]!.contents.some(([each]) => each === id)).length > 8,
    )!;
    const label = { ...used.labels[0]!, overWhite: { L: 60, a: -40, b: 50 } };
    const materials = data.materials.map((material) => (material === used ? { ...used, labels: [label] } : material));
    const learned = learn({ ...data, materials });
    expect(learned.weights.labels[used.id]![0]).toBeLessThan(0.2);
  });

  test('is the same from any order', () => {
    const faulty = withFalse((look) =>
      look === data.looks[13] ? { ...look, overWhite: data.looks[40]!.overWhite! } : undefined,
    );
    const learned = learn(faulty);
    expect(learn({ materials: faulty.materials, looks: [...faulty.looks].reverse() })).toEqual(learned);
  });
});
