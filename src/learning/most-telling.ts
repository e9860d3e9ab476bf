/**
 * Which look would teach most: of many that could be made, those that leave least doubt in colours that are asked for often.
 *
 * With Σ what is believed of the unknowns, J the slopes of a look's colours and N what looking is off by, a look leaves
 * Σ − Σ Jᵀ (J Σ Jᵀ + N)⁻¹ J Σ. With A the slopes of n mixtures, it takes tr[A Σ Jᵀ (J Σ Jᵀ + N)⁻¹ J Σ Aᵀ] / n off their squared doubt.
 *
 * @packageDocumentation
 */
import type { ColourSlopes } from './colour-slopes.ts';
import { semidefiniteFactor } from './semidefinite-factor.ts';
import { AXES, gram, product, sandwich, solveLower, transposed } from './six-axes.ts';

/** What is asked. */
export interface TellingQuestion {
  /** What is believed of the unknowns: n × n, row by row. */
  readonly covariance: Float64Array;
  /** Looks that could be made. */
  readonly candidates: readonly ColourSlopes[];
  /** What is to be known better. */
  readonly mixtures: readonly ColourSlopes[];
  /** Of what else the doubt is to be told, though no look is chosen for it. */
  readonly watched: readonly ColourSlopes[];
  /** What a look is off by: 6 × 6, row by row, in the axes of `ColourSlopes`. */
  readonly noise: Float64Array;
}

/** A look that tells much. */
export interface Telling {
  /** Place among the candidates. */
  readonly candidate: number;
  /** What it takes off the squared doubt of the mixtures, ΔE00², both views together, on average. */
  readonly gain: number;
  readonly before: Doubts;
  readonly after: Doubts;
}

/** Squared doubts, ΔE00², each of the view that is in more doubt. */
export interface Doubts {
  readonly mixtures: Float64Array;
  readonly watched: Float64Array;
}

/**
 * The most telling looks, each chosen as if those before it had been made; no candidate twice.
 *
 * @param count at most so many
 * @param least no more once the next one gains less than this, ΔE00²
 */
export function mostTelling(question: TellingQuestion, count: number, least: number): readonly Telling[] {
  const teller = new Teller(question);
  const chosen: Telling[] = [];
  const open = new Set(question.candidates.keys());
  let before = teller.doubts();
  while (chosen.length < count) {
    const best = teller.best(open);
    if (best === undefined || best.gain < least) break;
    open.delete(best.candidate);
    teller.learn(question.candidates[best.candidate]!);
    const after = teller.doubts();
    chosen.push({ ...best, before, after });
    before = after;
  }
  return chosen;
}

/** What each candidate by itself gains, ΔE00². */
export function gainOfEach(question: TellingQuestion): Float64Array {
  const teller = new Teller(question);
  return Float64Array.from(question.candidates, (look) => teller.gain(look));
}

class Teller {
  private readonly question: TellingQuestion;
  private readonly n: number;
  /** Σ */
  private readonly sigma: Float64Array;
  /** G = Σ Aᵀ A Σ: what a look gains is tr[(J Σ Jᵀ + N)⁻¹ J G Jᵀ]. */
  private readonly gains: Float64Array;

  constructor(question: TellingQuestion) {
    this.question = question;
    this.n = Math.round(Math.sqrt(question.covariance.length));
    this.sigma = question.covariance.slice();
    this.gains = this.gainsOf();
  }

  best(open: ReadonlySet<number>): { readonly candidate: number; readonly gain: number } | undefined {
    let best: { readonly candidate: number; readonly gain: number } | undefined;
    for (const candidate of open) {
      const gain = this.gain(this.question.candidates[candidate]!);
      if (best === undefined || gain > best.gain) best = { candidate, gain };
    }
    return best;
  }

  doubts(): Doubts {
    const doubt = (of: ColourSlopes): number => {
      const C = sandwich(of, this.sigma, this.n);
      const traced = (from: number): number => [0, 1, 2].reduce((sum, axis) => sum + C[(from + axis) * (AXES + 1)]!, 0);
      return Math.max(traced(0), traced(3));
    };
    const { mixtures, watched } = this.question;
    return { mixtures: Float64Array.from(mixtures, doubt), watched: Float64Array.from(watched, doubt) };
  }

