import { cieRootSlope } from '../../optics/cie-root.ts';
import { type Lab, labFromTristimulus } from '../../optics/cielab.ts';
import type { TwoViews } from '../../optics/cup-body.ts';
import { type LocalMetric, localMetric } from '../../optics/local-metric.ts';
import type { OpticalModel } from '../../optics/optical-model.ts';
import { BAND_COUNT } from '../../optics/spectrum.ts';
import { stackReflectance } from '../../optics/stack.ts';
import { bookWeights, tristimulus } from '../../optics/tristimulus.ts';
import type { MixGoal, MixLayer } from './mix-problem.ts';

const { white: WHITE } = bookWeights('D65');

/** One look at a bait over one backing. */
export interface View {
  readonly layers: readonly MixLayer[];
  readonly backing: Float64Array;
  readonly target: Lab;
  readonly over: keyof TwoViews;
  readonly metric: LocalMetric;
  /** Reflectance as seen, and its slopes with K and S of each cup: cup by cup, band by band. */
  readonly R: Float64Array;
  /** K′, S′ and effective depth of each layer, band by band: of no concern to the backing, so the first view of a goal finds them for both. */
  readonly absorbed: Float64Array;
  readonly scattered: Float64Array;
  readonly depths: Float64Array;
  readonly isFirst: boolean;
  readonly byK: Float64Array;
  readonly byS: Float64Array;
}

/** The looks that a goal asks for, over white and over black in turn. */
export function viewsOf(goal: MixGoal, stride: number, { backings }: OpticalModel): View[] {
  const absorbed = new Float64Array(goal.layers.length * BAND_COUNT);
  const scattered = new Float64Array(goal.layers.length * BAND_COUNT);
  const depths = new Float64Array(goal.layers.length * BAND_COUNT);
  const view = (backing: keyof OpticalModel['backings'], over: keyof TwoViews, target: Lab): View => ({
    layers: goal.layers,
    absorbed,
    scattered,
    depths,
    isFirst: backing === 'white',
    backing: stackReflectance([], backings[backing]),
    target,
    over,
    metric: localMetric(target),
    R: new Float64Array(BAND_COUNT),
    byK: new Float64Array(stride),
    byS: new Float64Array(stride),
  });
  const white = view('white', 'overWhite', goal.overWhite);
  return goal.overBlack ? [white, view('black', 'overBlack', goal.overBlack)] : [white];
}

/** Colour of a view by the model alone. */
export function labSeen({ R }: View): Lab {
  return labFromTristimulus(tristimulus(R));
}

/** A colour with what the model is off by in a view. */
export function plusOff(lab: Lab, { over }: Pick<View, 'over'>, offsets: TwoViews | undefined): Lab {
  if (offsets === undefined) return lab;
  const { L, a, b } = offsets[over];
  return { L: lab.L + L, a: lab.a + a, b: lab.b + b };
}

/** A difference in Lab by one row of a metric. */
export function measured(metric: Float64Array, row: number, dL: number, da: number, db: number): number {
  return metric[3 * row]! * dL + metric[3 * row + 1]! * da + metric[3 * row + 2]! * db;
}

/** How the three residuals of a view change with X, Y and Z, row by row. */
export function tristimulusSlopes(metric: Float64Array, R: Float64Array, into: Float64Array): void {
  const { X, Y, Z } = tristimulus(R);
  const fx = cieRootSlope(X / WHITE.X) / WHITE.X;
  const fy = cieRootSlope(Y);
  const fz = cieRootSlope(Z / WHITE.Z) / WHITE.Z;
  for (let row = 0; row < 3; row++) {
    const byL = metric[3 * row]!;
    const byA = metric[3 * row + 1]!;
    const byB = metric[3 * row + 2]!;
    into[3 * row] = 500 * byA * fx;
    into[3 * row + 1] = (116 * byL - 500 * byA + 200 * byB) * fy;
    into[3 * row + 2] = -200 * byB * fz;
  }
}
