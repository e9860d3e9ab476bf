/**
 * What the model alone says of a composition that is asked about.
 *
 * @packageDocumentation
 */
import type { Lab } from '../optics/cielab.ts';
import type { TwoViews } from '../optics/cup-body.ts';
import { inverseMetric, localMetric } from '../optics/local-metric.ts';
import { CAMERA_SD } from '../tables/material-priors.ts';
import { biasOf } from './camera-bias.ts';
import { compose } from './composition.ts';
import { compositionPoint } from './composition-point.ts';
import type { CompositionLooker } from './composition-views.ts';
import type { LookedLayer } from './learning-data.ts';
import { BOTH_AXES, type Placed, type ThetaSlopes, VIEW_AXES } from './linear-views.ts';
import type { TheoryErrors } from './look-covariance.ts';
import type { ShelfState } from './shelf-state.ts';

/** A cup, or a bait, that is asked about. */
export interface BelievedCup {
  /** The near one first; with streaks the cups that run in them, each as thick as the bait. */
  readonly layers: readonly LookedLayer[];
  /** Shares of cups that run in streaks. */
  readonly streaks?: readonly number[];
  /** Width of a streak, mm; unset: the usual. */
  readonly streakMm?: number;
  /** `TaughtLook.cup`: the cup was, or is, poured, with dose errors of its own of which its looks tell. Unset: what the doses should give. */
  readonly cup?: string;
  /** As this camera shows it: with what it is believed to be off by, and as much in doubt of that as there is. */
  readonly camera?: string;
}

/** Both views by the model alone, and how to find their slopes. */
export interface ModelViews extends Placed {
  readonly model: TwoViews;
  /** Slopes in the metric of two colours, those of a camera among them. */
  slopes(at: TwoViews): ThetaSlopes;
  /** What a camera adds, ΔE00 along each axis; nought where none was named. */
  readonly bias: readonly [number, number, number];
  /** A camera was named that has made none of the looks. */
  readonly isBiasUnknown: boolean;
}

/**
 * Asks the model.
 *
 * Throws: RangeError, naming it, if a material is not one of the shelf; as `compose`.
 */
export function modelViews(
  state: ShelfState,
  looker: CompositionLooker,
  { layers, streaks, streakMm, cup, camera }: BelievedCup,
  means: TheoryErrors['means'],
): ModelViews {
  const { unknowns } = state;
  const composition = compose(unknowns, layers, streaks, streakMm);
  const { white, black } = looker.views(composition, state, { white: true, black: true });
  const at = camera === undefined ? undefined : unknowns.cameras.get(camera);
  return {
    model: { overWhite: white!.lab, overBlack: black!.lab },
    errors: { point: compositionPoint(unknowns, layers, streaks), means, ...(cup === undefined ? {} : { cup }) },
    bias: biasOf(state, camera),
    isBiasUnknown: camera !== undefined && at === undefined,
    slopes: ({ overWhite, overBlack }) => {
      const own = composition.columns.length;
      const columns =
        at === undefined ? composition.columns : Int32Array.of(...composition.columns, at, at + 1, at + 2);
      const count = columns.length;
      const rows = new Float64Array(BOTH_AXES * count);
      for (const [side, { slopes }] of [white!, black!].entries()) {
        const M = localMetric(side === 0 ? overWhite : overBlack);
        const first = side * VIEW_AXES * count;
        for (let column = 0; column < own; column++) {
          const [L, a, b] = [slopes[column]!, slopes[own + column]!, slopes[2 * own + column]!];
          rows[first + column] = M[0]! * L + M[1]! * a + M[2]! * b;
          rows[first + count + column] = M[4]! * a + M[5]! * b;
          rows[first + 2 * count + column] = M[8]! * b;
        }
        if (at === undefined) continue;
        for (let axis = 0; axis < VIEW_AXES; axis++) rows[first + axis * count + own + axis] = CAMERA_SD;
      }
      return { columns, slopes: rows };
    },
  };
}

/** A colour moved by so much ΔE00 along each of its axes; no lighter than white and no darker than black. */
export function moved(lab: Lab, x: number, y: number, z: number): Lab {
  const back = inverseMetric(localMetric(lab));
  return {
    L: Math.min(100, Math.max(0, lab.L + back[0]! * x + back[1]! * y + back[2]! * z)),
    a: lab.a + back[4]! * y + back[5]! * z,
    b: lab.b + back[8]! * z,
  };
}
