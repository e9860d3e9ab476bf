/**
 * All small sets of materials that have every published digit of a look, and none of which holds another.
 *
 * @packageDocumentation
 */
import { type Box, BoxFitter, type Fit } from './fit-box.ts';
import type { Column, LookModel } from './look-model.ts';

/** A set that reproduces a look, and doses that do it. */
export interface FoundSet {
  /** A bit for each suspect. */
  readonly mask: number;
  readonly suspects: readonly number[];
  /** In the order of `columnsOf(suspects)`. */
  readonly doses: Float64Array;
}

/** What a tangent must promise of a set of so many materials before it is fitted: the largest sum of squares outside, in Lab units. */
export type Thrift = (size: number) => number;

/** Finds what fits of all sets find, but for about one in twenty, five times as fast. */
export const THRIFTY: Thrift = (size) => [0, 0, 0, 0, 100, 5][size] || Number.POSITIVE_INFINITY;

export interface SearchOptions {
  readonly thrift?: Thrift;
  /** Asked after each size of sets; whether no larger ones need be looked for. */
  readonly enough?: (found: readonly FoundSet[]) => boolean;
}

/** A dose for each cup of each suspect. */
export function columnsOf(suspects: readonly number[], cups: number): readonly Column[] {
  return suspects.flatMap((suspect) => Array.from({ length: cups }, (_, cup) => ({ cup, suspect })));
}

const MOST_SUSPECTS = 30;

/**
 * The sets of at most `most` suspects whose look is in the box, the smaller ones first.
 *
 * Each begins from the best of the sets with one material less, so that few steps are needed.
 * Throws: RangeError if there are more suspects than bits.
 */
export function minimalSets(
  model: LookModel,
  box: Box,
  most: number,
  { thrift = THRIFTY, enough = (): boolean => false }: SearchOptions = {},
): { readonly sets: readonly FoundSet[]; readonly fits: number } {
  const count = model.suspects.length;
  if (count > MOST_SUSPECTS) throw new RangeError(`${count} suspects; give at most ${MOST_SUSPECTS}`);
  const fitter = new BoxFitter(model, box);
  const found: FoundSet[] = [];
  let fits = 0;
  let before = new Map<number, Fit>([[0, { doses: new Float64Array(0), outside: Number.POSITIVE_INFINITY }]]);
  for (let size = 1; size <= most; size++) {
    const starts = startsOf(model, fitter, before, size, found, thrift);
    const now = new Map<number, Fit>();
    for (const [mask, start] of starts) {
      const suspects = bitsOf(mask);
      const fit = fitter.fit(columnsOf(suspects, model.cups), start);
      fits += 1;
      if (fit.outside === 0) found.push({ mask, suspects, doses: fit.doses });
      else now.set(mask, fit);
    }
    if (enough(found)) break;
    before = now;
  }
  return { sets: found, fits };
}

/** The sets of a size that are worth a fit, and where each begins. */
function startsOf(
  model: LookModel,
  fitter: BoxFitter,
  before: ReadonlyMap<number, Fit>,
  size: number,
  found: readonly FoundSet[],
  promised: Thrift,
): ReadonlyMap<number, Float64Array> {
  const { cups } = model;
  const best = new Map<number, Fit>();
  const everything = model.suspects.map((_, suspect) => suspect);
  const all = columnsOf(everything, cups);
  for (const [mask, { doses }] of before) {
    const suspects = bitsOf(mask);
    const tangent = fitter.tangent(all, spread(suspects, doses, all.length, cups));
    for (const added of everything) {
      const bit = 2 ** added;
      if ((mask & bit) !== 0) continue;
      const larger = mask | bit;
      if (found.some((set) => (set.mask & larger) === set.mask)) continue;
      const members = bitsOf(larger);
      const fit = tangent.fit(
        members.flatMap((suspect) => Array.from({ length: cups }, (_, cup) => suspect * cups + cup)),
      );
      if (fit.outside > promised(size)) continue;
      const known = best.get(larger);
      if (known === undefined || fit.outside < known.outside) best.set(larger, fit);
    }
  }
  return new Map([...best].map(([mask, { doses }]) => [mask, doses]));
}

/** Doses of some suspects among those of all. */
function spread(suspects: readonly number[], doses: Float64Array, length: number, cups: number): Float64Array {
  const among = new Float64Array(length);
  for (const [at, suspect] of suspects.entries()) {
    for (let cup = 0; cup < cups; cup++) among[suspect * cups + cup] = doses[at * cups + cup]!;
  }
  return among;
}

function bitsOf(mask: number): readonly number[] {
  const bits: number[] = [];
  for (let bit = 0; mask >> bit !== 0; bit++) if ((mask >> bit) & 1) bits.push(bit);
  return bits;
}
