/**
 * Doses whose look has every published digit: each of its numbers within a box.
 *
 * @packageDocumentation
 */
import type { Column, LookModel } from './look-model.ts';

/** What is known of a look, number by number: see `LookModel`. */
export interface Box {
  readonly low: Float64Array;
  readonly high: Float64Array;
}

/** How near doses come to a box. */
export interface Fit {
  readonly doses: Float64Array;
  /** Sum of the squares by which the numbers are outside; 0 inside. */
  readonly outside: number;
}

/** The share of flake counts as so many units of Lab. */
const FLAKE_SCALE = 100;
const MOST_STEPS = 30;
/** A fit that has got this much better no more is done. */
const GAIN = 0.02;

/** Work arrays of a fit, kept from one to the next. */
export class BoxFitter {
  private readonly model: LookModel;
  private readonly box: Box;
  private readonly values: Float64Array;
  private readonly tried: Float64Array;

  constructor(model: LookModel, box: Box) {
    this.model = model;
    this.box = box;
    this.values = new Float64Array(model.rows);
    this.tried = new Float64Array(model.rows);
  }

  /**
   * Levenberg and Marquardt's steps from some doses to the box, each dose between 0 and the most of its material.
   *
   * @param held a column whose dose stays as it is
   */
  fit(columns: readonly Column[], from: Float64Array, held = -1): Fit {
    const { model } = this;
    const count = columns.length;
    const most = columns.map(({ suspect }) => model.suspects[suspect]!.most);
    let doses = Float64Array.from(from, (dose, j) => Math.min(most[j]!, Math.max(0, dose)));
    let slopes = new Float64Array(model.rows * count);
    let triedSlopes = new Float64Array(model.rows * count);
    model.see(columns, doses, this.values, slopes);
    let outside = outsideOf(this.values, this.box);
    let damping = 1e-2;
    let stuck = 0;
    for (let step = 0; step < MOST_STEPS && outside > 0; step++) {
      const move = solveStep(this.values, slopes, this.box, doses, most, damping, held);
      const next = doses.map((dose, j) => Math.min(most[j]!, Math.max(0, dose + move[j]!)));
      model.see(columns, next, this.tried, triedSlopes);
      const now = outsideOf(this.tried, this.box);
      if (now < outside) {
        stuck = now > (1 - GAIN) * outside ? stuck + 1 : 0;
        outside = now;
        doses = next;
        this.values.set(this.tried);
        [slopes, triedSlopes] = [triedSlopes, slopes];
        damping = Math.max(1e-6, damping / 5);
      } else {
        damping *= 8;
        stuck += 1;
      }
      if (stuck > 3 || damping > 1e6) break;
    }
    return { doses, outside };
  }

  /** How near doses would come were numbers straight in them, as they run from some doses on. */
  tangent(columns: readonly Column[], doses: Float64Array): Tangent {
    const values = new Float64Array(this.model.rows);
    const slopes = new Float64Array(this.model.rows * columns.length);
    this.model.see(columns, doses, values, slopes);
    const most = columns.map(({ suspect }) => this.model.suspects[suspect]!.most);
    return new Tangent(this.box, doses, most, values, slopes);
  }
}

/** Steps of a fit along a tangent: enough for the doses to find their bounds and the numbers theirs. */
const TANGENT_STEPS = 8;

/** The numbers of a look as straight lines from some doses on. */
export class Tangent {
  private readonly box: Box;
  private readonly doses: Float64Array;
  private readonly most: readonly number[];
  private readonly values: Float64Array;
  private readonly slopes: Float64Array;

  constructor(box: Box, doses: Float64Array, most: readonly number[], values: Float64Array, slopes: Float64Array) {
    this.box = box;
    this.doses = doses;
    this.most = most;
    this.values = values;
    this.slopes = slopes;
  }

