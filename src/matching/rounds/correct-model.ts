import { type Amounts, amountOf, type CupState, concentrations } from '../../cup/ledger.ts';
import type { Lab } from '../../optics/cielab.ts';
import { deltaE00 } from '../../optics/delta-e00.ts';
import type { OpticalModel } from '../../optics/optical-model.ts';
import { BAND_COUNT } from '../../optics/spectrum.ts';
import { boundedQuadratic } from '../mix/bounded-quadratic.ts';
import { baseOfCup, type MaterialOf } from '../mix/cup-model.ts';
import { MixColours } from '../mix/mix-colours.ts';
import { normalEquations } from '../search/refine-doses.ts';
import type { SeenViews } from '../target/target-part.ts';
import { type Contents, contentsOf, likeness } from './likeness.ts';

/** A round: what was in the cup, and what it looked like. */
export interface Observation {
  /** Among the rounds of its cup, from 1. */
  readonly number?: number;
  /** Before the pour. */
  readonly cup: CupState;
  readonly thicknessMm: number;
  readonly seen: SeenViews;
  /** Nothing is logged between the round before and this one. */
  readonly unlogged?: true;
  /** It was looked at again, and stands. */
  readonly checked?: true;
}

/** What the rounds say of the model. */
export interface ModelCorrection {
  /** Effective strength of each material seen: 1 as on the shelf, 1.2 a fifth stronger. */
  readonly strengths: Amounts;
  /** What stays of the difference after that, in Lab: to be added to every prediction. */
  readonly offWhite: Lab;
  readonly offBlack: Lab;
  /** What was in the cup in which that was seen last: it holds as much as another cup is like that one (see `likeness`). */
  readonly learntFrom?: Contents;
  /** ΔE00 between what was seen last and what the corrected model makes of it, the larger of the views that were seen. */
  readonly miss: number;
  /** What was seen last was looked at again, and stands: that the model misses it is no slip of the eye. */
  readonly checked?: true;
  /** ΔE00 between rounds and predictions, root mean square: by the shelf alone, and corrected. */
  readonly before: number;
  readonly after: number;
}

/** How far the shelf is trusted. */
export interface CorrectionPriors {
  /** One standard deviation of a material's strength, as a fraction; unset: 0.2, a label's and a drop's error together (common practice, no source). */
  readonly strength?: number;
  /** One standard deviation of looking or measuring, ΔE00; unset: 0.8. */
  readonly looking?: number;
  /** One standard deviation of what is not a matter of strength, ΔE00; unset: a quarter of what the shelf expects. */
  readonly model?: number;
}

/** Nothing is known yet. */
export const NO_CORRECTION: ModelCorrection = {
  strengths: {},
  offWhite: { L: 0, a: 0, b: 0 },
  offBlack: { L: 0, a: 0, b: 0 },
  miss: 0,
  before: 0,
  after: 0,
};

/** Beyond half or one and a half times its strength a material is another one. */
const WEAKEST = Math.log(0.5);
const STRONGEST = Math.log(1.5);
const MOST_STEPS = 12;
// An offset of this many standard deviations is as much as the shelf expects to be off by: beyond it, something else is wrong.
const MOST_OFF = 4;

/**
 * Learns from the rounds how strong the materials in the cup really are: the most probable strengths (log-normal about those of
 * the shelf, bounded) and offsets in Lab, bounded too and less in a cup that is less like the last, given what was seen.
 *
 * Damped least squares on the rounds and the priors together. Without a colour seen it returns `NO_CORRECTION`.
 */
export function correctModel(
  observations: readonly Observation[],
  shelf: MaterialOf,
  optics: OpticalModel,
  priors: CorrectionPriors = {},
): ModelCorrection {
  const rounds = observations.filter(
    ({ seen: { overWhite, overBlack } }) => overWhite !== undefined || overBlack !== undefined,
  );
  if (rounds.length === 0) return NO_CORRECTION;
  return new Correction(rounds, shelf, optics, priors).solve();
}

interface RoundModel {
  readonly plasticK: Float64Array;
  readonly plasticS: Float64Array;
  readonly contents: Amounts;
}

class Correction {
  private readonly names: readonly string[];
  private readonly rounds: readonly RoundModel[];
  private readonly colours: MixColours;
  private readonly seen: readonly { readonly lab: Lab; readonly white: boolean; readonly known: boolean }[];
  private readonly deviations: Float64Array;
  private readonly looking: number;
  /** How much each round's cup is like the last one. */
  private readonly shares: readonly number[];
  private readonly last: Contents;
  private readonly shelf: MaterialOf;
  private readonly checked: boolean;

