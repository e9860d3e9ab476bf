import { expect, test } from 'vitest';
import { Belief } from '../../src/learning/belief.ts';
import { learn } from '../../src/learning/learn.ts';
import { Posterior } from '../../src/learning/posterior.ts';
import { localMetric } from '../../src/optics/local-metric.ts';
import { expectClose } from '../optics/close.ts';
import { simulatedBook } from './simulated-book.ts';

const { data } = simulatedBook({ seed: 5, materials: 6, recipes: 8, rounds: 2 });
const SHELF = learn(data);
const BELIEF = new Belief(SHELF);
const asked = {
  layers: [{ plastics: [['plastic', 1]], contents: [['m01', 0.0085]], thicknessMm: 6 }],
} as const;
const ALL = (): boolean => true;

/** H⁻¹ of looks with these weights, by labels alone where there are none. */
function inverseOf(weights: readonly number[]): Float64Array {
  const posterior = new Posterior({ ...SHELF, weights: { ...SHELF.weights, looks: weights } });
  return posterior.covariance;
}

test('the shares of all cups are together what looks have taken of the doubt', () => {
  const { state } = new Posterior(SHELF);
  const n = state.theta.length;
  // Slopes by moving theta a little, and not by the formulas of the program.
  const views = (theta: readonly number[]) => {
    const { overWhite, overBlack } = new Belief({
      ...SHELF,
      theta,
      data: { ...SHELF.data, looks: [] },
      weights: { ...SHELF.weights, looks: [], looksAlone: [] },
    }).mean(asked);
    return [overWhite, overBlack] as const;
  };
  const metrics = views(SHELF.theta).map(localMetric);
  const A = Array.from({ length: 6 }, () => new Float64Array(n));
  const step = 1e-4;
  for (let i = 0; i < n; i++) {
    const [up, down] = [step, -step].map((by) => views(SHELF.theta.map((value, j) => (j === i ? value + by : value))));
    for (const side of [0, 1] as const) {
      const M = metrics[side]!;
      const d = (['L', 'a', 'b'] as const).map((axis) => (up![side][axis] - down![side][axis]) / (2 * step));
      for (let row = 0; row < 3; row++)
        A[3 * side + row]![i] = M[3 * row]! * d[0]! + M[3 * row + 1]! * d[1]! + M[3 * row + 2]! * d[2]!;
    }
  }
  const doubt = (inverse: Float64Array): number =>
    A.reduce((sum, row) => {
      for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) sum += row[i]! * inverse[i * n + j]! * row[j]!;
      return sum;
    }, 0);
  const before = doubt(inverseOf(SHELF.weights.looks.map(() => 1e-9)));
  const after = doubt(inverseOf(SHELF.weights.looks));
  const shares = BELIEF.taughtBy(asked, ALL);
  expect(shares).toHaveLength(8);
  expect(after / before).toBeLessThan(0.7);
  expectClose(
    shares.reduce((sum, { share }) => sum + share, 0),
    1 - after / before,
    1e-4,
    'sum',
  );
});

test('a cup without the material tells little of it, the others in the order of what they tell', () => {
  const holds = new Set(
    data.looks.flatMap(({ cup, layers }) =>
      layers.some(({ contents }) => contents.some(([id]) => id === 'm01')) ? [cup] : [],
    ),
  );
  const shares = BELIEF.taughtBy(asked, ALL);
  expect(shares.map(({ share }) => share)).toEqual(shares.map(({ share }) => share).toSorted((x, y) => y - x));
  const sum = (isHolding: boolean): number =>
    shares.filter(({ cup }) => holds.has(cup) === isHolding).reduce((all, { share }) => all + share, 0);
  expect(sum(true)).toBeGreaterThan(3 * sum(false));
  expect(BELIEF.taughtBy(asked, (cup) => holds.has(cup))).toEqual(shares.filter(({ cup }) => holds.has(cup)));
});

test('two cups that are as alike as can be have told as much, and both together more than one of them', () => {
  const [first] = data.looks;
  const twin = (cup: string) => ({ ...first!, key: `${cup}/1/1`, cup });
  const of = (...cups: string[]) => {
    const looks = cups.map(twin);
    const materials = data.materials;
    const [id, dose] = first!.layers[0]!.contents[0]!;
    const alone = { layers: [{ plastics: [['plastic', 1]], contents: [[id, dose]], thicknessMm: 6 }] } as const;
    return new Belief(learn({ materials, looks })).taughtBy(alone, ALL);
  };
  const [one] = of('a/cup');
  const both = of('a/cup', 'b/cup');
  expectClose(both[0]!.share, both[1]!.share, 1e-9, 'alike');
  expect(both[0]!.share + both[1]!.share).toBeGreaterThan(one!.share);
  expect(both[0]!.share).toBeLessThan(one!.share);
});
