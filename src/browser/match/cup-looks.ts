/**
 * What a cup of a match looks like, and looked like.
 *
 * @packageDocumentation
 */

import { matchedRound } from '../../book/match/matched-round.ts';
import type { MatchedRound } from '../../book/model/target.ts';
import { isEmpty } from '../../cup/ledger.ts';
import { contentsOf } from '../../matching/belief/looked-layers.ts';
import { shelfByName } from '../../matching/shelf/match-material.ts';
import type { TwoViews } from '../../optics/cup-body.ts';
import { hexFromLab } from '../../optics/display.ts';
import type { MatchPageData } from '../../render/pages/match.ts';
import type { ChipColours } from '../../render/swatch/chip.ts';
import type { CupAdvice } from './ask.ts';
import { bodyOf } from './page-shelf.ts';
import type { Work } from './work.ts';
import { triedRounds } from './work-log.ts';

/** What a cup looks like now beside its target: as it was seen, or as it is believed to be; undefined where it is empty. */
export function lookNow(
  { now, other, aim, taught }: CupAdvice,
  work: Work,
  data: MatchPageData,
): ChipColours | undefined {
  const { seen, how, behind } = triedRounds(now, bodyOf(work, data), other).at(-1) ?? {};
  if (seen) {
    const { overWhite, overBlack } = aim.asTarget(seen, now.last, how?.thicknessMm, behind);
    return {
      ...(overWhite && { overWhite: hexFromLab(overWhite).hex }),
      ...(overBlack && { overBlack: hexFromLab(overBlack).hex }),
    };
  }
  return isEmpty(now.cup) ? undefined : chipOf(taught.belief.mean(aim.asked(now.cup)));
}

/** What a test pour of a cup, or a chip of it, is believed to look like; undefined where the cup is empty. */
export function aloneNow(
  { now: { cup }, aim, taught: { belief, shelf } }: CupAdvice,
  work: Work,
  data: MatchPageData,
  thicknessMm = bodyOf(work, data),
): ChipColours | undefined {
  if (isEmpty(cup)) return undefined;
  const layers = [{ ...contentsOf(cup, shelfByName(shelf)), thicknessMm }];
  return chipOf(belief.mean({ ...aim.asked(cup), layers }));
}

/** The rounds of a cup in which a colour was seen, beside what it is to look like. */
export function roundsSeen(
  { now, other, aim, taught }: CupAdvice,
  work: Work,
  data: MatchPageData,
): readonly MatchedRound[] {
  const beside = { aim, belief: taught.belief, tolerance: work.tolerance };
  return triedRounds(now, bodyOf(work, data), other).flatMap((round) =>
    round.seen ? (matchedRound(round, beside)?.round ?? []) : [],
  );
}

function chipOf({ overWhite, overBlack }: TwoViews): ChipColours {
  return { overWhite: hexFromLab(overWhite).hex, overBlack: hexFromLab(overBlack).hex };
}
