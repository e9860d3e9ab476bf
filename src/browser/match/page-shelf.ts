import type { BenchMaterial } from '../../cup/bench.ts';
import type { Cut } from '../../cup/cut.ts';
import type { MatchPageData } from '../../render/pages/match.ts';
import { required } from '../../values/required.ts';
import { cutName } from '../../words/cut.ts';
import type { FlakedBait } from '../../words/flake.ts';
import type { Work } from './work.ts';
import type { LogShelf } from './work-log.ts';

/** What a cup of the match has of a bait of its mold: all, or half of one with two sides. */
export function baitOf({ mold, sides }: Work, { molds }: MatchPageData): FlakedBait {
  return { cavityMl: required(molds, mold).cavityMl, share: 1 / sides.length };
}

/** Thickness of a test pour, mm: that of the mold's body. */
export function bodyOf(work: Work, { molds }: MatchPageData): number {
  return required(molds, work.mold).bodyMm;
}

/** What is put into a cup: a material, or a cut of one. */
export type Dosed = BenchMaterial & { readonly id: string; readonly title: string };

/** Cuts on the shelf, by their names. */
export function cutsIn({ materials }: Pick<MatchPageData, 'materials'>): ReadonlyMap<string, Cut> {
  return new Map(materials.flatMap(({ cuts = [] }) => cuts.map((cut) => [cut.id, cut] as const)));
}

/** All that can be put into a cup, by name: materials, and cuts by their names with how much of the bottle is in them. */
export function dosedIn(data: Pick<MatchPageData, 'materials'>): ReadonlyMap<string, Dosed> {
  const cuts = [...cutsIn(data).values()].map((cut): Dosed => ({ ...cut, title: cutName(cut) }));
  return new Map([...data.materials, ...cuts].map((each) => [each.id, each]));
}

/** The shelf as a log is read with it. */
export function logShelf(data: Pick<MatchPageData, 'materials'>): LogShelf {
  const densities = new Map(data.materials.map(({ id, density }) => [id, density]));
  const cuts = cutsIn(data);
  return {
    density: (name) => cuts.get(name)?.gramsPerMl ?? required(densities, name),
    cut: (name) => cuts.get(name),
  };
}
