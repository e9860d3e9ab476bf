import type { Lab } from '../../optics/cielab.ts';
import type { TwoViews } from '../../optics/cup-body.ts';
import { deltaE00 } from '../../optics/delta-e00.ts';
import { crowdingFactor, type OpticalModel } from '../../optics/optical-model.ts';
import { BAND_COUNT } from '../../optics/spectrum.ts';
import type { Light } from '../../tables/lights.ts';
import { sumsOf } from './cup-model.ts';
import { backWithin, excess, type JointBound } from './joint-bounds.ts';
import { MixColours } from './mix-colours.ts';
import type { MixCup, MixProblem } from './mix-problem.ts';

/** Residuals and their slopes at some doses: `rows` of differences to the target in units of ΔE00, by candidates. */
export interface MixSlopes {
  readonly residuals: Float64Array;
  /** rows × candidates, row by row. */
  readonly slopes: Float64Array;
}

/** What the parts of a cup, or of a change of it, add up to. */
interface Sums {
  readonly K: Float64Array;
  readonly S: Float64Array;
  readonly load: number;
}

/** A problem made ready to be asked many times. */
export class Mix {
  readonly count: number;
  readonly rows: number;
  readonly most: Float64Array;
  readonly optics: OpticalModel;
  private readonly problem: MixProblem;
  private held: TwoViews | undefined;
  private readonly together: readonly JointBound[];
  private readonly colours: MixColours;
  private readonly columns: readonly (Sums & { readonly cup: number })[];
  private readonly base: readonly Sums[];

  constructor(problem: MixProblem) {
    this.problem = problem;
    this.optics = problem.optics;
    this.together = problem.together ?? [];
    this.count = problem.candidates.length;
    this.most = Float64Array.from(problem.candidates, ({ most }) => most);
    this.colours = new MixColours(problem);
    this.rows = this.colours.rows;
    this.columns = problem.candidates.map(({ cup, constants, load }) => ({
      cup,
      load,
      K: Float64Array.from(constants.absorption),
      S: Float64Array.from(constants.scattering),
    }));
    this.base = problem.cups.map((cup) => this.partsOf(cup));
  }

  private partsOf(cup: MixCup): Sums {
    const { absorption, scattering } = sumsOf(cup, this.optics);
    return { K: absorption, S: scattering, load: cup.load ?? 0 };
  }

  /** Puts doses into the cups. Doses below 0 by rounding, and cups let down to below nothing, count as nothing. */
  private fill(doses: Float64Array): void {
    const { K, S, load } = this.colours;
    this.offsetAt(doses);
    for (const [cup, base] of this.base.entries()) {
      K[cup]!.set(base.K);
      S[cup]!.set(base.S);
      load[cup] = base.load;
    }
    for (let j = 0; j < this.count; j++) {
      const dose = doses[j]!;
      if (dose === 0) continue;
      const { cup, K: k, S: s, load: more } = this.columns[j]!;
      load[cup]! += dose * more;
      const cupK = K[cup]!;
      const cupS = S[cup]!;
      for (let band = 0; band < BAND_COUNT; band++) {
        cupK[band]! += dose * k[band]!;
        cupS[band]! += dose * s[band]!;
      }
    }
    for (let cup = 0; cup < this.base.length; cup++) {
      atLeastNothing(K[cup]!);
      atLeastNothing(S[cup]!);
      load[cup] = Math.max(0, load[cup]!);
    }
  }

  /** Runs with what the model is off by at some doses, whatever doses it is asked for then: for doses near those. */
  holding<T>(doses: Float64Array, run: () => T): T {
    const { offsets } = this.problem;
    if (!offsets || this.held) return run();
    this.labs(doses);
    const { overWhite, overBlack } = this.colours.offsetsHere()!;
    this.held = { overWhite: { ...overWhite }, overBlack: { ...overBlack } };
    try {
      return run();
    } finally {
      this.held = undefined;
    }
  }

  private offsetAt(doses: Float64Array): void {
    const { offsets } = this.problem;
    const { held } = this;
    if (held) {
      this.colours.offsets = () => held;
      return;
    }
    this.colours.offsets = offsets && ((model) => offsets(doses, model));
  }

  /** By how much doses are above what they may be together; 0 where they are not. */
  excess(doses: Float64Array): number {
    return excess(this.together, doses);
  }

  /** Whether doses are above what cups usually hold together. */
  isOverfull(doses: Float64Array): boolean {
    return excess(this.problem.usual ?? [], doses) > 0;
  }

  /** Moves doses of a set, where they are above what they may be together, to the nearest that are not (see `backWithin`). */
  keepTogether(doses: Float64Array, set: readonly number[], curvature: (index: number) => number): void {
    if (this.together.length > 0) backWithin(this.together, doses, set, this.most, curvature);
  }

