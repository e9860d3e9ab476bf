import type { BenchPageData, BenchPageMaterial } from '../../render/pages/match.ts';
import { limitText } from '../../render/words.ts';

/** The shelf by names, and how the book shows amounts. */
export interface BenchShown {
  readonly data: BenchPageData;
  readonly materials: ReadonlyMap<string, BenchPageMaterial>;
}

/** A material by its title. */
export function titleIn({ materials }: BenchShown, id: string): string {
  return materials.get(id)?.title ?? id;
}

/** A highest temperature and whose it is, as the end of a sentence. */
export function limitWords(
  limit: { readonly celsius: number; readonly material: string } | undefined,
  shown: BenchShown,
): string {
  return limit === undefined
    ? ''
    : `; not above ${limitText(limit.celsius, shown.data.settings)}, for ${titleIn(shown, limit.material)}`;
}
