import type { MatchPageData } from '../../render/pages/match.ts';
import { required } from '../../values/required.ts';
import type { Work } from './work.ts';

/** Thickness of a test pour, mm: that of the mold's body. */
export function bodyOf(work: Work, { molds }: MatchPageData): number {
  return required(molds, work.mold).bodyMm;
}

/** Densities of the shelf, g/ml. */
export function densityIn({ materials }: Pick<MatchPageData, 'materials'>): (material: string) => number {
  const densities = new Map(materials.map(({ id, density }) => [id, density]));
  return (material) => required(densities, material);
}
