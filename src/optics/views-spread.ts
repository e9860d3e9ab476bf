/**
 * From many small doubts to one: how far a colour may be from its prediction, and to which sides.
 */
import type { Lab } from './cielab.ts';
import type { DoubtfulWay } from './constants-doubt.ts';
import type { TwoViews } from './cup-body.ts';
import { appliedMetric, localMetric } from './local-metric.ts';
import { type ColourSpread, colourSpread } from './spread-of-colour.ts';

type Vector = readonly [number, number, number];

/**
 * Spread of a colour about its prediction, in the view (over white or over black) where it is larger. The doubts are
 * independent, and small enough for their squares to add.
 *
 * @param moved the colour with one thing otherwise by a standard deviation, for each thing
 */
export function viewsSpread(predicted: TwoViews, moved: readonly DoubtfulWay<TwoViews>[]): ColourSpread {
  const [white, black] = (['overWhite', 'overBlack'] as const).map((view) =>
    colourSpread(
      covariance(
        stepsFrom(
          predicted[view],
          moved.map(({ up, down }) => ({ up: up[view], down: down[view] })),
        ).inMetric,
      ),
    ),
  );
  return white!.bound90 >= black!.bound90 ? white! : black!;
}

/**
 * The sides to which a colour is spread, widest first: for each of `count` axes the two colours between which nine in ten lie
 * along it.
 *
 * Shape: Lab; an axis along which nothing moves gives the prediction twice.
 */
export function spreadAxes(predicted: Lab, moved: readonly DoubtfulWay<Lab>[], count: number): [Lab, Lab][] {
  const { inLab, inMetric } = stepsFrom(predicted, moved);
  let C = covariance(inMetric);
  return Array.from({ length: count }, () => {
    const { axis, variance } = widestAxis(C);
    C = C.map((value, i) => value - variance * axis[Math.floor(i / 3)]! * axis[i % 3]!);
    // Of all the steps, what goes along the axis: the mean colour of those who are one deviation along it.
    const along = [0, 1, 2].map((i) => {
      let sum = 0;
      for (const [n, step] of inLab.entries()) sum += step[i]! * dot(axis, inMetric[n]!);
      return variance > 1e-12 ? (NORMAL_95 * sum) / Math.sqrt(variance) : 0;
    });
    const at = (sign: number): Lab => ({
      L: predicted.L + sign * along[0]!,
      a: predicted.a + sign * along[1]!,
      b: predicted.b + sign * along[2]!,
    });
    return along[0]! > 0 ? [at(-1), at(1)] : [at(1), at(-1)];
  });
}

/** Standard normal quantile of 0.95: nine in ten lie within it on both sides. */
const NORMAL_95 = 1.6448536269514722;

/** Power steps until the widest axis stands: even two axes as 9 to 10 are told apart to a thousandth. */
const POWER_STEPS = 60;

function stepsFrom(predicted: Lab, moved: readonly DoubtfulWay<Lab>[]): { inLab: Vector[]; inMetric: Vector[] } {
  const M = localMetric(predicted);
  const inLab = moved.map(({ up, down }): Vector => [(up.L - down.L) / 2, (up.a - down.a) / 2, (up.b - down.b) / 2]);
  return { inLab, inMetric: inLab.map((step) => appliedMetric(M, ...step)) };
}

/** Row by row. */
function covariance(steps: readonly Vector[]): Float64Array {
  const C = new Float64Array(9);
  for (const step of steps) for (let i = 0; i < 9; i++) C[i]! += step[Math.floor(i / 3)]! * step[i % 3]!;
  return C;
}

function widestAxis(C: Float64Array): { axis: Vector; variance: number } {
  let axis: Vector = [0.8, 0.5, 0.33];
  let variance = 0;
  for (let step = 0; step < POWER_STEPS; step++) {
    const next: Vector = [
      dot([C[0]!, C[1]!, C[2]!], axis),
      dot([C[3]!, C[4]!, C[5]!], axis),
      dot([C[6]!, C[7]!, C[8]!], axis),
    ];
    variance = Math.hypot(...next);
    if (variance < 1e-12) return { axis, variance: 0 };
    axis = [next[0] / variance, next[1] / variance, next[2] / variance];
  }
  return { axis, variance };
}

function dot(one: Vector, other: Vector): number {
  return one[0] * other[0] + one[1] * other[1] + one[2] * other[2];
}
