import type { MatchPageData, MatchPageMaterial } from '../../render/pages/match.ts';
import { limitText } from '../../render/words.ts';

/** The shelf by names, and how the book shows amounts. */
export interface MatchShown {
  readonly data: MatchPageData;
  readonly materials: ReadonlyMap<string, MatchPageMaterial>;
}

/** A material by its title. */
export function titleIn({ materials }: MatchShown, id: string): string {
  return materials.get(id)?.title ?? id;
}

/** A highest temperature and whose it is, as the end of a sentence. */
export function limitWords(
  limit: { readonly celsius: number; readonly material: string } | undefined,
  shown: MatchShown,
): string {
  return limit === undefined
    ? ''
    : `; not above ${limitText(limit.celsius, shown.data.settings)}, for ${titleIn(shown, limit.material)}`;
}
