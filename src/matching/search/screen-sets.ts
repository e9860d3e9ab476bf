import type { MixSlopes } from '../mix/mix.ts';

/** A set of candidates that may do, with what a linear model says of it. */
export interface ScreenedSet {
  readonly set: readonly number[];
  /** Doses of the set. */
  readonly doses: readonly number[];
  /** Sum of squares that the linear model leaves. */
  readonly squares: number;
}

/** What is looked for. */
export interface Screening {
  /** Most candidates in a set. */
  readonly size: number;
  /** Sets kept of each size. */
  readonly keep: number;
  /** Candidates that count against `limit`, such as bottles that are not open yet. */
  readonly counts: (candidate: number) => boolean;
  readonly limit: number;
  /** Candidates of each of which some sets are kept as well, however the others do. */
  readonly among?: readonly number[];
}

/** Sets kept of each size with each candidate of `among`. */
const KEPT_AMONG = 3;

/**
 * Tries every set of up to `size` candidates on a linear model of the colours, and keeps the best of each size.
 *
 * Sets that would need a dose below 0 are left out: without that candidate they are tried anyway. Candidates are taken out of
 * the normal equations one after another, so that each set costs a few operations: forty candidates give 100 000 sets of four in
 * some hundredths of a second.
 */
export function screenSets(
  { residuals, slopes }: MixSlopes,
  count: number,
  screening: Screening,
): readonly ScreenedSet[] {
  const rows = residuals.length;
  const G = new Float64Array(count * count);
  const h = new Float64Array(count);
  let start = 0;
  for (let row = 0; row < rows; row++) {
    start += residuals[row]! ** 2;
    for (let i = 0; i < count; i++) {
      const slope = slopes[row * count + i]!;
      h[i]! += slope * residuals[row]!;
      for (let k = 0; k < count; k++) G[i * count + k]! += slope * slopes[row * count + k]!;
    }
  }
  const search = new Search(G, h, count, screening);
  search.extend(0, 0, start, 0);
  return search.found();
}

/** Depth-first search through sets, candidates rising. */
class Search {
  /** For each size the best of all, then the best with each candidate of `among`. */
  private readonly kept: ScreenedSet[][][];
  private readonly among: readonly number[];
  /** Normal equations with the candidates of the set taken out, one a depth. */
  private readonly G: Float64Array[];
  private readonly h: Float64Array[];
  private readonly set: number[] = [];
  private readonly count: number;
  private readonly screening: Screening;

  constructor(G: Float64Array, h: Float64Array, count: number, screening: Screening) {
    this.count = count;
    this.screening = screening;
    this.among = screening.among ?? [];
    this.kept = Array.from({ length: screening.size }, () => [[], ...this.among.map(() => [])]);
    this.G = Array.from({ length: screening.size }, (_, depth) => (depth === 0 ? G : new Float64Array(count * count)));
    this.h = Array.from({ length: screening.size }, (_, depth) => (depth === 0 ? h : new Float64Array(count)));
  }

  extend(depth: number, from: number, squares: number, counted: number): void {
    const { count } = this;
    const { size, counts, limit } = this.screening;
    const G = this.G[depth]!;
    const h = this.h[depth]!;
    for (let j = from; j < count; j++) {
      const after = counted + (counts(j) ? 1 : 0);
      const own = G[j * count + j]!;
      // What is left of a candidate that the others can stand for is rounding.
      if (after > limit || !(own > 1e-9 * this.G[0]![j * count + j]!)) continue;
      const left = squares - (h[j]! * h[j]!) / own;
      this.set.push(j);
      this.consider(depth, left);
      if (depth + 1 < size) {
        const nextG = this.G[depth + 1]!;
        const nextH = this.h[depth + 1]!;
        for (let k = j + 1; k < count; k++) {
          const part = G[k * count + j]! / own;
          nextH[k] = h[k]! - part * h[j]!;
          for (let l = depth + 2 < size ? j + 1 : k; l <= k; l++) {
            const value = G[k * count + l]! - part * G[l * count + j]!;
            nextG[k * count + l] = value;
            nextG[l * count + k] = value;
          }
        }
        this.extend(depth + 1, j + 1, left, after);
      }
      this.set.pop();
    }
  }

  private consider(depth: number, squares: number): void {
    const lists = this.kept[depth]!;
    // Of a hundred thousand sets nearly all end here.
    let isKept = false;
    for (let list = 0; list < lists.length && !isKept; list++) isKept = this.isFor(list, lists[list]!, squares);
    if (!isKept) return;
    const doses = this.dosesOf();
    if (doses === undefined) return;
    const found = { set: [...this.set], doses, squares: Math.max(0, squares) };
    for (const [list, kept] of lists.entries()) {
      if (!this.isFor(list, kept, squares)) continue;
      const place = kept.findIndex((other) => other.squares > found.squares);
      kept.splice(place < 0 ? kept.length : place, 0, found);
      if (kept.length > this.keepOf(list)) kept.pop();
    }
  }

  private keepOf(list: number): number {
    return list === 0 ? this.screening.keep : KEPT_AMONG;
  }

  private isFor(list: number, kept: readonly ScreenedSet[], squares: number): boolean {
    if (kept.length === this.keepOf(list) && squares >= kept.at(-1)!.squares) return false;
    return list === 0 || this.set.includes(this.among[list - 1]!);
  }

  /** Doses of the set, backwards through the equations; undefined if one is not above 0. */
  private dosesOf(): readonly number[] | undefined {
    const { count, set } = this;
    const doses = new Array<number>(set.length).fill(0);
    for (let depth = set.length - 1; depth >= 0; depth--) {
      const G = this.G[depth]!;
      const j = set[depth]!;
      let sum = -this.h[depth]![j]!;
      for (let later = depth + 1; later < set.length; later++) sum -= G[j * count + set[later]!]! * doses[later]!;
      const dose = sum / G[j * count + j]!;
      if (!(dose > 0)) return undefined;
      doses[depth] = dose;
    }
    return doses;
  }

  found(): readonly ScreenedSet[] {
    return [...new Set(this.kept.flat(2))];
  }
}
