/**
 * Colours of a composition at some theta, and their exact slopes with theta.
 *
 * @packageDocumentation
 */
import { cieRootSlope } from '../optics/cie-root.ts';
import { type Lab, labFromTristimulus } from '../optics/cielab.ts';
import { crowdingFactor, crowdingLoad } from '../optics/optical-model.ts';
import { BAND_COUNT } from '../optics/spectrum.ts';
import { addTristimulus, bookWeights } from '../optics/tristimulus.ts';
import { BOTTLE_SD } from '../tables/material-priors.ts';
import type { ComposedLayer, Composition } from './composition.ts';
import type { CardState, FigureState, ShelfState } from './shelf-state.ts';
import type { ShelfUnknowns } from './shelf-unknowns.ts';
import { StackLooker, type ViewSlopes } from './stack-slopes.ts';

const WEIGHTS = bookWeights('D65');
const { white: WHITE } = WEIGHTS;
/** X, Y and Z of a band, one spectrum after the other. */
const OBSERVER = [WEIGHTS.x, WEIGHTS.y, WEIGHTS.z];
const AXES = 3;

/** Which of the two views are wanted. */
export interface WantedViews {
  readonly white: boolean;
  readonly black: boolean;
}

/** One view: its colour, and 3 × columns of the composition, row by row: how L, a and b go with each unknown. */
export interface SeenView {
  readonly lab: Lab;
  readonly slopes: Float64Array;
}

/** The views that were wanted. */
export interface CompositionViews {
  readonly white?: SeenView;
  readonly black?: SeenView;
}

/** Says what compositions of one shelf look like at some theta. */
export interface Looker {
  views(composition: Composition, state: ShelfState, wanted: WantedViews): CompositionViews;
}

/** Looks at compositions of one shelf, with room that is made once. */
export class CompositionLooker implements Looker {
  private readonly unknowns: ShelfUnknowns;
  private readonly kWeights: readonly Float64Array[];
  private readonly sWeights: readonly Float64Array[];
  private stack = new StackLooker(1);
  private room = 1;
  private readonly byMaterial = new Float64Array(BAND_COUNT);
  private readonly sums = new Float64Array(AXES);

  constructor(unknowns: ShelfUnknowns) {
    this.unknowns = unknowns;
    const made = new Map<readonly Float64Array[], Float64Array>();
    const weightsOf = (modes: readonly Float64Array[]): Float64Array => {
      const weights = made.get(modes) ?? observerWeightsOf(modes);
      made.set(modes, weights);
      return weights;
    };
    this.kWeights = unknowns.materials.map(({ kModes }) => weightsOf(kModes));
    this.sWeights = unknowns.materials.map(({ sModes }) => weightsOf(sModes));
  }

  /** The colours of a composition and their slopes. New each time. */
  views(composition: Composition, state: ShelfState, wanted: WantedViews): CompositionViews {
    const count = composition.columns.length;
    const white = wanted.white ? { XYZ: new Float64Array(AXES), D: new Float64Array(AXES * count) } : undefined;
    const black = wanted.black ? { XYZ: new Float64Array(AXES), D: new Float64Array(AXES * count) } : undefined;
    for (const stack of composition.stacks) {
      if (stack.layers.length > this.room) {
        this.room = stack.layers.length;
        this.stack = new StackLooker(this.room);
      }
      this.stack.look(stack, state, wanted.white, wanted.black);
      if (white) this.add(this.stack.white, state.white, stack, composition, state, white);
      if (black) this.add(this.stack.black, state.black, stack, composition, state, black);
    }
    return { ...(white ? { white: seenView(white, count) } : {}), ...(black ? { black: seenView(black, count) } : {}) };
  }

  /** Adds a stack's share of X, Y and Z, and of their slopes. */
  private add(
    view: ViewSlopes,
    card: CardState,
    { layers, share }: { readonly layers: readonly ComposedLayer[]; readonly share: number },
    { columns, common }: Composition,
    state: ShelfState,
    { XYZ, D }: { readonly XYZ: Float64Array; readonly D: Float64Array },
  ): void {
    const count = columns.length;
    const first = state.unknowns.common;
    const addSums = (column: number, times: number): void => {
      for (let axis = 0; axis < AXES; axis++) D[axis * count + column]! += share * times * this.sums[axis]!;
    };
    this.sum(view.R);
    for (let axis = 0; axis < AXES; axis++) XYZ[axis]! += share * this.sums[axis]!;
    for (const { at, slope } of card.slopes) {
      for (let band = 0; band < BAND_COUNT; band++) this.byMaterial[band] = view.byCard[band]! * slope[band]!;
      this.sum(this.byMaterial);
      addSums(common + at - first, 1);
    }
    const addFigure = ({ at, slope }: FigureState, by: Float64Array): void => {
      this.sum(by);
      addSums(common + at - first, slope);
    };
    addFigure(state.d, view.byD);
    addFigure(state.s0, view.byS0);
    for (const [l, layer] of layers.entries()) {
      this.sumProduct(view.byS, this.stack.S, l * BAND_COUNT);
      addSums(common + state.crowding.at - first, -crowdingLoad(layer.load) * state.crowding.slope);
      this.addLayer(view, layer, l * BAND_COUNT, share, state, D, count);
    }
  }

