/**
 * Cuts through a bait: which part of one each cup fills.
 *
 * @packageDocumentation
 */
import type { Run } from './place.ts';
import { cupAt, type Through } from './through.ts';

/** What one cup fills of a cut: from here to there at places along the cut, all 0..1. */
export interface CutRegion {
  readonly cup: number;
  readonly edges: readonly { readonly at: number; readonly from: number; readonly to: number }[];
}

/** A cut: the runs that one meets from its upper edge down, at each place along it, 0..1. */
export type Cut = (at: number) => readonly Run[];

/** Across the bait in its middle: places run from one edge to the other, and down from the side that is looked at. */
export const cutAcross =
  (through: Through, shares: readonly number[]): Cut =>
  (at) =>
    through(shares, { along: 0.5, across: at });

/** Places looked at to find where one cup ends and the next begins. */
const PROBES = 64;

/** Level, halfway between the two sides: places run from nose to tail, and down from one edge to the other. */
export const cutLevel =
  (through: Through, shares: readonly number[]): Cut =>
  (at) => {
    const cup = (across: number): number => cupAt(through, shares, { along: at, across, depth: 0.5 });
    const borders = bordersOf(cup, evenly(PROBES));
    return [...borders, 1].map((to, index) => {
      const from = borders[index - 1] ?? 0;
      return { cup: cup((from + to) / 2), part: to - from };
    });
  };

/** Places from 0 to 1 at even distances. */
export function evenly(count: number): readonly number[] {
  return Array.from({ length: count + 1 }, (_, index) => index / count);
}

/**
 * The regions of a cut, in the order in which one comes upon them.
 *
 * @param places from 0 to 1 at which a cut is looked at, and then each of its regions from end to end
 */
export function regionsOf(cut: Cut, places: readonly number[]): readonly CutRegion[] {
  const cupsAt = (at: number): string =>
    cut(at)
      .map(({ cup }) => cup)
      .join();
  const ends = [0, ...bordersOf(cupsAt, places), 1];
  return ends.slice(1).flatMap((end, index) => {
    const start = ends[index]!;
    return cut((start + end) / 2).map(({ cup }, nth): CutRegion => {
      const edges = places.map((place) => {
        const at = start + (end - start) * place;
        const runs = cut(Math.min(Math.max(at, start + NEAR), end - NEAR));
        const from = runs.slice(0, nth).reduce((sum, { part }) => sum + part, 0);
        return { at, from, to: from + (runs[nth]?.part ?? 0) };
      });
      return { cup, edges };
    });
  });
}

/** So close to a border one is well on its side of it. */
const NEAR = 1e-9;

/** Where a value changes along a line, between places at which it is looked at; found by halving. */
function bordersOf<T>(valueAt: (at: number) => T, places: readonly number[]): readonly number[] {
  return places.slice(1).flatMap((after, index) => {
    let [low, high] = [places[index]!, after];
    const before = valueAt(low);
    if (valueAt(high) === before) return [];
    while (high - low > NEAR / 4) {
      const at = (low + high) / 2;
      if (valueAt(at) === before) low = at;
      else high = at;
    }
    return [(low + high) / 2];
  });
}
