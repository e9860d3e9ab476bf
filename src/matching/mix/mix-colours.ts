import { type Lab, labOf } from '../../optics/cielab.ts';
import type { TwoViews } from '../../optics/cup-body.ts';
import { effectiveDepth, layerOver } from '../../optics/kubelka-munk.ts';
import { flakedSlopes, layerSlopes, type Slopes } from '../../optics/layer-slopes.ts';
import type { LocalMetric } from '../../optics/local-metric.ts';
import { crowdingFactor, type OpticalModel } from '../../optics/optical-model.ts';
import { BAND_COUNT } from '../../optics/spectrum.ts';
import { BESIDE_GLOSS } from '../../optics/surface.ts';
import { bookWeights } from '../../optics/tristimulus.ts';
import type { Light } from '../../tables/lights.ts';
import type { MixLayer, MixProblem } from './mix-problem.ts';
import { labSeen, measured, plusOff, tristimulusSlopes, type View, viewsOf } from './mix-view.ts';

const { x: WX, y: WY, z: WZ } = bookWeights('D65');
const THROUGH = (1 - BESIDE_GLOSS.k1) * (1 - BESIDE_GLOSS.k2);
const HELD = BESIDE_GLOSS.k2;

/**
 * Colours of cups that lie in layers over white and over black, and their slopes with K and S: the inner loop of matching.
 *
 * What the parts of the cups add up to stands in the fields `K`, `S` and `load` and is written there by the caller.
 */
export class MixColours {
  /** Per mm, a spectrum for each cup. */
  readonly K: readonly Float64Array[];
  readonly S: readonly Float64Array[];
  /** Colouring material in each cup, g/ml. */
  readonly load: Float64Array;
  /** Three for each view. */
  readonly rows: number;
  readonly targets: readonly Lab[];
  /** What is added, in Lab, to what the model shows: of one goal alone, written by the caller (see `MixProblem.offsets`). */
  offsets: ((model: TwoViews) => TwoViews) | undefined;
  private readonly views: readonly View[];
  /** Slopes of the residuals, row by row, with K and S of each cup, band by band. */
  private readonly rowsByK: Float64Array;
  private readonly rowsByS: Float64Array;
  private readonly stride: number;
  private readonly optics: OpticalModel;
  /** What S of each cup is multiplied by as material crowds in it, and what comes of that. */
  private readonly crowded: Float64Array;
  private readonly seenS: readonly Float64Array[];
  private readonly factors = new Float64Array(BAND_COUNT);
  private readonly factorSlopes = new Float64Array(BAND_COUNT);

  constructor({ cups, goals, optics }: Pick<MixProblem, 'cups' | 'goals' | 'optics'>) {
    this.optics = optics;
    this.load = new Float64Array(cups.length);
    this.crowded = new Float64Array(cups.length);
    this.seenS = cups.map(() => new Float64Array(BAND_COUNT));
    this.K = cups.map(() => new Float64Array(BAND_COUNT));
    this.S = cups.map(() => new Float64Array(BAND_COUNT));
    this.stride = cups.length * BAND_COUNT;
    this.views = goals.flatMap((goal) => viewsOf(goal, this.stride, optics));
    this.targets = this.views.map(({ target }) => target);
    this.rows = 3 * this.views.length;
    this.rowsByK = new Float64Array(this.rows * this.stride);
    this.rowsByS = new Float64Array(this.rows * this.stride);
  }

  /** Colour of each view. */
  labs(): readonly Lab[] {
    this.crowd();
    for (const view of this.views) this.see(view);
    return this.labsHere();
  }

  /** Colour of each view under another light, relative to its white, with what the model is off by as by daylight. */
  labsUnder(light: Light): readonly Lab[] {
    this.crowd();
    for (const view of this.views) this.see(view);
    const offsets = this.offsetsHere();
    return this.views.map((view) => plusOff(labOf(view.R, light), view, offsets));
  }

  /** Colours of the reflectances that the views have now. */
  private labsHere(): readonly Lab[] {
    const offsets = this.offsetsHere();
    return this.views.map((view) => plusOff(labSeen(view), view, offsets));
  }

