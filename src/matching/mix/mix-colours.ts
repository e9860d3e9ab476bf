import { cieRootSlope } from '../../optics/cie-root.ts';
import { type Lab, labFromTristimulus, labOf } from '../../optics/cielab.ts';
import { effectiveDepth, layerOver } from '../../optics/kubelka-munk.ts';
import { flakedSlopes, layerSlopes, type Slopes } from '../../optics/layer-slopes.ts';
import { type LocalMetric, localMetric } from '../../optics/local-metric.ts';
import { BAND_COUNT } from '../../optics/spectrum.ts';
import { BESIDE_GLOSS } from '../../optics/surface.ts';
import { bookWeights } from '../../optics/tristimulus.ts';
import { BLACK_BACKING, WHITE_BACKING } from '../../tables/backings.ts';
import type { Light } from '../../tables/lights.ts';
import type { MixGoal, MixLayer, MixProblem } from './mix-problem.ts';

const { x: WX, y: WY, z: WZ, white: WHITE } = bookWeights('D65');
const THROUGH = (1 - BESIDE_GLOSS.k1) * (1 - BESIDE_GLOSS.k2);
const HELD = BESIDE_GLOSS.k2;
const NO_LAB: Lab = { L: 0, a: 0, b: 0 };

/** One look at a bait over one backing. */
interface View {
  readonly layers: readonly MixLayer[];
  readonly backing: number;
  readonly target: Lab;
  readonly off: Lab;
  readonly metric: LocalMetric;
  /** Reflectance as seen, and its slopes with K and S of each cup: cup by cup, band by band. */
  readonly R: Float64Array;
  /** Effective depth of each layer, band by band: of no concern to the backing, so the first view of a goal finds it for both. */
  readonly depths: Float64Array;
  readonly findsDepths: boolean;
  readonly byK: Float64Array;
  readonly byS: Float64Array;
}

/**
 * Colours of cups that lie in layers over white and over black, and their slopes with K and S: the inner loop of matching.
 *
 * K and S of the cups stand in the fields of that name and are written there by the caller.
 */
export class MixColours {
  /** Per mm, a spectrum for each cup. */
  readonly K: readonly Float64Array[];
  readonly S: readonly Float64Array[];
  /** Three for each view. */
  readonly rows: number;
  readonly targets: readonly Lab[];
  /** Part of what the model is off by that is added, 0 to 1; written by the caller. */
  offShare = 1;
  private readonly views: readonly View[];
  /** Slopes of the residuals, row by row, with K and S of each cup, band by band. */
  private readonly rowsByK: Float64Array;
  private readonly rowsByS: Float64Array;
  private readonly stride: number;

  constructor({ cups, goals }: Pick<MixProblem, 'cups' | 'goals'>) {
    this.K = cups.map(() => new Float64Array(BAND_COUNT));
    this.S = cups.map(() => new Float64Array(BAND_COUNT));
    this.stride = cups.length * BAND_COUNT;
    this.views = goals.flatMap((goal) => viewsOf(goal, this.stride));
    this.targets = this.views.map(({ target }) => target);
    this.rows = 3 * this.views.length;
    this.rowsByK = new Float64Array(this.rows * this.stride);
    this.rowsByS = new Float64Array(this.rows * this.stride);
  }

  /** Colour of each view. */
  labs(): readonly Lab[] {
    return this.views.map((view) => {
      this.see(view);
      return labSeen(view, this.offShare);
    });
  }

  /** Colour of each view under another light, relative to its white, with what the model is off by as by daylight. */
  labsUnder(light: Light): readonly Lab[] {
    return this.views.map((view) => {
      this.see(view);
      return plusOff(labOf(view.R, light), view, this.offShare);
    });
  }

  /** Metric of a view: see `localMetric`. */
  metricOf(view: number): LocalMetric {
    return this.views[view]!.metric;
  }

  /** Sum of the squared residuals. */
  squares(): number {
    let sum = 0;
    for (const [index, lab] of this.labs().entries()) {
      const { metric, target } = this.views[index]!;
      for (let row = 0; row < 3; row++)
        sum += measured(metric, row, lab.L - target.L, lab.a - target.a, lab.b - target.b) ** 2;
    }
    return sum;
  }

  /** Writes the residuals, and keeps their slopes with K and S for `addColumn`. */
  derive(residuals: Float64Array): void {
    const weights = new Float64Array(9);
    for (const [index, view] of this.views.entries()) {
      this.look(view);
      const lab = labSeen(view, this.offShare);
      const { metric, target, R, byK, byS } = view;
      tristimulusSlopes(metric, R, weights);
      for (let row = 0; row < 3; row++) {
        const at = 3 * index + row;
        residuals[at] = measured(metric, row, lab.L - target.L, lab.a - target.a, lab.b - target.b);
        const byX = weights[3 * row]!;
        const byY = weights[3 * row + 1]!;
        const byZ = weights[3 * row + 2]!;
        for (let i = 0; i < this.stride; i++) {
          const band = i % BAND_COUNT;
          const weight = byX * WX[band]! + byY * WY[band]! + byZ * WZ[band]!;
          this.rowsByK[at * this.stride + i] = weight * byK[i]!;
          this.rowsByS[at * this.stride + i] = weight * byS[i]!;
        }
      }
    }
  }