  /** What every view is to be, over white and over black in turn. */
  get targets(): readonly Lab[] {
    return this.colours.targets;
  }

  /** Colours of every view, over white and over black in turn, with what the model is off by. */
  labs(doses: Float64Array): readonly Lab[] {
    this.fill(doses);
    return this.colours.labs();
  }

  /** Those colours under another light, relative to its white. */
  labsUnder(doses: Float64Array, light: Light): readonly Lab[] {
    this.fill(doses);
    return this.colours.labsUnder(light);
  }

  /** ΔE00 of every view to its target, over white and over black in turn. */
  differences(doses: Float64Array): readonly number[] {
    const { targets } = this.colours;
    return this.labs(doses).map((lab, index) => deltaE00(lab, targets[index]!));
  }

  /** The largest ΔE00 to the target. */
  worst(doses: Float64Array): number {
    return Math.max(...this.differences(doses));
  }

  /** The largest ΔE00, and a little of their mean: of two that are as bad at worst, the better one is lower. */
  score(doses: Float64Array): number {
    let worst = 0;
    let sum = 0;
    const differences = this.differences(doses);
    for (const difference of differences) {
      worst = Math.max(worst, difference);
      sum += difference;
    }
    return scoreOf(worst, sum / differences.length);
  }

  /** What the score of doses of a set is by the slopes at some: about right near those, and cheap. */
  scoreNear(doses: Float64Array, set: readonly number[]): (near: Float64Array) => number {
    const { residuals, slopes } = this.slopes(doses, set);
    const { count, rows } = this;
    return (near) => {
      let worst = 0;
      let sum = 0;
      for (let view = 0; view < rows; view += 3) {
        let squares = 0;
        for (let row = view; row < view + 3; row++) {
          let residual = residuals[row]!;
          for (const j of set) residual += slopes[row * count + j]! * (near[j]! - doses[j]!);
          squares += residual * residual;
        }
        worst = Math.max(worst, Math.sqrt(squares));
        sum += Math.sqrt(squares);
      }
      return scoreOf(worst, (3 * sum) / rows);
    };
  }

  /** Sum of squared residuals: about the sum of ΔE00² where the target is near. */
  squares(doses: Float64Array): number {
    this.fill(doses);
    return this.colours.squares();
  }

  /** Residuals, and slopes for the candidates of a set (all, where it is left out). */
  slopes(doses: Float64Array, set?: readonly number[]): MixSlopes {
    this.fill(doses);
    return this.slopesHere(set);
  }

  /**
   * The problem made linear about cups with other K and S than any doses give, per mm: residuals of no doses, and slopes.
   *
   * With the target's own K and S this is the first step of E. Allen, J. Opt. Soc. Am. 64:991 (1974), for two constants
   * (citation from memory): near the target all good recipes lie, so what is linear there finds them without a start.
   */
  linearAbout(cups: readonly MixCup[]): MixSlopes {
    const { K, S, load } = this.colours;
    this.offsetAt(new Float64Array(this.count));
    const there = cups.map((cup) => this.partsOf(cup));
    for (const [cup, parts] of there.entries()) {
      K[cup]!.set(parts.K);
      S[cup]!.set(parts.S);
      load[cup] = parts.load;
    }
    const away = there.map((parts, cup) => ({
      cup,
      K: Float64Array.from(this.base[cup]!.K, (K, band) => K - parts.K[band]!),
      S: Float64Array.from(this.base[cup]!.S, (S, band) => S - parts.S[band]!),
      load: this.base[cup]!.load - parts.load,
    }));
    const found = this.slopesHere();
    for (const column of away) this.colours.addColumn(column, 1, 0, found.residuals);
    return found;
  }

  private slopesHere(set?: readonly number[]): MixSlopes {
    const residuals = new Float64Array(this.rows);
    const slopes = new Float64Array(this.rows * this.count);
    this.colours.derive(residuals);
    const wanted = set ?? this.columns.keys();
    for (const j of wanted) this.colours.addColumn(this.columns[j]!, this.count, j, slopes);
    return { residuals, slopes };
  }

  /** The cups with doses in them. */
  cupsWith(doses: Float64Array): readonly MixCup[] {
    this.fill(doses);
    return this.problem.cups.map((_, cup) => {
      const load = this.colours.load[cup]!;
      const crowded = crowdingFactor(this.optics, load);
      return {
        absorption: Float64Array.from(this.colours.K[cup]!),
        scattering: Float64Array.from(this.colours.S[cup]!, (S) => crowded * S),
        load,
      };
    });
  }
}

function scoreOf(worst: number, mean: number): number {
  return worst + 0.1 * mean;
}

function atLeastNothing(values: Float64Array): void {
  for (let band = 0; band < BAND_COUNT; band++) if (values[band]! < 0) values[band] = 0;
}
