/**
 * How what several looks are off by hangs together, along any one of three axes: the axes do not.
 *
 * @packageDocumentation
 */
import type { LookMeans } from '../optics/look-doubt.ts';
import { DISCREPANCY_SD, SAME_CUP_SD } from '../tables/model-discrepancy.ts';
import { type CompositionPoint, likeness } from './composition-point.ts';
import { VIEWS_ALIKE } from './views-alike.ts';

/** What of a look says how its errors hang together with another's. */
export interface LookErrors {
  readonly point: CompositionPoint;
  /** Unset: of no cup that was ever poured, so that it has no dose errors of its own. */
  readonly cup?: string;
  readonly axisSd: number;
  readonly means: LookMeans;
}

/** What of that the theory's errors, and those of doses, hang on. */
export type TheoryErrors = Pick<LookErrors, 'point' | 'cup' | 'means'>;

/** What two looks, or a look with itself, have in common of the theory's errors in one view: a variance, ΔE00², along each axis. */
export function sharedVariance(one: TheoryErrors, other: TheoryErrors): number {
  const theory = DISCREPANCY_SD[one.means] * DISCREPANCY_SD[other.means] * likeness(one.point, other.point);
  return one.cup !== undefined && one.cup === other.cup ? theory + SAME_CUP_SD * SAME_CUP_SD : theory;
}

/** A look or a label that errs less than this is better than any instrument; nought would make looks of one cup contradict each other. */
export const LEAST_AXIS_SD = 0.02;

/** Covariance of what the look itself errs by in two of its views: a variance where they are the same view. */
export function lookNoise({ axisSd, means }: Pick<LookErrors, 'axisSd' | 'means'>, sameView: boolean): number {
  const sd = Math.max(LEAST_AXIS_SD, axisSd);
  return sd * sd * (sameView ? 1 : VIEWS_ALIKE[means]);
}

/** One view of one of several looks. */
export interface LookedView {
  /** Place of its look. */
  readonly look: number;
  readonly over: 'white' | 'black';
}

/**
 * Covariance of views of looks, row by row, ΔE00², along each axis.
 *
 * Shape: as many rows as views.
 */
export function viewsCovariance(looks: readonly LookErrors[], views: readonly LookedView[]): Float64Array {
  const n = views.length;
  const C = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      const [one, other] = [views[i]!, views[j]!];
      const sameView = one.over === other.over;
      let sum = sameView ? sharedVariance(looks[one.look]!, looks[other.look]!) : 0;
      if (one.look === other.look) sum += lookNoise(looks[one.look]!, sameView);
      C[i * n + j] = sum;
      C[j * n + i] = sum;
    }
  }
  return C;
}

/** The same of looks that are not all believed as noted: one of weight w errs as one that is 1/w times as vague. New each time. */
export function weightedCovariance(
  noted: Float64Array,
  views: readonly LookedView[],
  weights?: ArrayLike<number>,
): Float64Array {
  const C = noted.slice();
  if (!weights) return C;
  const n = views.length;
  for (const [i, { look }] of views.entries())
    for (const [j, other] of views.entries()) if (other.look === look) C[i * n + j]! /= weights[look]!;
  return C;
}
