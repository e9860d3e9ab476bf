import { boundedQuadratic } from '../mix/bounded-quadratic.ts';
import type { Mix, MixSlopes } from '../mix/mix.ts';
import type { MixCup } from '../mix/mix-problem.ts';
import { normalEquations, refineDoses } from './refine-doses.ts';
import { type Screening, screenSets } from './screen-sets.ts';

/** Doses of a set of candidates, and what they come to. */
export interface FoundDoses {
  readonly set: readonly number[];
  /** Of all candidates: 0 outside the set. */
  readonly doses: Float64Array;
  /** As `Mix.score`. */
  readonly score: number;
}

/** What is searched for. */
export interface DoseSearch {
  /** Most candidates together. */
  readonly size: number;
  /** Candidates that count against `limit`; unset: none. */
  readonly counts?: (candidate: number) => boolean;
  readonly limit?: number;
  /** Sets of each size that are worked out from each place; unset: 8. */
  readonly keep?: number;
  /** Candidates of each of which some sets are worked out as well: bottles that a maker reaches for first. */
  readonly among?: readonly number[];
}

// ΔE00 below which looking further is no use to anybody.
const GOOD_ENOUGH = 0.1;
const MOST_ROUNDS = 4;
const SINGLES = 5;

/**
 * The sets of candidates that come nearest to the targets, best first, each with its doses.
 *
 * All sets of up to `size` are tried on linear models of the colours: about the places given (K and S of each cup), about
 * the best that all candidates together can do, and about the best single ones. The most promising are then worked out in full.
 */
export function findDoses(mix: Mix, places: readonly (readonly MixCup[])[], search: DoseSearch): readonly FoundDoses[] {
  if (mix.count === 0 || search.size === 0) return [];
  const finder = new Finder(mix, search);
  const models = places.map((place) => mix.linearAbout(place));
  const all = Array.from({ length: mix.count }, (_, j) => j);
  const [together] = models
    .map((model) => refineDoses(mix, all, linearDoses(model, mix, all)))
    .sort((one, other) => one.squares - other.squares);
  for (const model of models) finder.about(model);
  if (together) finder.about(mix.linearAbout(mix.cupsWith(together.doses)));
  // A candidate whose colour saturates looks hopeless on a line drawn from far away, and not on one drawn where it is in; and by itself it
  // may be all that is needed.
  const singles = finder.singles();
  if (finder.bestScore() > GOOD_ENOUGH) {
    for (const { doses } of singles.slice(0, SINGLES)) finder.about(mix.linearAbout(mix.cupsWith(doses)));
  }
  // The best so far is a better place to look from; again, while that finds anything better.
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const before = finder.bestScore();
    const [best] = finder.found();
    if (!best || before < GOOD_ENOUGH) break;
    finder.about(mix.linearAbout(mix.cupsWith(best.doses)));
    if (!(finder.bestScore() < before - 0.01)) break;
  }
  return finder.found();
}

/** Works sets out, each once, and keeps them. */
class Finder {
  private readonly tried = new Map<string, FoundDoses>();
  private readonly mix: Mix;
  private readonly screening: Screening;

  constructor(
    mix: Mix,
    { size, counts = () => false, limit = Number.POSITIVE_INFINITY, keep = 8, among = [] }: DoseSearch,
  ) {
    this.mix = mix;
    this.screening = { size: Math.min(size, mix.count), keep, counts, limit, among };
  }

  /** The promising sets by a linear model. */
  about(model: MixSlopes): void {
    for (const { set, doses } of screenSets(model, this.mix.count, this.screening)) {
      const start = new Float64Array(this.mix.count);
      for (const [i, j] of set.entries()) start[j] = doses[i]!;
      this.work(set, start);
    }
  }

  /** Every candidate by itself, best first. */
  singles(): readonly FoundDoses[] {
    const { counts, limit } = this.screening;
    const alone: FoundDoses[] = [];
    for (let j = 0; j < this.mix.count; j++) {
      if (counts(j) && limit < 1) continue;
      const start = new Float64Array(this.mix.count);
      start[j] = this.mix.most[j]! / 8;
      alone.push(this.work([j], start));
    }
    return alone.sort(byScore);
  }

  private work(set: readonly number[], start: Float64Array): FoundDoses {
    const key = set.join();
    const before = this.tried.get(key);
    if (before) return before;
    const { doses } = refineDoses(this.mix, set, start);
    const worked = { set: set.filter((j) => doses[j]! > 0), doses, score: this.mix.score(doses) };
    this.tried.set(key, worked);
    return worked;
  }

  found(): readonly FoundDoses[] {
    return [...this.tried.values()].filter(({ set }) => set.length > 0).sort(byScore);
  }

  bestScore(): number {
    let best = Number.POSITIVE_INFINITY;
    for (const { score } of this.tried.values()) best = Math.min(best, score);
    return best;
  }
}

function byScore(one: FoundDoses, other: FoundDoses): number {
  return one.score - other.score;
}

/** Doses of all candidates by a linear model. */
function linearDoses({ residuals, slopes }: MixSlopes, mix: Mix, all: readonly number[]): Float64Array {
  const H = new Float64Array(mix.count * mix.count);
  const g = new Float64Array(mix.count);
  normalEquations(slopes, residuals, mix.count, all, H, g);
  const doses = new Float64Array(mix.count);
  boundedQuadratic(H, g, new Float64Array(mix.count), mix.most, doses);
  return doses;
}
