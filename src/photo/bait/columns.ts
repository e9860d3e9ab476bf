/**
 * Where a bait crosses each column of a patch.
 *
 * @packageDocumentation
 */
import type { Contrast, Half } from './background.ts';
import { placeIn } from './rectify.ts';

/** What stands out in one column: the edges of a bait, if it is one. */
export interface Crossing {
  readonly half: Half;
  /** Of the column's middle along the patch, and of both edges across it, mm. */
  readonly along: number;
  readonly top: number;
  readonly bottom: number;
  /** The middle OKLab distance from the background between the edges. */
  readonly contrast: number;
  /** An edge is that of the patch: the bait goes on, or may. */
  readonly touches: boolean;
}

/** Narrower than this nothing is a bait; and a gap up to this is flake, a bubble or a clear spot in one: mm. */
const LEAST_WIDTH_MM = 2;
const GAP_MM = 1.2;

/** Columns are smoothed over this, mm. */
const SMOOTHED_MM = 1.2;

/** An edge is where the distance has fallen to this part of the bait's: what is left of a soft shadow lies below. */
const EDGE = 0.5;

/**
 * The crossings of a bait, column by column, of those columns that show any.
 *
 * @param through the bait is known to lie here across the patch, mm; unset: what stands out most is the bait
 */
export function crossingsOf(contrast: Contrast, seamX: number, through?: number): readonly Crossing[] {
  const { patch } = contrast;
  const smooth = smoothedAlong(contrast, Math.round((SMOOTHED_MM * patch.perMm) / 2));
  const found: Crossing[] = [];
  for (let column = 0; column < patch.columns; column++) {
    const along = (column + 0.5) / patch.perMm;
    const { x } = placeIn(patch.piece, along, patch.piece.width / 2);
    const half: Half = x < seamX ? 'white' : 'black';
    const values = Float32Array.from({ length: patch.rows }, (_, row) => smooth[row * patch.columns + column]!);
    const crossing = crossingIn(values, patch.perMm, contrast.least[half], through);
    if (crossing) found.push({ half, along, ...crossing });
  }
  return found;
}

function crossingIn(
  values: Float32Array,
  perMm: number,
  least: number,
  through: number | undefined,
): Pick<Crossing, 'top' | 'bottom' | 'contrast' | 'touches'> | undefined {
  const runs = runsAbove(values, least, Math.round(GAP_MM * perMm));
  const wide = runs.filter(([from, to]) => (to - from) / perMm >= LEAST_WIDTH_MM);
  const at = through === undefined ? undefined : through * perMm;
  const here = at === undefined ? wide : wide.filter(([from, to]) => from <= at && to >= at);
  const [first, ...rest] = here;
  if (first === undefined) return undefined;
  const [from, to] = rest.reduce((best, run) => (sumOf(values, run) > sumOf(values, best) ? run : best), first);
  const sorted = Float32Array.from(values.subarray(from, to)).sort();
  const contrast = sorted[Math.floor(sorted.length / 2)]!;
  const level = Math.max(least, EDGE * contrast);
  let [top, bottom] = [from, to];
  while (top < bottom && values[top]! < level) top++;
  while (bottom > top && values[bottom - 1]! < level) bottom--;
  if ((bottom - top) / perMm < LEAST_WIDTH_MM) return undefined;
  return { top: top / perMm, bottom: bottom / perMm, contrast, touches: top === 0 || bottom === values.length };
}

type Run = readonly [from: number, to: number];

/** Runs of values above a level, gaps up to `gap` long closed. */
function runsAbove(values: Float32Array, level: number, gap: number): readonly Run[] {
  const runs: [number, number][] = [];
  for (let at = 0; at < values.length; at++) {
    if (values[at]! < level) continue;
    const last = runs.at(-1);
    if (last && at - last[1] <= gap) last[1] = at + 1;
    else runs.push([at, at + 1]);
  }
  return runs;
}

function sumOf(values: Float32Array, [from, to]: Run): number {
  let sum = 0;
  for (let at = from; at < to; at++) sum += values[at]!;
  return sum;
}

/** Means over columns up to `reach` away: a running sum a row. */
function smoothedAlong({ patch, distance }: Contrast, reach: number): Float32Array {
  const { columns, rows } = patch;
  const out = new Float32Array(distance.length);
  for (let row = 0; row < rows; row++) {
    const line = distance.subarray(row * columns, (row + 1) * columns);
    let [sum, from, to] = [0, 0, 0];
    for (let column = 0; column < columns; column++) {
      while (to < Math.min(columns, column + reach + 1)) sum += line[to++]!;
      while (from < column - reach) sum -= line[from++]!;
      out[row * columns + column] = sum / (to - from);
    }
  }
  return out;
}
