/**
 * What the looks of a block are off by at some theta, and how that goes with theta.
 *
 * @packageDocumentation
 */
import { appliedMetric } from '../optics/local-metric.ts';
import { CAMERA_SD } from '../tables/material-priors.ts';
import type { Looker, SeenView } from './composition-views.ts';
import type { SeenBlock, SeenColour, SeenItem } from './shelf-problem.ts';
import type { ShelfState } from './shelf-state.ts';

const AXES = 3;

/** Rows: view by view of the block, three axes each, in the metric of the block. */
export interface BlockResiduals {
  /** Seen less what theta says. */
  readonly residuals: Float64Array;
  /** How what theta says goes with it: rows × the block's columns, row by row. */
  readonly slopes: Float64Array;
}

/**
 * Residuals and slopes of a block.
 *
 * @param result where they are written: what was found of the same block at another theta; unset: new
 */
export function blockResiduals(
  block: SeenBlock,
  looker: Looker,
  state: ShelfState,
  result: BlockResiduals = emptyResiduals(block),
): BlockResiduals {
  for (const item of block.items) {
    const views = looker.views(item.composition, state, {
      white: item.white !== undefined,
      black: item.black !== undefined,
    });
    if (item.white) addView(block, item, item.white, views.white!, state, result);
    if (item.black) addView(block, item, item.black, views.black!, state, result);
  }
  return result;
}

function emptyResiduals({ views, columns }: SeenBlock): BlockResiduals {
  const rows = AXES * views.length;
  return { residuals: new Float64Array(rows), slopes: new Float64Array(rows * columns.length) };
}

function addView(
  { columns }: SeenBlock,
  { places, camera, composition }: SeenItem,
  { lab, metric, view }: SeenColour,
  seen: SeenView,
  state: ShelfState,
  { residuals, slopes }: BlockResiduals,
): void {
  const off = appliedMetric(metric, lab.L - seen.lab.L, lab.a - seen.lab.a, lab.b - seen.lab.b);
  const first = AXES * view;
  const count = columns.length;
  const own = composition.columns.length;
  for (let column = 0; column < own; column++) {
    const L = seen.slopes[column]!;
    const a = seen.slopes[own + column]!;
    const b = seen.slopes[2 * own + column]!;
    const at = first * count + places[column]!;
    slopes[at] = metric[0]! * L + metric[1]! * a + metric[2]! * b;
    slopes[at + count] = metric[4]! * a + metric[5]! * b;
    slopes[at + 2 * count] = metric[8]! * b;
  }
  for (let axis = 0; axis < AXES; axis++) {
    residuals[first + axis] = off[axis]!;
    if (camera === undefined) continue;
    residuals[first + axis]! -= CAMERA_SD * state.theta[columns[camera + axis]!]!;
    slopes[(first + axis) * count + camera + axis] = CAMERA_SD;
  }
}
