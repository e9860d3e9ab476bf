import { describe, expect, test } from 'vitest';
import { Belief } from '../../src/learning/belief.ts';
import { beliefParts } from '../../src/learning/belief-parts.ts';
import { factorizeDense, solveDense } from '../../src/learning/dense-cholesky.ts';
import { learn } from '../../src/learning/learn.ts';
import type { LearningData } from '../../src/learning/learning-data.ts';
import { sharedVariance } from '../../src/learning/look-covariance.ts';
import { Posterior } from '../../src/learning/posterior.ts';
import { likelihood } from '../../src/learning/predicted-looks.ts';
import { withoutCup } from '../../src/learning/without-cup.ts';
import { appliedMetric, localMetric } from '../../src/optics/local-metric.ts';
import { expectClose } from '../optics/close.ts';
import { simulatedBook } from './simulated-book.ts';

const BOOK = simulatedBook({ seed: 11, materials: 7, recipes: 7, rounds: 2 });
const SHELF = learn(BOOK.data);
const BELIEF = new Belief(SHELF);

describe('without a cup', () => {
  const cup = 'r0002/cup';

  test('theta and its doubt are those of the others, the model being linear', () => {
    const posterior = new Posterior(SHELF);
    const { problem, state, weights } = posterior;
    const n = state.theta.length;
    const block = problem.cups.find((each) => each.cup === cup)!;
    const { residuals, slopes } = posterior.residuals(block);
    // H without the cup: JᵀC⁻¹J is taken away.
    const covariance = block.covariance(block.places.map((place) => weights.looks[place]!));
    factorizeDense(covariance, block.views.length);
    const H = new Float64Array(n * n);
    for (let i = 0; i < n; i++)
      for (let j = 0; j < n; j++)
        for (let k = 0; k <= Math.min(i, j); k++)
          H[i * n + j]! += posterior.factor[i * n + k]! * posterior.factor[j * n + k]!;
    const pull = new Float64Array(n);
    const count = block.columns.length;
    for (let axis = 0; axis < 3; axis++) {
      const solved = (of: (row: number) => number): Float64Array => {
        const b = Float64Array.from(block.views, (_, view) => of(3 * view + axis));
        solveDense(covariance, block.views.length, b);
        return b;
      };
      const r = solved((row) => residuals[row]!);
      for (const [i, one] of block.columns.entries()) {
        const J = solved((row) => slopes[row * count + i]!);
        for (const view of block.views.keys()) {
          pull[one]! += slopes[(3 * view + axis) * count + i]! * r[view]!;
          for (const [j, other] of block.columns.entries())
            H[one * n + other]! -= J[view]! * slopes[(3 * view + axis) * count + j]!;
        }
      }
    }
    const parts = withoutCup(beliefParts(SHELF), cup, (one, other) => sharedVariance(one.errors, other.errors));
    const { inverse } = parts.doubt();
    for (let i = 0; i < n; i++) {
      let pulled = pull[i]!;
      for (let j = 0; j < n; j++) {
        pulled += H[i * n + j]! * (parts.state.theta[j]! - state.theta[j]!);
        let unit = 0;
        for (let k = 0; k < n; k++) unit += H[i * n + k]! * inverse[k * n + j]!;
        expectClose(unit, i === j ? 1 : 0, 1e-6, `H H⁻¹ ${i} ${j}`);
      }
      expectClose(pulled, 0, 1e-6, `gradient ${i}`);
    }
  });

  test('is nearly what is learned without it, where enough is known for the model to be nearly linear', () => {
    const shelf = learn(simulatedBook({ seed: 13, materials: 6, recipes: 18, rounds: 2 }).data);
    const left: LearningData = { ...shelf.data, looks: shelf.data.looks.filter((look) => look.cup !== cup) };
    const [all, without, anew] = [new Belief(shelf), new Belief(shelf).without(cup), new Belief(learn(left))];
    let [off, moved, count] = [0, 0, 0];
    for (const { layers } of shelf.data.looks.filter((look) => look.cup === cup)) {
      const right = anew.of({ layers });
      const M = localMetric(right.overWhite);
      const apart = (belief: Belief): readonly number[] => {
        const { L, a, b } = belief.mean({ layers }).overWhite;
        return appliedMetric(M, L - right.overWhite.L, a - right.overWhite.a, b - right.overWhite.b);
      };
      for (let axis = 0; axis < 3; axis++) {
        off += apart(without)[axis]! ** 2 / right.covariance[7 * axis]!;
        moved += apart(all)[axis]! ** 2 / right.covariance[7 * axis]!;
        count++;
      }
    }
    expect(Math.sqrt(off / count)).toBeLessThan(0.2);
    expect(Math.sqrt(moved / count)).toBeGreaterThan(0.3);
  });

  test('a cup that was never looked at changes nothing', () => {
    const { layers } = SHELF.data.looks[0]!;
    expect(BELIEF.without('no such cup').of({ layers })).toEqual(BELIEF.of({ layers }));
  });
});

describe('predicted', () => {
  const cup = 'r0003/cup';
  const looks = SHELF.data.looks.filter((look) => look.cup === cup);

  test('one look is what is believed of its cup, and the look itself', () => {
    const look = { ...looks[0]!, axisSd: 0.5 };
    const without = BELIEF.without(cup);
    const { residuals, covariance } = without.predicted([look]);
    const believed = without.of({ layers: look.layers, cup });
    // Asked in the metric of what was seen, of which lightness is an axis by itself in both.
    const times = localMetric(look.overWhite!)[0]! / localMetric(believed.overWhite)[0]!;
    const variance = (believed.covariance[0]! - 0.65 ** 2 - 0.35 ** 2) * times ** 2 + 0.65 ** 2 + 0.35 ** 2 + 0.25;
    expectClose(covariance[0]!, variance, 0.05 * variance);
    expectClose(residuals[0]!, localMetric(look.overWhite!)[0]! * (look.overWhite!.L - believed.overWhite.L), 0.1);
  });

  test('what was logged is likelier than four times as much of a material', () => {
    const without = BELIEF.without(cup);
    const wrong = looks.map((look) => ({
      ...look,
      layers: look.layers.map((each) => ({
        ...each,
        contents: each.contents.map(([id, dose], i) => [id, i === 0 ? 4 * dose : dose] as const),
      })),
    }));
    const [right, other] = [looks, wrong].map((log) => likelihood(without.predicted(log)));
    expect(right!.logDensity).toBeGreaterThan(other!.logDensity);
    expect(right!.chiSquare).toBeLessThan(30);
  });

  test('a likelihood is the Gaussian density', () => {
    // Two numbers of variance 1 and 4, correlated by 0.5.
    const { chiSquare, logDensity } = likelihood({
      residuals: Float64Array.of(1, -2),
      covariance: Float64Array.of(1, 1, 1, 4),
    });
    const square = (4 * 1 + 2 * 2 + 4) / 3;
    expectClose(chiSquare, square, 1e-12);
    expectClose(logDensity, -square / 2 - Math.log(2 * Math.PI * Math.sqrt(3)), 1e-12);
  });
});