  constructor(
    observations: readonly Observation[],
    shelf: MaterialOf,
    optics: OpticalModel,
    { strength = 0.2, looking = 0.8, model }: CorrectionPriors,
  ) {
    this.shelf = shelf;
    this.checked = observations.at(-1)!.checked === true;
    this.looking = looking;
    const bases = observations.map(({ cup }) => baseOfCup(cup, shelf, optics));
    this.rounds = bases.map(({ plastic }, index) => ({
      plasticK: plastic.absorption,
      plasticS: plastic.scattering,
      contents: concentrations(observations[index]!.cup),
    }));
    const all = observations.map(({ cup }) => contentsOf(cup));
    this.last = all.at(-1)!;
    this.shares = all.map((each) => likeness(each, this.last, shelf));
    const used = new Set(
      this.rounds.flatMap(({ contents }) => Object.keys(contents).filter((name) => contents[name]! > 0)),
    );
    this.names = [...used].filter((name) => shelf(name).constants !== undefined).sort();
    // A view that was not seen is carried with weight 0, so that the rows stay in their order.
    this.colours = new MixColours({
      cups: bases.map(({ plastic }) => plastic),
      goals: observations.map(({ thicknessMm, seen }, cup) => ({
        layers: [{ cup, thickness: thicknessMm, flakes: bases[cup]!.flakes }],
        overWhite: seen.overWhite ?? seen.overBlack!,
        overBlack: seen.overBlack ?? seen.overWhite!,
      })),
      optics,
    });
    this.seen = observations.flatMap(({ seen }) => [
      { lab: seen.overWhite ?? seen.overBlack!, white: true, known: seen.overWhite !== undefined },
      { lab: seen.overBlack ?? seen.overWhite!, white: false, known: seen.overBlack !== undefined },
    ]);
    const expected = this.names.map((name) => shelf(name).expectedDeltaE);
    const rest =
      model ??
      0.25 *
        (expected.length > 0 ? Math.sqrt(expected.reduce((sum, each) => sum + each * each, 0) / expected.length) : 2);
    this.deviations = new Float64Array(this.names.length + 6);
    for (const [j] of this.names.entries()) this.deviations[j] = strength;
    for (let i = 0; i < 6; i++) this.deviations[this.names.length + i] = rest * (i % 3 === 0 ? 1 : 1.5);
  }

  solve(): ModelCorrection {
    const n = this.deviations.length;
    const all = Array.from({ length: n }, (_, j) => j);
    const low = new Float64Array(n);
    const high = new Float64Array(n);
    const H = new Float64Array(n * n);
    const g = new Float64Array(n);
    let at = new Float64Array(n);
    let now = this.equations(at);
    let squares = lengthOf(now.residuals);
    const before = this.rootMeanSquare(at);
    let damping = 1e-4;
    for (let step = 0; step < MOST_STEPS; step++) {
      normalEquations(now.slopes, now.residuals, n, all, H, g);
      for (let j = 0; j < n; j++) {
        H[j * n + j]! *= 1 + damping;
        const isStrength = j < this.names.length;
        const most = MOST_OFF * this.deviations[j]!;
        low[j] = (isStrength ? WEAKEST : -most) - at[j]!;
        high[j] = (isStrength ? STRONGEST : most) - at[j]!;
      }
      const move = new Float64Array(n);
      boundedQuadratic(H, g, low, high, move);
      const tried = at.map((value, j) => value + move[j]!);
      const next = this.equations(tried);
      const left = lengthOf(next.residuals);
      if (left < squares) {
        const settled = squares - left < 1e-5 * squares;
        at = tried;
        now = next;
        squares = left;
        damping = Math.max(1e-6, damping / 5);
        if (settled) break;
      } else if (damping > 1e6) break;
      else damping *= 10;
    }
    const after = this.rootMeanSquare(at);
    this.tie(at);
    return {
      strengths: Object.fromEntries(this.names.map((name, j) => [name, Math.exp(at[j]!)])),
      offWhite: offsetAt(at, this.names.length),
      offBlack: offsetAt(at, this.names.length + 3),
      learntFrom: this.last,
      miss: Math.max(...this.lastMisses(at).map(({ deltaE }) => deltaE)),
      ...(this.checked ? { checked: true as const } : {}),
      before,
      after,
    };
  }

  /**
   * Moves the offsets so that the corrected model makes of the last cup what was seen of it: all predictions are then differences from
   * that. By as much of what is left as is not looking's own spread, three times its variance for three coordinates (the positive part of
   * James and Stein 1961, citation from memory, as a method of moments).
   */
  private tie(at: Float64Array): void {
    for (const { view, from, left } of this.lastMisses(at)) {
      const metric = this.colours.metricOf(view);
      const size = Math.hypot(
        ...[0, 3, 6].map((row) => metric[row]! * left.L + metric[row + 1]! * left.a + metric[row + 2]! * left.b),
      );
      if (size === 0) continue;
      const sure = Math.max(0, 1 - 3 * (this.looking / size) ** 2);
      for (const [i, off] of [left.L, left.a, left.b].entries()) {
        const most = MOST_OFF * this.deviations[from + i]!;
        at[from + i] = Math.min(most, Math.max(-most, at[from + i]! + sure * off));
      }
    }
  }

