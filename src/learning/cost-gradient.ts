import { cieRootSlope } from '../optics/cie-root.ts';
import { labFromTristimulus } from '../optics/cielab.ts';
import { appliedMetric } from '../optics/local-metric.ts';
import { bookWeights } from '../optics/tristimulus.ts';
import { CAMERA_SD } from '../tables/material-priors.ts';
import type { BackwardLooker, TwoTristimuli } from './backward-looker.ts';
import type { SeenBlock, SeenColour, SeenItem } from './shelf-problem.ts';
import type { ShelfState } from './shelf-state.ts';
import { weighed } from './whitened-block.ts';

const AXES = 3;
const { white: WHITE } = bookWeights('D65');

/** What was seen together, and Cholesky's factor of what its views have in common. */
interface FactoredBlock {
  readonly block: SeenBlock;
  readonly factor: Float64Array;
}

/**
 * Half the squares of all residuals of blocks, of which the gradient is added: the same as by `blockResiduals`, but for rounding.
 */
export function costGradient(
  blocks: readonly FactoredBlock[],
  looker: BackwardLooker,
  state: ShelfState,
  gradient: Float64Array,
): number {
  let cost = 0;
  looker.begin();
  for (const { block, factor } of blocks) {
    looker.beginSome();
    const seen = block.items.map((item) => lookedAt(item, looker, state));
    const residuals = new Float64Array(AXES * block.views.length);
    for (const [i, item] of block.items.entries()) writeResiduals(block, item, seen[i]!, state, residuals);
    cost += weighed(residuals, factor) / 2;
    looker.beginSome();
    for (const [i, item] of block.items.entries()) {
      goBack(block, item, seen[i]!, residuals, gradient);
      looker.addBack(item.composition, state, seen[i]!, gradient);
    }
  }
  looker.finish(gradient);
  return cost;
}

function lookedAt({ composition, white, black }: SeenItem, looker: BackwardLooker, state: ShelfState): TwoTristimuli {
  const seen = { white: new Float64Array(AXES), black: new Float64Array(AXES) };
  looker.look(composition, state, { white: white !== undefined, black: black !== undefined }, seen);
  return seen;
}

function writeResiduals(
  { columns }: SeenBlock,
  { white, black, camera }: SeenItem,
  seen: TwoTristimuli,
  { theta }: ShelfState,
  residuals: Float64Array,
): void {
  const write = ({ lab, metric, view }: SeenColour, [X, Y, Z]: Float64Array): void => {
    const made = labFromTristimulus({ X: X!, Y: Y!, Z: Z! });
    const off = appliedMetric(metric, lab.L - made.L, lab.a - made.a, lab.b - made.b);
    for (let axis = 0; axis < AXES; axis++)
      residuals[AXES * view + axis] =
        camera === undefined ? off[axis]! : off[axis]! - CAMERA_SD * theta[columns[camera + axis]!]!;
  };
  if (white) write(white, seen.white);
  if (black) write(black, seen.black);
}

/** Writes how the cost goes with X, Y, Z over what was seen of an item, and adds what its camera makes of it. */
function goBack(
  { columns }: SeenBlock,
  { white, black, camera }: SeenItem,
  seen: TwoTristimuli,
  pulls: Float64Array,
  gradient: Float64Array,
): void {
  const write = ({ metric, view }: SeenColour, XYZ: Float64Array): void => {
    const at = AXES * view;
    const [one, two, three] = [pulls[at]!, pulls[at + 1]!, pulls[at + 2]!];
    const byL = -metric[0]! * one;
    const byA = -(metric[1]! * one + metric[4]! * two);
    const byB = -(metric[2]! * one + metric[5]! * two + metric[8]! * three);
    XYZ[0] = (500 * byA * cieRootSlope(XYZ[0]! / WHITE.X)) / WHITE.X;
    XYZ[1] = (116 * byL - 500 * byA + 200 * byB) * cieRootSlope(XYZ[1]!);
    XYZ[2] = (-200 * byB * cieRootSlope(XYZ[2]! / WHITE.Z)) / WHITE.Z;
    if (camera !== undefined)
      for (let axis = 0; axis < AXES; axis++) gradient[columns[camera + axis]!]! -= CAMERA_SD * pulls[at + axis]!;
  };
  if (white) write(white, seen.white);
  if (black) write(black, seen.black);
}
