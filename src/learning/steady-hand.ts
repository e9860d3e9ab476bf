/**
 * How steady a maker's hand is, told from what cups were off by.
 *
 * A dose that is counted or levelled is off by chance each time. Common practice says by how much; a maker may be steadier than that. With e what
 * the looks at a cup are off by when they are left out of the fit, P its covariance from all that is in doubt anyhow, and M how the looks go
 * with one standard deviation of each dose, e is normal with covariance P + g² M Mᵀ. The likeliest g of all cups together is the hand, with ln g
 * normal about 0 before anything was seen.
 *
 * @packageDocumentation
 */
import { BOTTLE_SD } from '../tables/material-priors.ts';
import { HAND_SD } from '../tables/model-discrepancy.ts';
import type { BeliefParts } from './belief-parts.ts';
import { factorizeSturdy, solveDense } from './dense-cholesky.ts';
import { type LinearLook, VIEW_AXES } from './linear-views.ts';
import { looksByCup } from './looks-by-cup.ts';
import { normalDensity } from './normal-density.ts';
import { type SeenSide, seenCovariance, seenSides } from './seen-sides.ts';
import { Sensitivity, type ThetaDoubt } from './sensitivity.ts';
import type { SharedVariance } from './shared-memo.ts';

/** What a cup's looks are off by without themselves, and how its doses make them so: rows are axes of views. */
interface CupOff {
  readonly rows: number;
  readonly off: Float64Array;
  /** P, whole. */
  readonly covariance: Float64Array;
  /** Columns of M. */
  readonly doses: readonly Float64Array[];
}

// As many cups tell enough: of more every so-manieth is asked.
const MOST_CUPS = 100;

// Hands that are tried: from a tenth of what is usual to three times, in steps of a twelfth.
const STEP = Math.log(13 / 12);
const HANDS = Array.from({ length: 1 + Math.ceil(Math.log(30) / STEP) }, (_, i) => 0.1 * Math.exp(i * STEP));

/**
 * How many times what is usual the doses of a shelf's cups were off by: 1 where nothing tells. Rounded to two digits.
 *
 * @param spreadOf one standard deviation of a usual dose of a material, as a part of it
 */
export function steadyHand(
  { looks, doubt, state }: BeliefParts,
  shared: SharedVariance,
  spreadOf: (material: string) => number,
): number {
  const spreads = new Map<number, number>();
  for (const { id, bottle } of state.unknowns.materials)
    if (bottle !== undefined) spreads.set(bottle, spreadOf(id) / BOTTLE_SD);
  const all = [...looksByCup(looks).values()];
  const every = Math.ceil(all.length / MOST_CUPS);
  const asked = all.filter((_, place) => place % every === 0);
  const cups = asked.map((each) => cupOff(each, doubt(), shared, spreads));
  let [hand, best] = [1, Number.NEGATIVE_INFINITY];
  for (const tried of HANDS) {
    const likely = cups.reduce((sum, cup) => sum + logLikelihood(cup, tried), -0.5 * (Math.log(tried) / HAND_SD) ** 2);
    if (likely > best) [hand, best] = [tried, likely];
  }
  return cups.length === 0 ? 1 : Number(hand.toPrecision(2));
}

function cupOff(
  looks: readonly LinearLook[],
  doubt: ThetaDoubt,
  shared: SharedVariance,
  spreads: ReadonlyMap<number, number>,
): CupOff {
  const sides = seenSides(looks);
  const rows = VIEW_AXES * sides.length;
  const rowOf = (row: number): { look: LinearLook; axis: number } => {
    const { look, side } = sides[Math.floor(row / VIEW_AXES)]!;
    return { look: looks[look]!, axis: side * VIEW_AXES + (row % VIEW_AXES) };
  };
  const C = byAxes(seenCovariance(looks, sides, shared), sides.length);
  const taught = thetaCovariance(looks, sides, doubt, rows);
  // What is left open of the looks once they are fitted: C − J H⁻¹ Jᵀ.
  const D = C.map((value, i) => value - taught[i]!);
  factorizeSturdy(D, rows);
  const off = Float64Array.from({ length: rows }, (_, row) => {
    const { look, axis } = rowOf(row);
    return look.residual[axis]!;
  });
  solveDense(D, rows, off);
  const covariance = new Float64Array(rows * rows);
  for (let i = 0; i < rows; i++) {
    const solved = C.slice(i * rows, (i + 1) * rows);
    solveDense(D, rows, solved);
    for (let j = 0; j < rows; j++)
      for (let k = 0; k < rows; k++) covariance[i * rows + j]! += solved[k]! * C[k * rows + j]!;
  }
  const doses = new Map<number, Float64Array>();
  for (let row = 0; row < rows; row++) {
    const { look, axis } = rowOf(row);
    for (const [c, column] of look.columns.entries()) {
      const spread = spreads.get(column);
      if (spread === undefined) continue;
      const moves = doses.get(column) ?? new Float64Array(rows);
      doses.set(column, moves);
      moves[row] = spread * look.slopes[axis * look.columns.length + c]!;
    }
  }
  return { rows, off: times(C, off, rows), covariance, doses: [...doses.values()] };
}

/** A matrix of views as one of their axes, whole: axes of unlike kind have nothing in common. */
function byAxes(views: Float64Array, n: number): Float64Array {
  const rows = VIEW_AXES * n;
  const all = new Float64Array(rows * rows);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      const value = views[Math.max(i, j) * n + Math.min(i, j)]!;
      for (let axis = 0; axis < VIEW_AXES; axis++) all[(VIEW_AXES * i + axis) * rows + VIEW_AXES * j + axis] = value;
    }
  }
  return all;
}

function thetaCovariance(
  looks: readonly LinearLook[],
  sides: readonly SeenSide[],
  doubt: ThetaDoubt,
  rows: number,
): Float64Array {
  const room = looks.reduce((sum, { columns }) => sum + columns.length, 0);
  const sensitivity = new Sensitivity(rows, doubt.count, room);
  for (const [i, { look, side }] of sides.entries()) sensitivity.add(looks[look]!, side, 1, VIEW_AXES * i);
  return sensitivity.covariance(doubt);
}

function times(A: Float64Array, x: Float64Array, n: number): Float64Array {
  return Float64Array.from({ length: n }, (_, i) => {
    let sum = 0;
    for (let j = 0; j < n; j++) sum += A[i * n + j]! * x[j]!;
    return sum;
  });
}

function logLikelihood({ rows, off, covariance, doses }: CupOff, hand: number): number {
  const A = covariance.slice();
  for (const moves of doses)
    for (let i = 0; i < rows; i++) for (let j = 0; j <= i; j++) A[i * rows + j]! += hand * hand * moves[i]! * moves[j]!;
  factorizeSturdy(A, rows);
  return normalDensity(off, A).logDensity;
}
