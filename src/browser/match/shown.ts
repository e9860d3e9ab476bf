import type { MatchPageData, MatchPageMaterial } from '../../render/pages/match.ts';
import { maxText } from '../../words/limit.ts';
import type { CupDraft } from './drafts.ts';
import type { HowSeen } from './how-seen.ts';
import { dosedIn } from './page-shelf.ts';

/** The shelf by names, and how the book shows amounts. */
export interface MatchShown {
  readonly data: MatchPageData;
  readonly materials: ReadonlyMap<string, MatchPageMaterial>;
  /** How a test pour was looked at, as it was last said; unset: it was never asked. */
  readonly looked?: HowSeen | undefined;
  /** Whether finished baits are looked at, or cups by themselves; unset: it was never asked. */
  readonly whole?: boolean | undefined;
  /** What was typed for each cup. */
  readonly drafts?: readonly CupDraft[];
}

/** A material by its title. */
export function titleIn({ materials, data }: MatchShown, id: string): string {
  return materials.get(id)?.title ?? dosedIn(data).get(id)?.title ?? id;
}

/** A highest temperature and whose it is, as the end of a line. */
export function limitWords(
  limit: { readonly celsius: number; readonly material: string } | undefined,
  shown: MatchShown,
): string {
  return limit === undefined ? '' : ` · ${maxText(limit.celsius, titleIn(shown, limit.material), shown.data.settings)}`;
}
