import type { BelievedViews } from '../../learning/believed-views.ts';
import { deltaE00 } from '../../optics/delta-e00.ts';
import { appliedMetric, localMetric } from '../../optics/local-metric.ts';
import { lookDoubt } from '../../optics/look-doubt.ts';
import type { CupSeen } from '../next-addition-question.ts';
import type { WrongLog } from './wrong-log.ts';

/** The last look cannot be of the cup that the log has: it is so far from all that is believed of that, ΔE00. */
export interface Doubt {
  readonly kind: 'misfit';
  readonly deltaE: number;
  /** What may have happened, where the log cannot be right: see `logFaults`. */
  readonly wrong?: WrongLog;
}

/** An answer with what may have happened to the cup, where its look is doubted; it is asked for only then. */
export function withWrongLog<Answer extends { readonly doubt?: Doubt }>(
  answer: Answer,
  wrongLog: () => WrongLog | undefined,
): Answer {
  const wrong = answer.doubt && wrongLog();
  return wrong ? { ...answer, doubt: { ...answer.doubt, wrong } } : answer;
}

/** What a cup is off by as it was seen, and as it is believed to be by all looks, which all proposals are reckoned from, ΔE00. */
export interface SeenAndPredicted {
  readonly seen: number;
  readonly predicted: number;
}

/** Points of chi-square with three degrees of freedom: what one look in a million is above, and one in a hundred (from memory). */
const ONE_IN_A_MILLION = 30.7;
const ONE_IN_A_HUNDRED = 11.3;
const SURE = new Float64Array(36);

/**
 * Whether a look can be of the cup that is believed; one that was made again, and stands, can. A cup that was seen right is touched only
 * where its look is believed, and then what is believed of the cup is within the look's own doubt.
 */
export function misfitOf(
  seen: CupSeen | undefined,
  believed: BelievedViews,
  { isRight, tolerance }: { readonly isRight: boolean; readonly tolerance: number },
): Doubt | undefined {
  if (!seen || seen.checked) return undefined;
  const { axisSd = lookDoubt('instrument').axisSd } = seen;
  const views = (['overWhite', 'overBlack'] as const).flatMap((view, index) => {
    const [is, was] = [seen[view], believed[view]];
    if (!is) return [];
    const step = appliedMetric(localMetric(was), is.L - was.L, is.a - was.a, is.b - was.b);
    const covariance = isRight ? SURE : believed.covariance;
    return [{ deltaE: deltaE00(is, was), surprise: surpriseOf(step, covariance, 3 * index, axisSd) }];
  });
  const deltaE = Math.max(...views.map((view) => view.deltaE));
  const surprise = Math.max(...views.map((view) => view.surprise));
  const most = isRight ? ONE_IN_A_HUNDRED : ONE_IN_A_MILLION;
  return deltaE > tolerance && surprise > most ? { kind: 'misfit', deltaE } : undefined;
}

/** dᵀ (C + s² I)⁻¹ d of a step along three axes, C the block of a covariance from a place on: by Cramer's rule. */
function surpriseOf(step: readonly number[], covariance: Float64Array, from: number, sd: number): number {
  const at = (i: number, k: number): number => covariance[6 * (from + i) + from + k]! + (i === k ? sd * sd : 0);
  const [a, b, c, d, e, f] = [at(0, 0), at(0, 1), at(0, 2), at(1, 1), at(1, 2), at(2, 2)] as const;
  const [x, y, z] = step as readonly [number, number, number];
  const [A, B, C] = [d * f - e * e, c * e - b * f, b * e - c * d];
  const [D, E, F] = [a * f - c * c, b * c - a * e, a * d - b * b];
  const determinant = a * A + b * B + c * C;
  return (A * x * x + D * y * y + F * z * z + 2 * (B * x * y + C * x * z + E * y * z)) / determinant;
}

// As much as makes a reader ask which of two numbers is meant, ΔE00.
const WORTH_EXPLAINING = 0.5;

/** Two figures that a reader asks about; undefined where they are nearly one. */
export function differing(seen: number, predicted: number): SeenAndPredicted | undefined {
  return Math.abs(seen - predicted) >= WORTH_EXPLAINING ? { seen, predicted } : undefined;
}
