import { solveLinear } from '../optics/linear-system.ts';

// Steps that are remembered: as many slow directions are taken out together.
const REMEMBERED = 8;
// What keeps remembered steps that say the same from counting against each other without end.
const RIDGE = 1e-14;

/**
 * Makes of a sequence of steps that shrink slowly one that shrinks fast: each next point is put together from the last few so that their
 * steps, as far as they go straight, cancel out.
 *
 * Source: D. G. Anderson, J. ACM 12:547 (1965); in differences, as H. F. Walker & P. Ni, SIAM J. Numer. Anal. 49:1715 (2011), write it
 * (from memory).
 */
export class AndersonSteps {
  private points: Float64Array[] = [];
  private steps: Float64Array[] = [];

  /** Forgets all steps, where they are no longer those of one map. */
  forget(): void {
    this.points = [];
    this.steps = [];
  }

  /** The next point, from a point and the step that the map takes there. */
  next(point: Float64Array, step: Float64Array): Float64Array {
    this.points.push(point);
    this.steps.push(step);
    if (this.points.length > REMEMBERED + 1) {
      this.points.shift();
      this.steps.shift();
    }
    const m = this.steps.length - 1;
    const moved = point.map((value, i) => value + step[i]!);
    if (m === 0) return moved;
    const shares = this.shares(m);
    if (!shares) return moved;
    for (let j = 0; j < m; j++) {
      const [p, q] = [this.points[j]!, this.points[j + 1]!];
      const [f, g] = [this.steps[j]!, this.steps[j + 1]!];
      for (let i = 0; i < moved.length; i++) moved[i]! -= shares[j]! * (q[i]! - p[i]! + g[i]! - f[i]!);
    }
    return moved;
  }

  /** What of each change of the step makes up the last step, by least squares. */
  private shares(m: number): Float64Array | undefined {
    const last = this.steps[m]!;
    const changes = Array.from({ length: m }, (_, j) =>
      this.steps[j + 1]!.map((value, i) => value - this.steps[j]![i]!),
    );
    const A = new Float64Array(m * m);
    const b = new Float64Array(m);
    const sizes = changes.map((change) => Math.sqrt(dot(change, change)));
    if (sizes.some((size) => size === 0)) return undefined;
    for (let i = 0; i < m; i++) {
      for (let j = 0; j < m; j++) A[i * m + j] = dot(changes[i]!, changes[j]!) / (sizes[i]! * sizes[j]!);
      A[i * m + i]! += RIDGE;
      b[i] = dot(changes[i]!, last) / sizes[i]!;
    }
    return solveLinear(A, b) ? b.map((value, j) => value / sizes[j]!) : undefined;
  }
}

function dot(one: Float64Array, other: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < one.length; i++) sum += one[i]! * other[i]!;
  return sum;
}