  /** Adds, to column `j` of a matrix of `count` columns, how the residuals change with a change of a cup's K and S. */
  addColumn(
    column: { readonly cup: number; readonly K: Float64Array; readonly S: Float64Array },
    count: number,
    j: number,
    into: Float64Array,
  ): void {
    const { cup, K, S } = column;
    for (let row = 0; row < this.rows; row++) {
      const from = row * this.stride + cup * BAND_COUNT;
      let sum = 0;
      for (let band = 0; band < BAND_COUNT; band++) {
        sum += this.rowsByK[from + band]! * K[band]! + this.rowsByS[from + band]! * S[band]!;
      }
      into[row * count + j]! += sum;
    }
  }

  /** Reflectance of a view as seen. */
  private see({ layers, backing, R, depths, findsDepths }: View): void {
    for (let band = 0; band < BAND_COUNT; band++) {
      let inside = backing;
      for (let i = layers.length - 1; i >= 0; i--) {
        const { cup, thickness, flakes } = layers[i]!;
        const K = this.K[cup]![band]!;
        const S = this.S[cup]![band]!;
        if (flakes && flakes.length > 0) {
          flakedSlopes(K, S, thickness, flakes, band, inside, SCRATCH);
          inside = SCRATCH[0]!;
        } else {
          const at = i * BAND_COUNT + band;
          if (findsDepths) depths[at] = effectiveDepth(K, S, thickness);
          inside = layerOver(K, S, depths[at]!, inside);
        }
      }
      R[band] = (THROUGH * inside) / (1 - HELD * inside);
    }
  }

  /** Reflectance of a view as seen, and its slopes with K and S of each cup, band by band. */
  private look({ layers, backing, R, byK, byS }: View): void {
    byK.fill(0);
    byS.fill(0);
    const slopes: Slopes = SCRATCH;
    const last = layers.length - 1;
    for (let band = 0; band < BAND_COUNT; band++) {
      let inside = backing;
      for (let i = last; i >= 0; i--) {
        const { cup, thickness, flakes } = layers[i]!;
        const K = this.K[cup]![band]!;
        const S = this.S[cup]![band]!;
        if (flakes && flakes.length > 0) flakedSlopes(K, S, thickness, flakes, band, inside, slopes);
        else layerSlopes(K, S, thickness, inside, slopes);
        inside = slopes[0]!;
        // What was behind is seen through this layer.
        if (i < last) {
          for (let at = band; at < this.stride; at += BAND_COUNT) {
            byK[at]! *= slopes[3]!;
            byS[at]! *= slopes[3]!;
          }
        }
        byK[cup * BAND_COUNT + band]! += slopes[1]!;
        byS[cup * BAND_COUNT + band]! += slopes[2]!;
      }
      const outward = 1 - HELD * inside;
      R[band] = (THROUGH * inside) / outward;
      const bySurface = THROUGH / (outward * outward);
      for (let at = band; at < this.stride; at += BAND_COUNT) {
        byK[at]! *= bySurface;
        byS[at]! *= bySurface;
      }
    }
  }
}

const SCRATCH: Slopes = new Float64Array(4);

function viewsOf(goal: MixGoal, stride: number): View[] {
  const depths = new Float64Array(goal.layers.length * BAND_COUNT);
  const view = (backing: number, target: Lab, off: Lab = NO_LAB): View => ({
    layers: goal.layers,
    depths,
    findsDepths: backing === WHITE_BACKING,
    backing,
    target,
    off,
    metric: localMetric(target),
    R: new Float64Array(BAND_COUNT),
    byK: new Float64Array(stride),
    byS: new Float64Array(stride),
  });
  const white = view(WHITE_BACKING, goal.overWhite, goal.offWhite);
  return goal.overBlack ? [white, view(BLACK_BACKING, goal.overBlack, goal.offBlack)] : [white];
}

function labSeen({ R, off }: View, share: number): Lab {
  return plusOff(labFromTristimulus(sums(R)), { off }, share);
}

function plusOff(lab: Lab, { off }: Pick<View, 'off'>, share: number): Lab {
  return { L: lab.L + share * off.L, a: lab.a + share * off.a, b: lab.b + share * off.b };
}

function sums(R: Float64Array): { X: number; Y: number; Z: number } {
  let X = 0;
  let Y = 0;
  let Z = 0;
  for (let band = 0; band < BAND_COUNT; band++) {
    const value = R[band]!;
    X += WX[band]! * value;
    Y += WY[band]! * value;
    Z += WZ[band]! * value;
  }
  return { X, Y, Z };
}

function measured(metric: Float64Array, row: number, dL: number, da: number, db: number): number {
  return metric[3 * row]! * dL + metric[3 * row + 1]! * da + metric[3 * row + 2]! * db;
}

/** How the three residuals of a view change with X, Y and Z, row by row. */
function tristimulusSlopes(metric: Float64Array, R: Float64Array, into: Float64Array): void {
  const { X, Y, Z } = sums(R);
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
