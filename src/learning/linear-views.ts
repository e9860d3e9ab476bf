/**
 * What is seen, or asked about, made linear in theta: all that kriging needs of it.
 *
 * @packageDocumentation
 */
import type { BlockResiduals } from './block-residuals.ts';
import type { LookErrors, TheoryErrors } from './look-covariance.ts';
import type { CupBlock } from './shelf-problem.ts';

/** Axes of a view, and of both. */
export const VIEW_AXES = 3;
export const BOTH_AXES = 6;

/** A composition as the theory's errors see it. */
export interface Placed {
  /** Where it is among compositions, of which cup, and how it was, or is to be, looked at. */
  readonly errors: TheoryErrors;
  /** Place among the looks of the shelf, of one of them. */
  readonly place?: number;
}

/** How both views go with theta, their axes in ΔE00. */
export interface ThetaSlopes {
  /** Places in theta that they depend on. */
  readonly columns: Int32Array;
  /** 6 × columns, row by row: white's axes, then black's. */
  readonly slopes: Float64Array;
}

/** A look: rows of a view that it has not are 0. */
export interface LinearLook extends Placed, ThetaSlopes {
  readonly errors: LookErrors;
  readonly white: boolean;
  readonly black: boolean;
  /** Seen less what theta says, six axes. */
  readonly residual: Float64Array;
  /** 1 as noted, 0 not believed at all. */
  readonly weight: number;
}

/** The looks of a cup, each by itself, in the order of the block. */
export function linearLooks(
  block: CupBlock,
  { residuals, slopes }: BlockResiduals,
  errors: readonly LookErrors[],
  weights: ArrayLike<number>,
): readonly LinearLook[] {
  return block.items.map((item, i) => {
    const { places, camera, white, black } = item;
    const own = camera === undefined ? places : Int32Array.of(...places, camera, camera + 1, camera + 2);
    const residual = new Float64Array(BOTH_AXES);
    const rows = new Float64Array(BOTH_AXES * own.length);
    for (const [side, seen] of [white, black].entries()) {
      if (!seen) continue;
      for (let axis = 0; axis < VIEW_AXES; axis++) {
        const from = VIEW_AXES * seen.view + axis;
        const to = VIEW_AXES * side + axis;
        residual[to] = residuals[from]!;
        for (const [column, place] of own.entries())
          rows[to * own.length + column] = slopes[from * block.columns.length + place]!;
      }
    }
    return {
      errors: errors[i]!,
      place: block.places[i]!,
      white: white !== undefined,
      black: black !== undefined,
      columns: own.map((place) => block.columns[place]!),
      slopes: rows,
      residual,
      weight: weights[block.places[i]!]!,
    };
  });
}
