import { appliedMetric, localMetric } from '../optics/local-metric.ts';
import { compose } from './composition.ts';
import type { SeenView } from './composition-views.ts';
import type { LookedLayer } from './learning-data.ts';
import type { Posterior } from './posterior.ts';

/** How both colours of something go with the unknowns of a shelf. */
export interface ColourSlopes {
  /** Places in theta that they depend on. */
  readonly columns: Int32Array;
  /** 6 × columns, row by row: three axes over white, three over black, in the local ΔE00 metric of each view. */
  readonly slopes: Float64Array;
}

/** The slopes of a cup that is looked through by itself. Throws: RangeError, naming it, if a material is not one of the shelf. */
export function colourSlopes({ state, looker }: Posterior, layer: LookedLayer): ColourSlopes {
  const composition = compose(state.unknowns, [layer]);
  const { white, black } = looker.views(composition, state, { white: true, black: true });
  const { columns } = composition;
  const half = VIEW_AXES * columns.length;
  const slopes = new Float64Array(2 * half);
  measure(white!, slopes.subarray(0, half), columns.length);
  measure(black!, slopes.subarray(half), columns.length);
  return { columns, slopes };
}

const VIEW_AXES = 3;

function measure({ lab, slopes }: SeenView, into: Float64Array, count: number): void {
  const metric = localMetric(lab);
  for (let c = 0; c < count; c++) {
    const axes = appliedMetric(metric, slopes[c]!, slopes[count + c]!, slopes[2 * count + c]!);
    for (let axis = 0; axis < VIEW_AXES; axis++) into[axis * count + c] = axes[axis]!;
  }
}
