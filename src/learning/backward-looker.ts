/**
 * How a number goes with theta that is known to go so with X, Y and Z of many compositions: from the colours back to the unknowns. Where no
 * slope of any single colour is wanted this takes a fraction of what `composition-views.ts` takes, for materials meet their curves once.
 *
 * @packageDocumentation
 */
import { crowdingFactor, crowdingLoad } from '../optics/optical-model.ts';
import { BAND_COUNT } from '../optics/spectrum.ts';
import { addTristimulus, bookWeights } from '../optics/tristimulus.ts';
import { BOTTLE_SD } from '../tables/material-priors.ts';
import type { ComposedLayer, ComposedStack, Composition } from './composition.ts';
import type { WantedViews } from './composition-views.ts';
import type { CardState, ShelfState } from './shelf-state.ts';
import type { ShelfUnknowns } from './shelf-unknowns.ts';
import { StackLooker, type ViewSlopes } from './stack-slopes.ts';

const OBSERVER = bookWeights('D65');
const { x: WX, y: WY, z: WZ } = OBSERVER;

/** X, Y, Z of each view, or how a number goes with them. */
export interface TwoTristimuli {
  readonly white: Float64Array;
  readonly black: Float64Array;
}

/** Looks at some compositions of one shelf, and then goes back from what it saw of them. */
export class BackwardLooker {
  private readonly unknowns: ShelfUnknowns;
  /** What was seen of each stack since the last `beginSome`, and of which it is the turn. */
  private readonly lookers: StackLooker[] = [];
  private turn = 0;
  /** How the number goes with each curve's place in ln K and ln S: material by material, band by band. */
  private readonly byLnK: Float64Array;
  private readonly byLnS: Float64Array;
  private readonly white = new Float64Array(BAND_COUNT);
  private readonly black = new Float64Array(BAND_COUNT);
  private readonly byK = new Float64Array(BAND_COUNT);
  private readonly byS = new Float64Array(BAND_COUNT);

  constructor(unknowns: ShelfUnknowns) {
    this.unknowns = unknowns;
    this.byLnK = new Float64Array(unknowns.materials.length * BAND_COUNT);
    this.byLnS = this.byLnK.slice();
  }

  /** Begins with a new number. */
  begin(): void {
    this.byLnK.fill(0);
    this.byLnS.fill(0);
  }

  /** Begins with compositions that are all looked at first, or all gone back from, in the same order at the same state. */
  beginSome(): void {
    this.turn = 0;
  }

  /** Writes what the next composition shows of the views that are wanted. */
  look({ stacks }: Composition, state: ShelfState, wanted: WantedViews, { white, black }: TwoTristimuli): void {
    white.fill(0);
    black.fill(0);
    for (const stack of stacks) {
      const looker = this.lookerFor(stack);
      looker.look(stack, state, wanted.white, wanted.black);
      if (wanted.white) addTristimulus(looker.white.R, stack.share, OBSERVER, white);
      if (wanted.black) addTristimulus(looker.black.R, stack.share, OBSERVER, black);
    }
  }

  /** Adds how the number goes with the next composition: by 0 with a view that was not looked at. */
  addBack({ stacks }: Composition, state: ShelfState, { white, black }: TwoTristimuli, gradient: Float64Array): void {
    for (const stack of stacks) {
      const looker = this.lookerFor(stack);
      spectrumOf(white, stack.share, this.white);
      spectrumOf(black, stack.share, this.black);
      addView(looker.white, this.white, state.white, state, gradient);
      addView(looker.black, this.black, state.black, state, gradient);
      for (const [l, layer] of stack.layers.entries()) this.addLayer(looker, layer, l * BAND_COUNT, state, gradient);
    }
  }

  /** Adds what all compositions together say of the curves of materials. */
  finish(gradient: Float64Array): void {
    for (const [i, { at, kModes, sModes }] of this.unknowns.materials.entries()) {
      addModes(this.byLnK, i * BAND_COUNT, kModes, at, gradient);
      addModes(this.byLnS, i * BAND_COUNT, sModes, at + kModes.length, gradient);
    }
  }

  private lookerFor({ layers }: ComposedStack): StackLooker {
    const place = this.turn++;
    const looker = this.lookers[place];
    if (looker && looker.mostLayers >= layers.length) return looker;
    const made = new StackLooker(layers.length);
    this.lookers[place] = made;
    return made;
  }

  private addLayer(
    { white, black, S: mixed }: StackLooker,
    { parts, load }: ComposedLayer,
    from: number,
    { materials, crowding }: ShelfState,
    gradient: Float64Array,
  ): void {
    const { byK, byS, byLnK, byLnS } = this;
    let crowded = 0;
    for (let band = 0; band < BAND_COUNT; band++) {
      const at = from + band;
      byK[band] = this.white[band]! * white.byK[at]! + this.black[band]! * black.byK[at]!;
      byS[band] = this.white[band]! * white.byS[at]! + this.black[band]! * black.byS[at]!;
      crowded += byS[band]! * mixed[at]!;
    }
    gradient[crowding.at]! -= crowdingLoad(load) * crowding.slope * crowded;
    const scatters = crowdingFactor({ crowding: crowding.value }, load);
    for (const { material, dose, bottle } of parts) {
      const { K, S, strength } = materials[material]!;
      const times = bottle === undefined ? dose : dose * strength;
      const to = material * BAND_COUNT;
      let sum = 0;
      for (let band = 0; band < BAND_COUNT; band++) {
        const k = times * byK[band]! * K[band]!;
        const s = times * scatters * byS[band]! * S[band]!;
        byLnK[to + band]! += k;
        byLnS[to + band]! += s;
        sum += k + s;
      }
      if (bottle !== undefined) gradient[this.unknowns.materials[material]!.bottle!]! += BOTTLE_SD * sum;
    }
  }
}

/** How the number goes with what a stack reflects of each band. */
function spectrumOf(byXYZ: Float64Array, share: number, into: Float64Array): void {
  const [X, Y, Z] = [share * byXYZ[0]!, share * byXYZ[1]!, share * byXYZ[2]!];
  for (let band = 0; band < BAND_COUNT; band++) into[band] = X * WX[band]! + Y * WY[band]! + Z * WZ[band]!;
}

/** Adds how the number goes with the card and the light's path, by one view. */
function addView(
  { byCard, byD, byS0 }: ViewSlopes,
  by: Float64Array,
  card: CardState,
  { d, s0 }: ShelfState,
  gradient: Float64Array,
): void {
  for (const { at, slope } of card.slopes) {
    let sum = 0;
    for (let band = 0; band < BAND_COUNT; band++) sum += by[band]! * byCard[band]! * slope[band]!;
    gradient[at]! += sum;
  }
  let sumD = 0;
  let sumS0 = 0;
  for (let band = 0; band < BAND_COUNT; band++) {
    sumD += by[band]! * byD[band]!;
    sumS0 += by[band]! * byS0[band]!;
  }
  gradient[d.at]! += d.slope * sumD;
  gradient[s0.at]! += s0.slope * sumS0;
}

function addModes(
  by: Float64Array,
  from: number,
  modes: readonly Float64Array[],
  at: number,
  gradient: Float64Array,
): void {
  for (const [j, mode] of modes.entries()) {
    let sum = 0;
    for (let band = 0; band < BAND_COUNT; band++) sum += by[from + band]! * mode[band]!;
    gradient[at + j]! += sum;
  }
}
