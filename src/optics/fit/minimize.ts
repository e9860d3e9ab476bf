/**
 * Minimum of a smooth function of many variables whose gradient is known: L-BFGS.
 *
 * Source: J. Nocedal, Math. Comp. 35:773 (1980); line search after J. Nocedal & S. J. Wright, Numerical Optimization, 2nd
 * ed. (2006), algorithms 3.5, 3.6 and 7.4 (numbers from memory).
 */

/** Writes the gradient at x into `gradient` and returns the value. */
export type Objective = (x: Float64Array, gradient: Float64Array) => number;

/** When to stop, and how much to remember. */
export interface MinimizeOptions {
  readonly maxIterations: number;
  /** Stop when ten iterations together gain less than this share of the value. */
  readonly tolerance: number;
  /** Pairs of steps remembered. */
  readonly memory: number;
}

/** What was found. */
export interface Minimum {
  readonly x: Float64Array;
  readonly value: number;
  readonly iterations: number;
  /** False if it stopped at `maxIterations`. */
  readonly converged: boolean;
}

const SUFFICIENT_DECREASE = 1e-4;
const CURVATURE = 0.9;

/**
 * Minimizes from a start; `start` is left as it is.
 *
 * Throws: RangeError if the objective is not finite at the start.
 */
export function minimize(objective: Objective, start: Float64Array, options: MinimizeOptions): Minimum {
  const n = start.length;
  let x: Float64Array = Float64Array.from(start);
  let gradient: Float64Array = new Float64Array(n);
  let value = objective(x, gradient);
  if (!Number.isFinite(value)) throw new RangeError(`Objective is ${value} at the start; start where it is finite`);
  const steps: Float64Array[] = [];
  const changes: Float64Array[] = [];
  const direction = new Float64Array(n);
  const history = [value];
  let iterations = 0;
  let converged = false;
  while (iterations < options.maxIterations) {
    quasiNewton(gradient, steps, changes, direction);
    let slope = dot(direction, gradient);
    if (!(slope < 0)) {
      steps.length = 0;
      changes.length = 0;
      for (let i = 0; i < n; i++) direction[i] = -gradient[i]!;
      slope = dot(direction, gradient);
      if (!(slope < -1e-300)) {
        converged = true;
        break;
      }
    }
    const first = steps.length === 0 ? Math.min(1, 1 / Math.sqrt(-slope)) : 1;
    const found = lineSearch(objective, x, value, slope, direction, first);
    if (!found) {
      if (steps.length === 0) {
        converged = true;
        break;
      }
      steps.length = 0;
      changes.length = 0;
      continue;
    }
    iterations++;
    const step = new Float64Array(n);
    const change = new Float64Array(n);
    for (let i = 0; i < n; i++) {
      step[i] = found.x[i]! - x[i]!;
      change[i] = found.gradient[i]! - gradient[i]!;
    }
    if (dot(step, change) > 1e-12 * dot(change, change)) {
      steps.push(step);
      changes.push(change);
      if (steps.length > options.memory) {
        steps.shift();
        changes.shift();
      }
    }
    x = found.x;
    gradient = found.gradient;
    value = found.value;
    history.push(value);
    const earlier = history[history.length - 11];
    if (earlier !== undefined && earlier - value <= options.tolerance * Math.max(1, Math.abs(value))) {
      converged = true;
      break;
    }
  }
  return { x, value, iterations, converged };
}

/** Two-loop recursion: direction = −H gradient. */
function quasiNewton(
  gradient: Float64Array,
  steps: readonly Float64Array[],
  changes: readonly Float64Array[],
  direction: Float64Array,
): void {
  for (let i = 0; i < gradient.length; i++) direction[i] = -gradient[i]!;
  const alphas = new Float64Array(steps.length);
  for (let j = steps.length - 1; j >= 0; j--) {
    alphas[j] = dot(steps[j]!, direction) / dot(steps[j]!, changes[j]!);
    addScaled(direction, changes[j]!, -alphas[j]!);
  }
  const last = steps.length - 1;
  if (last >= 0) {
    const scale = dot(steps[last]!, changes[last]!) / dot(changes[last]!, changes[last]!);
    for (let i = 0; i < direction.length; i++) direction[i]! *= scale;
  }
  for (let j = 0; j < steps.length; j++) {
    const beta = dot(changes[j]!, direction) / dot(steps[j]!, changes[j]!);
    addScaled(direction, steps[j]!, alphas[j]! - beta);
  }
}

interface Point {
  readonly x: Float64Array;
  readonly gradient: Float64Array;
  readonly value: number;
}

/** A step that meets the strong Wolfe conditions, or the best decrease found; undefined if there is none. */
function lineSearch(
  objective: Objective,
  origin: Float64Array,
  value0: number,
  slope0: number,
  direction: Float64Array,
  first: number,
): Point | undefined {
  let low = { at: 0, value: value0, slope: slope0 };
  let high: typeof low | undefined;
  let best: Point | undefined;
  let at = first;
  for (let trial = 0; trial < 25; trial++) {
    const x = Float64Array.from(origin);
    addScaled(x, direction, at);
    const gradient = new Float64Array(x.length);
    const value = objective(x, gradient);
    const slope = Number.isFinite(value) ? dot(gradient, direction) : Number.NaN;
    if (!Number.isFinite(slope) || value > value0 + SUFFICIENT_DECREASE * at * slope0 || value >= low.value) {
      high = { at, value, slope };
    } else {
      best = { x, gradient, value };
      if (Math.abs(slope) <= -CURVATURE * slope0) return best;
      if (slope * ((high?.at ?? Number.POSITIVE_INFINITY) - low.at) >= 0) high = low;
      low = { at, value, slope };
    }
    if (!high) {
      at *= 3;
      continue;
    }
    at = between(low, high);
    if (Math.abs(high.at - low.at) < 1e-12 * Math.max(1, Math.abs(low.at))) break;
  }
  return best;
}

/** Minimum of the parabola through the lower point's value and slope and the other's value, kept inside. */
function between(low: { at: number; value: number; slope: number }, high: { at: number; value: number }): number {
  const width = high.at - low.at;
  const bend = high.value - low.value - low.slope * width;
  const inside = Number.isFinite(bend) && bend > 0 ? (-low.slope * width) / (2 * bend) : 0.1;
  return low.at + width * Math.min(0.9, Math.max(0.1, inside));
}

function dot(x: Float64Array, y: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < x.length; i++) sum += x[i]! * y[i]!;
  return sum;
}

function addScaled(x: Float64Array, y: Float64Array, factor: number): void {
  for (let i = 0; i < x.length; i++) x[i]! += factor * y[i]!;
}
