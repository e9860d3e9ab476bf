import { aimAt, type CupAim } from '../../book/match/cup-aim.ts';
import { shelfByName } from '../../matching/shelf/match-material.ts';
import type { MatchPageData } from '../../render/pages/match.ts';
import { required } from '../../values/required.ts';
import { cupNow, partOfSide, sideOf, type Work } from './work.ts';

// The recipe's file gives no shares, so both cups of a laminate have half of the bait.
const HALF = 0.5;

/**
 * What a cup is to show, judged as the book judges the recipe that is taken away: a side of a finished bait with the other cup, as that
 * one is now, behind it.
 */
export function aimFor(work: Work, index: number, data: MatchPageData): CupAim {
  const bodyMm = bodyOf(work, data);
  const now = cupNow(work, index, densityIn(data), bodyMm);
  const other = work.arrangement === 'together' ? cupNow(work, 1 - index, densityIn(data), bodyMm) : undefined;
  return aimAt(
    partOfSide(sideOf(work, index)),
    now.rounds,
    { shelf: shelfByName(data.materials), bodyMm },
    other && { cup: other.looked, rounds: other.rounds, share: HALF },
  );
}

/** Thickness of a test pour, mm: that of the mold's body. */
export function bodyOf(work: Work, { molds }: MatchPageData): number {
  return required(molds, work.mold).bodyMm;
}

/** Densities of the shelf, g/ml. */
export function densityIn({ materials }: Pick<MatchPageData, 'materials'>): (material: string) => number {
  const densities = new Map(materials.map(({ id, density }) => [id, density]));
  return (material) => densities.get(material) ?? 1;
}
