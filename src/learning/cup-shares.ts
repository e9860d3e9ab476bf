/**
 * Which looks have taken the doubt of a colour away.
 *
 * Let Σ₀ and Σ be the covariance of theta by labels alone and by all looks, and J, C the slopes and covariance of a cup's looks (each cup
 * independent of the others, as in the fit). Since Σ⁻¹ = Σ₀⁻¹ + Σ Jᵀ C⁻¹ J, the sum going over cups, Σ₀ − Σ is Σ₀ (Σ Jᵀ C⁻¹ J) Σ. So what
 * looks have taken of the doubt of a colour with slopes A is a sum over cups,
 *
 *     tr A Σ₀ Aᵀ − tr A Σ Aᵀ = Σ tr A Σ₀ Jᵀ C⁻¹ J Σ Aᵀ
 *
 * (exact where colours are straight lines in theta). Each term, of the whole doubt tr A Σ₀ Aᵀ that labels leave, is the share of a cup.
 * Alike cups have alike shares; a cup that only sets right what another makes believe can have one a little below nought.
 *
 * @packageDocumentation
 */
import type { BeliefParts } from './belief-parts.ts';
import { factorizeDense, solveDense } from './dense-cholesky.ts';
import { BOTH_AXES, type LinearLook, type ThetaSlopes, VIEW_AXES } from './linear-views.ts';
import { looksByCup } from './looks-by-cup.ts';
import { seenCovariance, seenSides } from './seen-sides.ts';
import type { ThetaDoubt } from './sensitivity.ts';
import type { SharedVariance } from './shared-memo.ts';
import { whiten } from './whitened-block.ts';

/** What a cup's looks have taken of the doubt of a colour. */
export interface CupShare {
  /** `TaughtLook.cup` */
  readonly cup: string;
  /** Of all the doubt in square ΔE that labels leave: at most 1. */
  readonly share: number;
}

/** The doubt of a colour by labels alone and by all looks, 6 × unknowns each: A Σ₀ and A Σ. */
interface Spreads {
  readonly before: Float64Array;
  readonly after: Float64Array;
  readonly count: number;
}

/** The shares of some cups, in the order in which they first come among the looks. */
export function cupShares(
  { looks, doubt, labels }: Pick<BeliefParts, 'looks' | 'doubt' | 'labels'>,
  asked: ThetaSlopes,
  shared: SharedVariance,
  isAsked: (cup: string) => boolean,
): readonly CupShare[] {
  const byCup = [...looksByCup(looks)].filter(([cup]) => isAsked(cup));
  const { count } = doubt();
  const spreads = { before: spreadBefore(asked, labels(), count), after: spreadAfter(asked, doubt()), count };
  const whole = squares(asked, spreads.before, count);
  return byCup.map(([cup, seen]) => ({ cup, share: whole > 0 ? takenBy(seen, spreads, shared) / whole : 0 }));
}

function spreadBefore({ columns, slopes }: ThetaSlopes, factor: Float64Array, count: number): Float64Array {
  const spread = new Float64Array(BOTH_AXES * count);
  for (let row = 0; row < BOTH_AXES; row++) {
    const own = spread.subarray(row * count, (row + 1) * count);
    for (const [c, column] of columns.entries()) own[column] = slopes[row * columns.length + c]!;
    solveDense(factor, count, own);
  }
  return spread;
}

function spreadAfter({ columns, slopes }: ThetaSlopes, { inverse, count }: ThetaDoubt): Float64Array {
  const spread = new Float64Array(BOTH_AXES * count);
  for (let row = 0; row < BOTH_AXES; row++) {
    for (const [c, column] of columns.entries()) {
      const slope = slopes[row * columns.length + c]!;
      if (slope === 0) continue;
      for (let i = 0; i < count; i++) spread[row * count + i]! += slope * inverse[column * count + i]!;
    }
  }
  return spread;
}

/** tr A Σ Aᵀ of A Σ. */
function squares({ columns, slopes }: ThetaSlopes, spread: Float64Array, count: number): number {
  let sum = 0;
  for (let row = 0; row < BOTH_AXES; row++)
    for (const [c, column] of columns.entries())
      sum += slopes[row * columns.length + c]! * spread[row * count + column]!;
  return sum;
}

/** tr A Σ₀ Jᵀ C⁻¹ J Σ Aᵀ: with C = L Lᵀ the products of L⁻¹ J Σ₀ Aᵀ and L⁻¹ J Σ Aᵀ. */
function takenBy(looks: readonly LinearLook[], { before, after, count }: Spreads, shared: SharedVariance): number {
  const sides = seenSides(looks);
  const width = 2 * BOTH_AXES;
  const moves = new Float64Array(sides.length * VIEW_AXES * width);
  for (const [view, { look, side }] of sides.entries()) {
    const { columns, slopes } = looks[look]!;
    for (let axis = 0; axis < VIEW_AXES; axis++) {
      const from = (side * VIEW_AXES + axis) * columns.length;
      const to = (view * VIEW_AXES + axis) * width;
      for (const [c, column] of columns.entries()) {
        const slope = slopes[from + c]!;
        for (let row = 0; row < BOTH_AXES; row++) {
          moves[to + row]! += slope * before[row * count + column]!;
          moves[to + BOTH_AXES + row]! += slope * after[row * count + column]!;
        }
      }
    }
  }
  const C = seenCovariance(looks, sides, shared);
  factorizeDense(C, sides.length);
  whiten({ residuals: new Float64Array(sides.length * VIEW_AXES), slopes: moves }, C);
  let sum = 0;
  for (let from = 0; from < moves.length; from += width)
    for (let row = 0; row < BOTH_AXES; row++) sum += moves[from + row]! * moves[from + BOTH_AXES + row]!;
  return sum;
}
