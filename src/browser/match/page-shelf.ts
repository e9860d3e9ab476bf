import type { MatchPageData } from '../../render/pages/match.ts';
import { required } from '../../values/required.ts';
import type { FlakedBait } from '../../words/flake.ts';
import type { Work } from './work.ts';

/** What a cup of the match has of a bait of its mold: all, or half of one with two sides. */
export function baitOf({ mold, sides }: Work, { molds }: MatchPageData): FlakedBait {
  return { cavityMl: required(molds, mold).cavityMl, share: 1 / sides.length };
}

/** Thickness of a test pour, mm: that of the mold's body. */
export function bodyOf(work: Work, { molds }: MatchPageData): number {
  return required(molds, work.mold).bodyMm;
}

/** Densities of the shelf, g/ml. */
export function densityIn({ materials }: Pick<MatchPageData, 'materials'>): (material: string) => number {
  const densities = new Map(materials.map(({ id, density }) => [id, density]));
  return (material) => required(densities, material);
}
