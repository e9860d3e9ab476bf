/**
 * What each look adds to the offset of any composition: α = C⁻¹ r over all looks of a shelf, so that the offset is k α.
 *
 * @packageDocumentation
 */
import { BOTH_AXES, type LinearLook, VIEW_AXES } from './linear-views.ts';
import { lookNoise } from './look-covariance.ts';
import type { LookField } from './look-field.ts';
import { vaguer } from './seen-sides.ts';

// The errors are of the order of 1, and an offset is wanted to a hundredth.
const SETTLED = 1e-5;
const MOST_STEPS = 500;

/**
 * α of every look, six axes each; 0 for a view that it has not.
 *
 * By conjugate gradients (M. R. Hestenes & E. Stiefel 1952, citation from memory), each look divided by its own variance first: six right-hand
 * sides over hundreds of looks, where most have nothing in common.
 */
export function fieldWeights(lookField: LookField): Float64Array {
  const { looks } = lookField;
  const field = new Field(lookField);
  const size = looks.length * BOTH_AXES;
  const alpha = new Float64Array(size);
  const rest = new Float64Array(size);
  for (const [i, look] of looks.entries()) rest.set(look.residual, i * BOTH_AXES);
  const eased = field.eased(rest);
  const direction = eased.slice();
  let square = dot(rest, eased);
  const enough = SETTLED * SETTLED * Math.max(square, Number.MIN_VALUE);
  for (let step = 0; step < MOST_STEPS && square > enough; step++) {
    const applied = field.applied(direction);
    const length = square / dot(direction, applied);
    for (let i = 0; i < size; i++) {
      alpha[i]! += length * direction[i]!;
      rest[i]! -= length * applied[i]!;
    }
    const next = field.eased(rest);
    const nextSquare = dot(rest, next);
    for (let i = 0; i < size; i++) direction[i] = next[i]! + (nextSquare / square) * direction[i]!;
    square = nextSquare;
  }
  return alpha;
}

/** C, without ever being written down as a whole. */
class Field {
  private readonly looks: readonly LinearLook[];
  /** Of every pair that has something in common: places of both, and what it is. */
  private readonly pairs: Int32Array;
  private readonly shares: Float64Array;
  /** Of each look: variance of a view, and covariance of its two views. */
  private readonly own: Float64Array;
  private readonly between: Float64Array;

  constructor(field: LookField) {
    const { looks, shared } = field;
    this.looks = looks;
    const pairs: number[] = [];
    const shares: number[] = [];
    for (let i = 0; i < looks.length; i++) {
      const withAll = field.sharesWith(looks[i]!);
      for (let j = 0; j < i; j++) {
        if (withAll[j]! === 0) continue;
        pairs.push(i, j);
        shares.push(withAll[j]!);
      }
    }
    this.pairs = Int32Array.from(pairs);
    this.shares = Float64Array.from(shares);
    this.own = Float64Array.from(
      looks,
      (look) => (shared(look, look) + lookNoise(look.errors, true)) * vaguer(look.weight),
    );
    this.between = Float64Array.from(looks, (look) =>
      look.white && look.black ? lookNoise(look.errors, false) * vaguer(look.weight) : 0,
    );
  }

  applied(x: Float64Array): Float64Array {
    const y = new Float64Array(x.length);
    for (let i = 0; i < this.looks.length; i++) {
      const at = i * BOTH_AXES;
      for (let axis = 0; axis < VIEW_AXES; axis++) {
        const [white, black] = [at + axis, at + VIEW_AXES + axis];
        y[white] = this.own[i]! * x[white]! + this.between[i]! * x[black]!;
        y[black] = this.own[i]! * x[black]! + this.between[i]! * x[white]!;
      }
    }
    for (let pair = 0; pair < this.shares.length; pair++) {
      const [one, other] = [this.pairs[2 * pair]! * BOTH_AXES, this.pairs[2 * pair + 1]! * BOTH_AXES];
      const share = this.shares[pair]!;
      for (let axis = 0; axis < BOTH_AXES; axis++) {
        y[one + axis]! += share * x[other + axis]!;
        y[other + axis]! += share * x[one + axis]!;
      }
    }
    return this.withoutUnseen(y);
  }

  eased(x: Float64Array): Float64Array {
    return this.withoutUnseen(x.map((value, i) => value / this.own[Math.floor(i / BOTH_AXES)]!));
  }

  private withoutUnseen(y: Float64Array): Float64Array {
    for (const [i, { white, black }] of this.looks.entries()) {
      if (!white) y.fill(0, i * BOTH_AXES, i * BOTH_AXES + VIEW_AXES);
      if (!black) y.fill(0, i * BOTH_AXES + VIEW_AXES, (i + 1) * BOTH_AXES);
    }
    return y;
  }
}

function dot(one: Float64Array, other: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < one.length; i++) sum += one[i]! * other[i]!;
  return sum;
}