  /** The fit with the columns at these places of the tangent's. */
  fit(places: readonly number[]): Fit {
    const rows = this.values.length;
    const all = this.doses.length;
    const count = places.length;
    const slopes = new Float64Array(rows * count);
    for (let row = 0; row < rows; row++) {
      for (let j = 0; j < count; j++) slopes[row * count + j] = this.slopes[row * all + places[j]!]!;
    }
    const start = Float64Array.from(places, (place) => this.doses[place]!);
    const most = places.map((place) => this.most[place]!);
    let doses = start;
    let values = this.values;
    let outside = outsideOf(values, this.box);
    let damping = 1e-3;
    for (let step = 0; step < TANGENT_STEPS && outside > 0; step++) {
      const move = solveStep(values, slopes, this.box, doses, most, damping, -1);
      const next = doses.map((dose, j) => Math.min(most[j]!, Math.max(0, dose + move[j]!)));
      const moved = this.values.slice();
      for (let row = 0; row < rows; row++) {
        for (let j = 0; j < count; j++) moved[row]! += slopes[row * count + j]! * (next[j]! - start[j]!);
      }
      const now = outsideOf(moved, this.box);
      if (now < outside) {
        if (now > 0.98 * outside) return { doses: next, outside: now };
        [doses, values, outside] = [next, moved, now];
        damping /= 5;
      } else damping *= 10;
    }
    return { doses, outside };
  }
}

function excess(value: number, low: number, high: number): number {
  return value < low ? value - low : value > high ? value - high : 0;
}

const scaleOf = (row: number, rows: number): number => (row === rows - 1 ? FLAKE_SCALE : 1);

/** Sum of the squares by which numbers are outside a box. */
export function outsideOf(values: Float64Array, { low, high }: Box): number {
  let sum = 0;
  for (let row = 0; row < values.length; row++) {
    const off = scaleOf(row, values.length) * excess(values[row]!, low[row]!, high[row]!);
    sum += off * off;
  }
  return sum;
}

/** Aims this part of the half width inside, so that a step ends in the box and not on its edge. */
const INSIDE = 0.02;

/** A damped step toward the box; doses at their bounds that want out stay there. */
function solveStep(
  values: Float64Array,
  slopes: Float64Array,
  { low, high }: Box,
  doses: Float64Array,
  most: readonly number[],
  damping: number,
  held: number,
): Float64Array {
  const count = doses.length;
  const rows = values.length;
  const normal = new Float64Array(count * count);
  const down = new Float64Array(count);
  for (let row = 0; row < rows; row++) {
    const margin = (INSIDE * (high[row]! - low[row]!)) / 2;
    const off = excess(values[row]!, low[row]! + margin, high[row]! - margin);
    const squared = scaleOf(row, rows) ** 2;
    // Numbers that are inside already hold on a little, so that they stay there.
    const weight = squared * (off === 0 ? 1e-2 : 1);
    for (let j = 0; j < count; j++) {
      const slope = slopes[row * count + j]!;
      down[j]! -= squared * slope * off;
      for (let k = 0; k <= j; k++) normal[j * count + k]! += weight * slope * slopes[row * count + k]!;
    }
  }
  const free: number[] = [];
  for (let j = 0; j < count; j++) {
    const outward = (doses[j]! <= 0 && down[j]! < 0) || (doses[j]! >= most[j]! && down[j]! > 0);
    if (j !== held && !outward) free.push(j);
  }
  const move = new Float64Array(count);
  const solved = solveDamped(normal, down, free, count, damping);
  for (const [at, j] of free.entries()) move[j] = solved[at]!;
  return move;
}

/** Cholesky's solution of the normal equations of the free columns. */
function solveDamped(
  normal: Float64Array,
  down: Float64Array,
  free: readonly number[],
  count: number,
  damping: number,
): Float64Array {
  const n = free.length;
  const factor = new Float64Array(n * n);
  const result = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    for (let k = 0; k <= i; k++) {
      const [row, column] = [free[i]!, free[k]!];
      let sum = normal[Math.max(row, column) * count + Math.min(row, column)]!;
      if (i === k) sum = sum * (1 + damping) + 1e-9;
      for (let m = 0; m < k; m++) sum -= factor[i * n + m]! * factor[k * n + m]!;
      factor[i * n + k] = i === k ? Math.sqrt(Math.max(sum, 1e-12)) : sum / factor[k * n + k]!;
    }
  }
  for (let i = 0; i < n; i++) {
    let sum = down[free[i]!]!;
    for (let m = 0; m < i; m++) sum -= factor[i * n + m]! * result[m]!;
    result[i] = sum / factor[i * n + i]!;
  }
  for (let i = n - 1; i >= 0; i--) {
    let sum = result[i]!;
    for (let m = i + 1; m < n; m++) sum -= factor[m * n + i]! * result[m]!;
    result[i] = sum / factor[i * n + i]!;
  }
  return result;
}
