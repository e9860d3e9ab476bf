/**
 * The theta that costs least: Gauss and Newton's steps, damped while they are large.
 *
 * @packageDocumentation
 */
import { AndersonSteps } from './anderson-steps.ts';
import { factorizeDense, solveDense } from './dense-cholesky.ts';
import type { ShelfEquations } from './normal-equations.ts';

// No step moves any unknown by more than this many of its standard deviations.
const LONGEST_STEP = 1.5;
// Below this a step is taken as it is, and the curvature need not be found again for each.
const NEAR = 0.3;
// Far below the rounding of theta, so that what it is rounded to is the same from wherever the steps came.
const SETTLED = 1e-11;
const MOST_STEPS = 200;
// Steps that grow to this many times the least one are those of another valley.
const GROWS = 3;

/**
 * Finds it from a start, which is left as it is.
 *
 * Steps end when one moves no unknown by more than 1e-11 of its standard deviation, or when rounding lets them shrink no further.
 */
export function fitTheta(equations: ShelfEquations, start: Float64Array): Float64Array {
  return settle(equations, comeNear(equations, start));
}

/** Damped steps, each of which costs less than before, until they are small: nearly the theta that costs least. */
export function comeNear(equations: ShelfEquations, start: Float64Array): Float64Array {
  let theta = start;
  let now = equations.at(theta, true);
  let damping = 0;
  for (let count = 0; count < MOST_STEPS; count++) {
    const step = damped(now.curvature!, now.gradient, damping);
    const longest = longestOf(step);
    if (longest < NEAR && damping === 0) return theta;
    const scale = Math.min(1, LONGEST_STEP / longest);
    const moved = theta.map((value, i) => value + scale * step[i]!);
    const next = equations.at(moved, true);
    if (next.cost <= now.cost) {
      theta = moved;
      now = next;
      damping = damping < 0.01 ? 0 : damping / 10;
    } else if (longest < 1e-9) return theta;
    else damping = Math.max(0.1, damping * 4);
  }
  return theta;
}

/** Steps with one curvature, which is found again only where they do not shrink. */
function settle(equations: ShelfEquations, start: Float64Array): Float64Array {
  const n = start.length;
  const steps = new AndersonSteps();
  let theta = start;
  let factor: Float64Array | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (let count = 0; count < MOST_STEPS; count++) {
    const { gradient, curvature } = equations.at(theta, factor === undefined);
    if (curvature) {
      factorizeDense(curvature, n);
      factor = curvature;
      steps.forget();
    }
    const step = gradient.map((value) => -value);
    solveDense(factor!, n, step);
    const longest = longestOf(step);
    theta = steps.next(theta, step);
    if (longest < SETTLED) return theta;
    if (longest > GROWS * least) {
      factor = undefined;
      least = Number.POSITIVE_INFINITY;
    }
    least = Math.min(least, longest);
  }
  return theta;
}

function damped(curvature: Float64Array, gradient: Float64Array, damping: number): Float64Array {
  const n = gradient.length;
  const L = curvature.slice();
  for (let i = 0; i < n; i++) L[i * n + i]! *= 1 + damping;
  factorizeDense(L, n);
  const step = gradient.map((value) => -value);
  solveDense(L, n, step);
  return step;
}

function longestOf(step: Float64Array): number {
  let longest = 0;
  for (const value of step) longest = Math.max(longest, Math.abs(value));
  return longest;
}