  /** What the corrected model misses the last look by, view by view as far as they were seen; `from`: where the view's offset begins. */
  private lastMisses(at: Float64Array): readonly { view: number; from: number; left: Lab; deltaE: number }[] {
    this.fill(at);
    const labs = this.colours.labs();
    return [this.seen.length - 2, this.seen.length - 1].flatMap((view) => {
      const { known, white, lab: seen } = this.seen[view]!;
      if (!known) return [];
      const from = this.names.length + (white ? 0 : 3);
      const made = plus(labs[view]!, offsetAt(at, from));
      const left = { L: seen.L - made.L, a: seen.a - made.a, b: seen.b - made.b };
      return [{ view, from, left, deltaE: deltaE00(made, seen) }];
    });
  }

  /** Puts the strengths into the cups. */
  private fill(at: Float64Array): void {
    for (const [cup, { plasticK, plasticS, contents }] of this.rounds.entries()) {
      const K = this.colours.K[cup]!;
      const S = this.colours.S[cup]!;
      K.set(plasticK);
      S.set(plasticS);
      this.colours.load[cup] = 0;
      for (const [j, name] of this.names.entries()) {
        const dose = amountOf(contents, name) * Math.exp(at[j]!);
        if (dose === 0) continue;
        this.colours.load[cup]! += dose;
        const { absorption, scattering } = this.shelf(name).constants!;
        for (let band = 0; band < BAND_COUNT; band++) {
          K[band]! += dose * absorption[band]!;
          S[band]! += dose * scattering[band]!;
        }
      }
    }
  }

  /** Residuals in standard deviations, of the rounds and then of the priors, and their slopes. */
  private equations(at: Float64Array): { residuals: Float64Array; slopes: Float64Array } {
    this.fill(at);
    const n = at.length;
    const strengths = this.names.length;
    const rows = this.colours.rows;
    const residuals = new Float64Array(rows + n);
    const slopes = new Float64Array((rows + n) * n);
    this.colours.derive(residuals);
    for (const [j, name] of this.names.entries()) {
      const { absorption, scattering } = this.shelf(name).constants!;
      for (const [cup, { contents }] of this.rounds.entries()) {
        const dose = amountOf(contents, name) * Math.exp(at[j]!);
        if (dose === 0) continue;
        const K = Float64Array.from(absorption, (value) => dose * value);
        const S = Float64Array.from(scattering, (value) => dose * value);
        this.colours.addColumn({ cup, K, S, load: dose }, n, j, slopes);
      }
    }
    for (const [view, { white, known }] of this.seen.entries()) {
      const metric = this.colours.metricOf(view);
      const from = strengths + (white ? 0 : 3);
      const share = this.shares[view >> 1]!;
      for (let row = 0; row < 3; row++) {
        const place = 3 * view + row;
        for (let i = 0; i < 3; i++) {
          residuals[place]! += share * metric[3 * row + i]! * at[from + i]!;
          slopes[place * n + from + i] = share * metric[3 * row + i]!;
        }
        const weight = known ? 1 / this.looking : 0;
        residuals[place]! *= weight;
        for (let j = 0; j < n; j++) slopes[place * n + j]! *= weight;
      }
    }
    for (let j = 0; j < n; j++) {
      residuals[rows + j] = at[j]! / this.deviations[j]!;
      slopes[(rows + j) * n + j] = 1 / this.deviations[j]!;
    }
    return { residuals, slopes };
  }

  private rootMeanSquare(at: Float64Array): number {
    this.fill(at);
    const strengths = this.names.length;
    let sum = 0;
    let count = 0;
    for (const [view, lab] of this.colours.labs().entries()) {
      const { known, white, lab: seen } = this.seen[view]!;
      if (!known) continue;
      const from = strengths + (white ? 0 : 3);
      sum += deltaE00(plus(lab, offsetAt(at, from)), seen) ** 2;
      count++;
    }
    return Math.sqrt(sum / count);
  }
}

function offsetAt(at: Float64Array, from: number): Lab {
  return { L: at[from]!, a: at[from + 1]!, b: at[from + 2]! };
}

function plus(lab: Lab, off: Lab): Lab {
  return { L: lab.L + off.L, a: lab.a + off.a, b: lab.b + off.b };
}

function lengthOf(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value * value, 0);
}
