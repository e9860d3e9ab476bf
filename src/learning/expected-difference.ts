/**
 * From what is believed of a colour to numbers for people: the difference to expect from a target, the one that nine in ten stay within,
 * and how likely it is to be within a tolerance.
 *
 * CIEDE2000 itself is asked at draws from the belief, since a difference is not normal, its largest view least of all.
 *
 * @packageDocumentation
 */
import type { Lab } from '../optics/cielab.ts';
import { deltaE00 } from '../optics/delta-e00.ts';
import { inverseMetric, localMetric } from '../optics/local-metric.ts';
import type { LookMeans } from '../optics/look-doubt.ts';
import type { BelievedViews } from './believed-views.ts';
import { DRAW_AXES, DRAW_COUNT, NORMAL_DRAWS } from './normal-draws.ts';
import { semidefiniteFactor } from './semidefinite-factor.ts';
import { VIEWS_ALIKE } from './views-alike.ts';

/** A colour to be met, as well as it is known. */
export interface DoubtfulTarget {
  readonly overWhite: Lab;
  /** Unset: only what is seen over white counts. */
  readonly overBlack?: Lab;
  /** ΔE00, one standard deviation along each of three axes; unset: it is what it is. */
  readonly axisSd?: number;
  /** How it was seen: both views of a photo err together; unset: each by itself. */
  readonly means?: LookMeans;
}

/** A difference that is not known, ΔE00: the larger of the views. */
export interface UncertainDifference {
  /** Its mean. */
  readonly expected: number;
  /** Not exceeded nine times in ten. */
  readonly bound90: number;
  /** Probability, 0 to 1, that it is at most so much. */
  within(tolerance: number): number;
}

/**
 * The difference of a believed colour from a target: expected, bounded, and how likely it is within a tolerance.
 *
 * Deterministic: `DRAW_COUNT` fixed draws. What is unknown of the target counts as what is unknown of the colour.
 */
export function expectedDifference(believed: BelievedViews, target: DoubtfulTarget): UncertainDifference {
  const { overWhite, overBlack } = target;
  const axes = overBlack ? DRAW_AXES : 3;
  const factor = semidefiniteFactor(labCovariance(believed, target, axes), axes);
  const differences = new Float64Array(DRAW_COUNT);
  for (let draw = 0; draw < DRAW_COUNT; draw++) {
    let worst = deltaE00(drawn(believed.overWhite, factor, axes, 0, draw), overWhite);
    if (overBlack) worst = Math.max(worst, deltaE00(drawn(believed.overBlack, factor, axes, 3, draw), overBlack));
    differences[draw] = worst;
  }
  return uncertain(differences.sort());
}

/** How far the true colour may be from the believed one, in the view where it is farther. */
export function colourDoubt(believed: BelievedViews): UncertainDifference {
  return expectedDifference(believed, believed);
}

/** Covariance of believed less target in Lab, `axes` × `axes`. */
function labCovariance(believed: BelievedViews, target: DoubtfulTarget, axes: number): Float64Array {
  const { overWhite, overBlack, axisSd = 0, means = 'instrument' } = target;
  const covariance = new Float64Array(axes * axes);
  const back = [localBack(believed.overWhite), ...(overBlack ? [localBack(believed.overBlack)] : [])];
  const ofTarget = axisSd > 0 ? [localBack(overWhite), ...(overBlack ? [localBack(overBlack)] : [])] : [];
  for (let one = 0; one < back.length; one++) {
    for (let other = 0; other < back.length; other++) {
      addBlock(covariance, axes, one, other, back, (i, j) => believed.covariance[(3 * one + i) * 6 + 3 * other + j]!);
      const shared = axisSd * axisSd * (one === other ? 1 : VIEWS_ALIKE[means]);
      if (ofTarget.length > 0 && shared > 0)
        addBlock(covariance, axes, one, other, ofTarget, (i, j) => (i === j ? shared : 0));
    }
  }
  return covariance;
}

const localBack = (lab: Lab): Float64Array => inverseMetric(localMetric(lab));

/** Adds B C Bᵀ, of one view with one view, where B leads from the metric of a colour to Lab. */
function addBlock(
  sum: Float64Array,
  axes: number,
  one: number,
  other: number,
  back: readonly Float64Array[],
  C: (i: number, j: number) => number,
): void {
  const [left, right] = [back[one]!, back[other]!];
  // Both are upper triangular.
  for (let row = 0; row < 3; row++) {
    for (let column = 0; column < 3; column++) {
      let added = 0;
      for (let i = row; i < 3; i++)
        for (let j = column; j < 3; j++) added += left[3 * row + i]! * C(i, j) * right[3 * column + j]!;
      sum[(3 * one + row) * axes + 3 * other + column]! += added;
    }
  }
}

function drawn(mean: Lab, factor: Float64Array, axes: number, from: number, draw: number): Lab {
  const at = draw * DRAW_AXES;
  const step = (row: number): number => {
    let sum = 0;
    for (let k = 0; k <= row; k++) sum += factor[row * axes + k]! * NORMAL_DRAWS[at + k]!;
    return sum;
  };
  return { L: mean.L + step(from), a: mean.a + step(from + 1), b: mean.b + step(from + 2) };
}

/** @param sorted one difference a draw, the least first; each stands for its part of all, and has half of it on either side (Hazen). */
function uncertain(sorted: Float64Array): UncertainDifference {
  const count = sorted.length;
  const mean = sorted.reduce((sum, difference) => sum + difference, 0) / count;
  const place = 0.9 * count - 0.5;
  const below = Math.floor(place);
  return {
    expected: mean,
    bound90: sorted[below]! + (place - below) * (sorted[below + 1]! - sorted[below]!),
    within(tolerance) {
      let within = 0;
      while (within < count && sorted[within]! <= tolerance) within++;
      if (within === 0 || within === count) return within / count;
      const [last, next] = [sorted[within - 1]!, sorted[within]!];
      return (within - 0.5 + (tolerance - last) / (next - last)) / count;
    },
  };
}
