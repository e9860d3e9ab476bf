/**
 * The theta that costs least: Gauss and Newton's steps, damped while they gain much, then drawn together by Anderson's.
 *
 * @packageDocumentation
 */
import { AndersonSteps } from './anderson-steps.ts';
import { factorizeSturdy, solveDense } from './dense-cholesky.ts';
import type { NormalEquations, ShelfEquations } from './normal-equations.ts';

// No step moves any unknown by more than this many of its standard deviations.
const LONGEST_STEP = 1.5;
// What a step promises to gain, in half squares of deviations, from which on it is as good as straight from here to the end.
const LITTLE_GAIN = 0.2;
// Costs may rise by this for a step: drawn together, steps do not each go down.
const MAY_RISE = 0.05;
const MOST_DAMPED = 60;
const MOST_STEPS = 120;

/** The last step of a fit moves no unknown by more than this, in standard deviations: rounding of theta is 1e-4. */
export const SETTLED = 1e-8;

/**
 * Finds it from a start, which is left as it is.
 *
 * @param settled the last step moves no unknown by more than this; unset: `SETTLED`
 */
export function fitTheta(equations: ShelfEquations, start: Float64Array, settled: number = SETTLED): Float64Array {
  const room = new Float64Array(start.length * start.length);
  return settle(equations, comeNear(equations, start, room), settled, room);
}

/** A theta and what was found there. */
interface Place {
  readonly theta: Float64Array;
  readonly found: NormalEquations;
  /** Cholesky's factor of the curvature there, where it is known. */
  readonly factor?: Float64Array;
}

/** Damped steps, each of which costs less than before, until they promise little. */
function comeNear(equations: ShelfEquations, start: Float64Array, room: Float64Array): Place {
  let place: Place = { theta: start, found: equations.at(start, true) };
  let damping = 0;
  for (let count = 0; count < MOST_DAMPED; count++) {
    const { gradient, curvature } = place.found;
    const factor = factorOf(curvature!, damping, room);
    const step = downhill(factor, gradient);
    const longest = longestOf(step);
    if (damping < 0.01 && longest < LONGEST_STEP && -dot(step, gradient) / 2 < LITTLE_GAIN)
      return damping === 0 ? { ...place, factor } : place;
    const scale = Math.min(1, LONGEST_STEP / longest);
    const theta = place.theta.map((value, i) => value + scale * step[i]!);
    const found = equations.at(theta, true);
    if (found.cost <= place.found.cost) {
      place = { theta, found };
      damping = damping < 0.01 ? 0 : damping / 10;
    } else damping = Math.max(0.03, damping * 4);
  }
  return place;
}

/** Steps with one curvature, which is found again where it leads uphill. */
function settle(equations: ShelfEquations, near: Place, settled: number, room: Float64Array): Float64Array {
  const steps = new AndersonSteps();
  let best = near;
  let factor = near.factor ?? factorOf(near.found.curvature!, 0, room);
  let damping = 0;
  let place = near;
  for (let count = 0; count < MOST_STEPS; count++) {
    const step = downhill(factor, place.found.gradient);
    const longest = longestOf(step);
    const theta = steps.next(place.theta, step);
    if (longest < settled) return theta;
    place = { theta, found: equations.at(theta, false) };
    if (place.found.cost < best.found.cost) best = place;
    else if (place.found.cost > best.found.cost + MAY_RISE) {
      // Where even the steps of a new curvature lead uphill they are too long.
      damping = best.found.curvature ? Math.max(0.1, damping * 4) : damping / 2;
      place = best = { theta: best.theta, found: best.found.curvature ? best.found : equations.at(best.theta, true) };
      factor = factorOf(best.found.curvature!, damping, room);
      steps.forget();
    }
  }
  return best.theta;
}

/** The step that a factor of the curvature leads to. */
function downhill(factor: Float64Array, gradient: Float64Array): Float64Array {
  const step = gradient.map((value) => -value);
  solveDense(factor, step.length, step);
  return step;
}

/** Cholesky's factor of a curvature, which is left as it is, with its diagonal so much larger. It is written into `room`. */
function factorOf(curvature: Float64Array, damping: number, room: Float64Array): Float64Array {
  const n = Math.sqrt(curvature.length);
  room.set(curvature);
  for (let i = 0; i < n; i++) room[i * n + i]! *= 1 + damping;
  factorizeSturdy(room, n);
  return room;
}

function longestOf(step: Float64Array): number {
  let longest = 0;
  for (const value of step) longest = Math.max(longest, Math.abs(value));
  return longest;
}

function dot(one: Float64Array, other: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < one.length; i++) sum += one[i]! * other[i]!;
  return sum;
}