  /** Takes a look as made: Σ and G lose what it tells. */
  learn(look: ColourSlopes): void {
    const { n, sigma, gains } = this;
    const V = this.told(look);
    // Aᵀ A V, then W = Σ Aᵀ A V.
    const { AtAV, AV } = this.seenBy(V);
    const W = product(sigma, AtAV, n);
    const VtMV = gram(AV);
    const VG = new Float64Array(n * AXES);
    for (let i = 0; i < n; i++)
      for (let k = 0; k < AXES; k++) {
        let sum = -W[i * AXES + k]!;
        for (let j = 0; j < AXES; j++) sum += 0.5 * V[i * AXES + j]! * VtMV[j * AXES + k]!;
        VG[i * AXES + k] = sum;
      }
    for (let i = 0; i < n; i++)
      for (let j = 0; j < n; j++) {
        let told = 0;
        let change = 0;
        for (let k = 0; k < AXES; k++) {
          const [Vi, Vj] = [V[i * AXES + k]!, V[j * AXES + k]!];
          told += Vi * Vj;
          change += VG[i * AXES + k]! * Vj + Vi * VG[j * AXES + k]!;
        }
        sigma[i * n + j]! -= told;
        gains[i * n + j]! += change;
      }
  }

  gain(look: ColourSlopes): number {
    const P = this.spread(look);
    const Q = sandwich(look, this.gains, this.n);
    const L = semidefiniteFactor(P, AXES);
    // tr(P⁻¹ Q) = tr(L⁻¹ Q L⁻ᵀ)
    const half = solveLower(L, Q);
    const whole = solveLower(L, transposed(half));
    let trace = 0;
    for (let axis = 0; axis < AXES; axis++) trace += whole[axis * (AXES + 1)]!;
    return trace / Math.max(1, this.question.mixtures.length);
  }

  /** J Σ Jᵀ + N */
  private spread(look: ColourSlopes): Float64Array {
    const P = sandwich(look, this.sigma, this.n);
    return P.map((value, at) => value + this.question.noise[at]!);
  }

  /** V = Σ Jᵀ L⁻ᵀ with L Lᵀ = J Σ Jᵀ + N, n × 6: Σ loses V Vᵀ. */
  private told(look: ColourSlopes): Float64Array {
    const { n, sigma } = this;
    const { columns, slopes } = look;
    const L = semidefiniteFactor(this.spread(look), AXES);
    const V = new Float64Array(n * AXES);
    for (let i = 0; i < n; i++)
      for (let axis = 0; axis < AXES; axis++) {
        let sum = 0;
        for (let c = 0; c < columns.length; c++)
          sum += sigma[i * n + columns[c]!]! * slopes[axis * columns.length + c]!;
        for (let k = 0; k < axis; k++) sum -= L[axis * AXES + k]! * V[i * AXES + k]!;
        V[i * AXES + axis] = sum / L[axis * (AXES + 1)]!;
      }
    return V;
  }

  /** A V, and Aᵀ A V, n × 6. */
  private seenBy(V: Float64Array): { readonly AV: readonly Float64Array[]; readonly AtAV: Float64Array } {
    const AtAV = new Float64Array(this.n * AXES);
    const AV: Float64Array[] = [];
    for (const { columns, slopes } of this.question.mixtures) {
      const count = columns.length;
      for (let axis = 0; axis < AXES; axis++) {
        const row = new Float64Array(AXES);
        for (let c = 0; c < count; c++)
          for (let k = 0; k < AXES; k++) row[k]! += slopes[axis * count + c]! * V[columns[c]! * AXES + k]!;
        for (let c = 0; c < count; c++)
          for (let k = 0; k < AXES; k++) AtAV[columns[c]! * AXES + k]! += slopes[axis * count + c]! * row[k]!;
        AV.push(row);
      }
    }
    return { AV, AtAV };
  }

  private gainsOf(): Float64Array {
    const { n, sigma } = this;
    const G = new Float64Array(n * n);
    const row = new Float64Array(n);
    for (const { columns, slopes } of this.question.mixtures)
      for (let axis = 0; axis < AXES; axis++) {
        row.fill(0);
        for (let c = 0; c < columns.length; c++) {
          const slope = slopes[axis * columns.length + c]!;
          const from = columns[c]! * n;
          if (slope !== 0) for (let i = 0; i < n; i++) row[i]! += slope * sigma[from + i]!;
        }
        for (let i = 0; i < n; i++) {
          const value = row[i]!;
          if (value !== 0) for (let j = 0; j <= i; j++) G[i * n + j]! += value * row[j]!;
        }
      }
    for (let i = 0; i < n; i++) for (let j = 0; j < i; j++) G[j * n + i] = G[i * n + j]!;
    return G;
  }
}