  /** Adds what the materials of a layer do. */
  private addLayer(
    { byK, byS }: ViewSlopes,
    { parts, load }: ComposedLayer,
    from: number,
    share: number,
    { materials, crowding }: ShelfState,
    D: Float64Array,
    count: number,
  ): void {
    const crowded = crowdingFactor({ crowding: crowding.value }, load);
    for (const { material, dose, column, bottle } of parts) {
      const { K, S, strength } = materials[material]!;
      const times = share * dose * (bottle === undefined ? 1 : strength);
      const { kModes, sModes } = this.unknowns.materials[material]!;
      const spectrum = this.byMaterial;
      for (let band = 0; band < BAND_COUNT; band++) spectrum[band] = times * byK[from + band]! * K[band]!;
      addModes(spectrum, this.kWeights[material]!, kModes.length, D, column, count);
      if (bottle !== undefined) this.addBottle(spectrum, D, bottle, count);
      for (let band = 0; band < BAND_COUNT; band++) spectrum[band] = times * crowded * byS[from + band]! * S[band]!;
      addModes(spectrum, this.sWeights[material]!, sModes.length, D, column + kModes.length, count);
      if (bottle !== undefined) this.addBottle(spectrum, D, bottle, count);
    }
  }

  private addBottle(spectrum: Float64Array, D: Float64Array, column: number, count: number): void {
    this.sum(spectrum);
    for (let axis = 0; axis < AXES; axis++) D[axis * count + column]! += BOTTLE_SD * this.sums[axis]!;
  }

  /** X, Y and Z of a spectrum. */
  private sum(spectrum: Float64Array): void {
    this.sums.fill(0);
    addTristimulus(spectrum, 1, WEIGHTS, this.sums);
  }

  private sumProduct(one: Float64Array, other: Float64Array, from: number): void {
    for (let band = 0; band < BAND_COUNT; band++) this.byMaterial[band] = one[from + band]! * other[from + band]!;
    this.sum(this.byMaterial);
  }
}

/** Each curve times what the observer takes of each band: mode by mode, X, Y, Z. */
function observerWeightsOf(modes: readonly Float64Array[]): Float64Array {
  const weights = new Float64Array(modes.length * AXES * BAND_COUNT);
  let at = 0;
  for (const mode of modes)
    for (const observer of OBSERVER)
      for (let band = 0; band < BAND_COUNT; band++) weights[at++] = observer[band]! * mode[band]!;
  return weights;
}

function addModes(
  spectrum: Float64Array,
  weights: Float64Array,
  modes: number,
  D: Float64Array,
  column: number,
  count: number,
): void {
  for (let mode = 0; mode < modes; mode++) {
    const x = mode * AXES * BAND_COUNT;
    let X = 0;
    let Y = 0;
    let Z = 0;
    for (let band = 0; band < BAND_COUNT; band++) {
      const value = spectrum[band]!;
      X += value * weights[x + band]!;
      Y += value * weights[x + BAND_COUNT + band]!;
      Z += value * weights[x + 2 * BAND_COUNT + band]!;
    }
    D[column + mode]! += X;
    D[count + column + mode]! += Y;
    D[2 * count + column + mode]! += Z;
  }
}

/** From X, Y, Z and their slopes, which are used up, to L, a, b and theirs. */
function seenView({ XYZ, D }: { XYZ: Float64Array; D: Float64Array }, count: number): SeenView {
  const [X, Y, Z] = [XYZ[0]!, XYZ[1]!, XYZ[2]!];
  const fx = cieRootSlope(X / WHITE.X) / WHITE.X;
  const fy = cieRootSlope(Y);
  const fz = cieRootSlope(Z / WHITE.Z) / WHITE.Z;
  for (let column = 0; column < count; column++) {
    const x = fx * D[column]!;
    const y = fy * D[count + column]!;
    const z = fz * D[2 * count + column]!;
    D[column] = 116 * y;
    D[count + column] = 500 * (x - y);
    D[2 * count + column] = 200 * (y - z);
  }
  return { lab: labFromTristimulus({ X, Y, Z }), slopes: D };
}
