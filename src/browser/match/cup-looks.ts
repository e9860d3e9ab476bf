/**
 * What a cup of a match looks like, and looked like.
 *
 * @packageDocumentation
 */

import { matchedRound } from '../../book/match/matched-round.ts';
import type { MatchedRound } from '../../book/model/target.ts';
import { type CupState, isEmpty } from '../../cup/ledger.ts';
import { baseOfCup } from '../../matching/mix/cup-model.ts';
import type { ModelCorrection } from '../../matching/rounds/correct-model.ts';
import { withOffsets } from '../../matching/rounds/off-share.ts';
import { shelfByName, withStrengths } from '../../matching/shelf/match-material.ts';
import { bodyViews, type TwoViews } from '../../optics/cup-body.ts';
import { hexFromLab } from '../../optics/display.ts';
import type { MatchPageData } from '../../render/pages/match.ts';
import type { ChipColours } from '../../render/swatch/chip.ts';
import { required } from '../../values/required.ts';
import type { CupAdvice } from './ask.ts';
import { bodyOf } from './page-shelf.ts';
import type { Work } from './work.ts';
import { triedRounds } from './work-log.ts';

/** What a cup looks like now beside its target: as it was seen, or as the corrected model says; undefined where it is empty. */
export function lookNow({ now, aim, next }: CupAdvice, work: Work, data: MatchPageData): ChipColours | undefined {
  const { seen, how } = triedRounds(now, bodyOf(work, data)).at(-1) ?? {};
  if (seen) {
    const { overWhite, overBlack } = aim.asTarget(seen, now.last, how?.thicknessMm);
    return {
      ...(overWhite && { overWhite: hexFromLab(overWhite).hex }),
      ...(overBlack && { overBlack: hexFromLab(overBlack).hex }),
    };
  }
  return isEmpty(now.cup) ? undefined : corrected(aim.views(now.cup), now.cup, data, next.correction);
}

/** What a test pour of a cup, or a chip of it, should look like, by the corrected model; undefined where the cup is empty. */
export function aloneNow(
  cup: CupState,
  work: Work,
  data: MatchPageData,
  correction: ModelCorrection,
  thicknessMm = bodyOf(work, data),
): ChipColours | undefined {
  if (isEmpty(cup)) return undefined;
  const shelf = withStrengths(shelfByName(data.materials), correction.strengths);
  const { mix, flakes } = baseOfCup(cup, (name) => required(shelf, name), data.optics);
  return corrected(bodyViews({ ...mix, flakes }, thicknessMm, data.optics), cup, data, correction);
}

/** The rounds of a cup in which a colour was seen, beside what it is to look like. */
export function roundsSeen({ now, aim, next }: CupAdvice, work: Work, data: MatchPageData): readonly MatchedRound[] {
  const { tolerance } = work;
  const beside = { aim, correction: next.correction, shelf: shelfByName(data.materials), tolerance };
  return triedRounds(now, bodyOf(work, data)).flatMap((round) =>
    round.seen ? (matchedRound(round, beside)?.round ?? []) : [],
  );
}

/** What is computed of a cup, with what the model is off by in a cup like it. */
function corrected(views: TwoViews, cup: CupState, data: MatchPageData, correction: ModelCorrection): ChipColours {
  const { overWhite, overBlack } = withOffsets(views, correction, cup, shelfByName(data.materials));
  return { overWhite: hexFromLab(overWhite).hex, overBlack: hexFromLab(overBlack).hex };
}
