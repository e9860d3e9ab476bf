/**
 * What is seen of layers at some theta, band by band, and its slopes with all that theta can change.
 *
 * @packageDocumentation
 */
import { depthSlopes, flakedSlopes, type Slopes, slopesOver } from '../optics/layer-slopes.ts';
import { crowdingFactor, pathFactor, pathFactorSlope } from '../optics/optical-model.ts';
import { BAND_COUNT } from '../optics/spectrum.ts';
import { BESIDE_GLOSS } from '../optics/surface.ts';
import type { ComposedLayer, ComposedStack } from './composition.ts';
import type { ShelfState } from './shelf-state.ts';

/** Spectra of one view of a stack: its reflectance as seen beside the gloss, and the slopes of that. */
export interface ViewSlopes {
  readonly R: Float64Array;
  /** With K and S of each layer per mm, layer by layer. */
  readonly byK: Float64Array;
  readonly byS: Float64Array;
  readonly byCard: Float64Array;
  readonly byD: Float64Array;
  readonly byS0: Float64Array;
}

const THROUGH = (1 - BESIDE_GLOSS.k1) * (1 - BESIDE_GLOSS.k2);
const HELD = BESIDE_GLOSS.k2;
const DEPTH_NUMBERS = 3;

/** A place to look at stacks of so many layers: written over by the next look. */
export class StackLooker {
  /** K and S of each layer per mm, layer by layer: as mixed, S with its crowding, without the light's path. */
  readonly K: Float64Array;
  readonly S: Float64Array;
  readonly white: ViewSlopes;
  readonly black: ViewSlopes;
  private readonly factor = new Float64Array(BAND_COUNT);
  private readonly factorSlope = new Float64Array(BAND_COUNT);
  private readonly scattered = new Float64Array(BAND_COUNT);
  /** Of each layer's K′ and S′, which both views have in common: see `depthSlopes`. */
  private readonly depths: Float64Array;
  private readonly slopes: Slopes = new Float64Array(4);

  readonly mostLayers: number;

  constructor(mostLayers: number) {
    this.mostLayers = mostLayers;
    const stride = mostLayers * BAND_COUNT;
    this.K = new Float64Array(stride);
    this.S = new Float64Array(stride);
    this.depths = new Float64Array(DEPTH_NUMBERS * stride);
    this.white = viewSlopes(stride);
    this.black = viewSlopes(stride);
  }

  /** Looks at a stack over white, over black, or over both. */
  look({ layers }: ComposedStack, state: ShelfState, overWhite: boolean, overBlack: boolean): void {
    this.scattered.fill(0);
    for (const [l, layer] of layers.entries()) this.mix(layer, l * BAND_COUNT, state);
    const path = { d: state.d.value, s0: state.s0.value };
    for (let band = 0; band < BAND_COUNT; band++) {
      this.factor[band] = pathFactor(path, this.scattered[band]!);
      this.factorSlope[band] = pathFactorSlope(path, this.scattered[band]!);
    }
    for (const [l, { thicknessMm, flakes }] of layers.entries())
      if (flakes.length === 0) this.goDeep(l * BAND_COUNT, thicknessMm);
    if (overWhite) this.see(layers, state, state.white.reflectance, this.white);
    if (overBlack) this.see(layers, state, state.black.reflectance, this.black);
  }

  private mix({ parts, thicknessMm, load }: ComposedLayer, at: number, { materials, crowding }: ShelfState): void {
    const { K, S, scattered } = this;
    K.fill(0, at, at + BAND_COUNT);
    S.fill(0, at, at + BAND_COUNT);
    for (const { material, dose, bottle } of parts) {
      const state = materials[material]!;
      const times = bottle === undefined ? dose : dose * state.strength;
      for (let band = 0; band < BAND_COUNT; band++) {
        K[at + band]! += times * state.K[band]!;
        S[at + band]! += times * state.S[band]!;
      }
    }
    const crowded = crowdingFactor({ crowding: crowding.value }, load);
    for (let band = 0; band < BAND_COUNT; band++) {
      S[at + band]! *= crowded;
      scattered[band]! += S[at + band]! * thicknessMm;
    }
  }

  private goDeep(from: number, thicknessMm: number): void {
    const { K, S, factor, depths } = this;
    for (let band = 0; band < BAND_COUNT; band++) {
      const at = from + band;
      depthSlopes(K[at]! * factor[band]!, S[at]! * factor[band]!, thicknessMm, depths, DEPTH_NUMBERS * at);
    }
  }

  private see(layers: readonly ComposedLayer[], { d, s0 }: ShelfState, card: Float64Array, view: ViewSlopes): void {
    const { K, S, factor, factorSlope, scattered, depths, slopes } = this;
    for (let band = 0; band < BAND_COUNT; band++) {
      let inside = card[band]!;
      let byCard = 1;
      const path = factor[band]!;
      for (let l = layers.length - 1; l >= 0; l--) {
        const at = l * BAND_COUNT + band;
        const { thicknessMm, flakes } = layers[l]!;
        if (flakes.length === 0) slopesOver(K[at]! * path, S[at]! * path, depths, DEPTH_NUMBERS * at, inside, slopes);
        else flakedSlopes(K[at]! * path, S[at]! * path, thicknessMm, flakes, band, inside, slopes);
        inside = slopes[0]!;
        const behind = slopes[3]!;
        byCard *= behind;
        for (let deeper = at + BAND_COUNT; deeper < layers.length * BAND_COUNT; deeper += BAND_COUNT) {
          view.byK[deeper]! *= behind;
          view.byS[deeper]! *= behind;
        }
        view.byK[at] = slopes[1]!;
        view.byS[at] = slopes[2]!;
      }
      const outward = 1 - HELD * inside;
      const bySurface = THROUGH / (outward * outward);
      view.R[band] = (THROUGH * inside) / outward;
      view.byCard[band] = byCard * bySurface;
      // K′ = K · path and S′ = S · path of every layer go with the scattering of all of them together.
      let byFactor = 0;
      for (let at = band; at < layers.length * BAND_COUNT; at += BAND_COUNT)
        byFactor += view.byK[at]! * K[at]! + view.byS[at]! * S[at]!;
      byFactor *= bySurface;
      for (let l = 0; l < layers.length; l++) {
        const at = l * BAND_COUNT + band;
        view.byK[at]! *= bySurface * path;
        view.byS[at] = view.byS[at]! * bySurface * path + byFactor * factorSlope[band]! * layers[l]!.thicknessMm;
      }
      const cloudy = s0.value + scattered[band]!;
      view.byD[band] = (-byFactor * s0.value) / cloudy;
      view.byS0[band] = (-byFactor * d.value * scattered[band]!) / (cloudy * cloudy);
    }
  }
}

function viewSlopes(stride: number): ViewSlopes {
  const spectrum = (): Float64Array => new Float64Array(BAND_COUNT);
  return {
    R: spectrum(),
    byK: new Float64Array(stride),
    byS: new Float64Array(stride),
    byCard: spectrum(),
    byD: spectrum(),
    byS0: spectrum(),
  };
}
