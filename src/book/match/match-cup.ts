import { filledMl } from '../../cup/filled-ml.ts';
import { UNITS } from '../../units/unit.ts';
import type { Book, Settings } from '../model.ts';

/** A small cup; common practice, no source. */
const MATCH_CUP_ML = { ml: 120, 'fl oz': 4 * UNITS['fl oz'].size } as const;

/** The plastic that a match begins with: the book's, or else the first on the shelf; undefined where there is none. */
export function matchPlastic({ settings, materials }: Pick<Book, 'settings' | 'materials'>): string | undefined {
  return settings.plastic ?? materials.find(({ kind }) => kind === 'plastic')?.id;
}

/** Plastic of a cup that a match begins with, ml: 120 ml or 4 fl oz by the book's unit, but no more than a cup of the book is filled to. */
export function matchCupMl(settings: Pick<Settings, 'volume' | 'cupMl' | 'fill'>): number {
  return Math.min(MATCH_CUP_ML[settings.volume], filledMl(settings));
}