  /** What is added to the views as they were seen last. */
  offsetsHere(): TwoViews | undefined {
    if (this.offsets === undefined) return undefined;
    const [white, black = white] = this.views as readonly [View, View?];
    const overWhite = labSeen(white);
    return this.offsets({ overWhite, overBlack: black === white ? overWhite : labSeen(black) });
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
    this.crowd();
    const weights = new Float64Array(9);
    for (const view of this.views) this.look(view);
    const labs = this.labsHere();
    for (const [index, view] of this.views.entries()) {
      const lab = labs[index]!;
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

  /** Adds, to column `j` of a matrix of `count` columns, how the residuals change with a change of what a cup adds up to. */
  addColumn(
    column: { readonly cup: number; readonly K: Float64Array; readonly S: Float64Array; readonly load: number },
    count: number,
    j: number,
    into: Float64Array,
  ): void {
    const { cup, K, S, load } = column;
    const crowded = this.crowded[cup]!;
    // More load takes from the S of all that is in the cup.
    const taken = this.optics.crowding * load;
    const all = this.S[cup]!;
    for (let row = 0; row < this.rows; row++) {
      const from = row * this.stride + cup * BAND_COUNT;
      let sum = 0;
      for (let band = 0; band < BAND_COUNT; band++) {
        sum +=
          this.rowsByK[from + band]! * K[band]! +
          this.rowsByS[from + band]! * crowded * (S[band]! - taken * all[band]!);
      }
      into[row * count + j]! += sum;
    }
  }

  /** Finds what is left of S of each cup as material crowds in it. */
  private crowd(): void {
    for (let cup = 0; cup < this.load.length; cup++) {
      const factor = crowdingFactor(this.optics, this.load[cup]!);
      this.crowded[cup] = factor;
      const [S, seen] = [this.S[cup]!, this.seenS[cup]!];
      if (factor === 1) seen.set(S);
      else for (let band = 0; band < BAND_COUNT; band++) seen[band] = factor * S[band]!;
    }
  }

  /** K′/K of a bait, which is S′/S, band by band, and its slope with Σ S X: see `pathFactor`. */
  private path(layers: readonly MixLayer[]): void {
    const { factors, factorSlopes } = this;
    const { d, s0 } = this.optics.path;
    factors.fill(0);
    for (const { cup, thickness } of layers) {
      const S = this.seenS[cup]!;
      const part = thickness / s0;
      for (let band = 0; band < BAND_COUNT; band++) factors[band]! += part * S[band]!;
    }
    for (let band = 0; band < BAND_COUNT; band++) {
      const left = 1 / (1 + factors[band]!);
      factors[band] = 1 - d * left;
      factorSlopes[band] = (d / s0) * left * left;
    }
  }

  /** K′, S′ and effective depth of each layer, for both views of a goal. */
  private enter({ layers, absorbed, scattered, depths }: View): void {
    this.path(layers);
    const { factors } = this;
    for (let i = 0; i < layers.length; i++) {
      const { cup, thickness, flakes } = layers[i]!;
      const [K, S] = [this.K[cup]!, this.seenS[cup]!];
      const isPlain = !flakes || flakes.length === 0;
      for (let band = 0, at = i * BAND_COUNT; band < BAND_COUNT; band++, at++) {
        absorbed[at] = factors[band]! * K[band]!;
        scattered[at] = factors[band]! * S[band]!;
        if (isPlain) depths[at] = effectiveDepth(absorbed[at]!, scattered[at]!, thickness);
      }
    }
  }

  /** Reflectance of a view as seen. */
  private see(view: View): void {
    if (view.isFirst) this.enter(view);
    const { layers, backing, R, absorbed, scattered, depths } = view;
    for (let band = 0; band < BAND_COUNT; band++) {
      let inside = backing[band]!;
      for (let i = layers.length - 1; i >= 0; i--) {
        const { thickness, flakes } = layers[i]!;
        const at = i * BAND_COUNT + band;
        const S = scattered[at]!;
        if (flakes && flakes.length > 0) {
          flakedSlopes(absorbed[at]!, S, thickness, flakes, band, inside, SCRATCH);
          inside = SCRATCH[0]!;
        } else inside = layerOver(absorbed[at]!, S, depths[at]!, inside);
      }
      R[band] = (THROUGH * inside) / (1 - HELD * inside);
    }
  }

  /** Reflectance of a view as seen, and its slopes with K and S of each cup, band by band. */
  private look({ layers, backing, R, byK, byS }: View): void {
    byK.fill(0);
    byS.fill(0);
    this.path(layers);
    const { factors } = this;
    const slopes: Slopes = SCRATCH;
    const last = layers.length - 1;
    for (let band = 0; band < BAND_COUNT; band++) {
      let inside = backing[band]!;
      for (let i = last; i >= 0; i--) {
        const { cup, thickness, flakes } = layers[i]!;
        const K = factors[band]! * this.K[cup]![band]!;
        const S = factors[band]! * this.seenS[cup]![band]!;
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
    this.outOfPath(layers, byK, byS);
  }

  /** Makes slopes with K′ and S′ slopes with K and S: S of any layer changes those of all. */
  private outOfPath(layers: readonly MixLayer[], byK: Float64Array, byS: Float64Array): void {
    const { factors, factorSlopes } = this;
    for (let band = 0; band < BAND_COUNT; band++) {
      let byFactor = 0;
      for (let cup = 0, at = band; at < this.stride; cup++, at += BAND_COUNT) {
        byFactor += byK[at]! * this.K[cup]![band]! + byS[at]! * this.seenS[cup]![band]!;
        byK[at]! *= factors[band]!;
        byS[at]! *= factors[band]!;
      }
      const byScattered = byFactor * factorSlopes[band]!;
      for (let i = 0; i < layers.length; i++)
        byS[layers[i]!.cup * BAND_COUNT + band]! += byScattered * layers[i]!.thickness;
    }
  }
}

const SCRATCH: Slopes = new Float64Array(4);
