/**
 * What a cup of a match looks like, and looked like.
 *
 * @packageDocumentation
 */

import type { Colour, MatchedRound } from '../../book/model.ts';
import { type CupState, isEmpty } from '../../cup/ledger.ts';
import { baseOfCup } from '../../matching/mix/cup-model.ts';
import { predicted } from '../../matching/proposals/proposal.ts';
import type { ModelCorrection } from '../../matching/rounds/correct-model.ts';
import { offsetsFor } from '../../matching/rounds/off-share.ts';
import { shelfByName, withStrengths } from '../../matching/shelf/match-material.ts';
import { isNoVerdict, thresholdsFor, verdict } from '../../matching/target/verdict.ts';
import type { Lab } from '../../optics/cielab.ts';
import { bodyViews, type TwoViews } from '../../optics/cup-body.ts';
import { hexFromLab } from '../../optics/display.ts';
import type { MatchPageData } from '../../render/pages/match.ts';
import type { ChipColours } from '../../render/swatch/chip.ts';
import { defined } from '../../values/defined.ts';
import { required } from '../../values/required.ts';
import { bodyOf } from './aim-for.ts';
import type { CupAdvice } from './ask.ts';
import type { Work } from './work.ts';

/** What a cup looks like now beside its target: as it was seen, or as the corrected model says; undefined where it is empty. */
export function lookNow({ now, aim, next }: CupAdvice, data: MatchPageData): ChipColours | undefined {
  if (now.seen) {
    const { overWhite, overBlack } = aim.asTarget(now.seen, now.looked);
    return {
      ...(overWhite && { overWhite: hexFromLab(overWhite).hex }),
      ...(overBlack && { overBlack: hexFromLab(overBlack).hex }),
    };
  }
  return isEmpty(now.cup) ? undefined : corrected(aim.views(now.cup), now.cup, data, next.correction);
}

/** What a test pour of a cup should look like, by the corrected model; undefined where the cup is empty. */
export function aloneNow(
  cup: CupState,
  work: Work,
  data: MatchPageData,
  correction: ModelCorrection,
): ChipColours | undefined {
  if (isEmpty(cup)) return undefined;
  const shelf = withStrengths(shelfByName(data.materials), correction.strengths);
  const { mix, flakes } = baseOfCup(cup, (name) => required(shelf, name));
  return corrected(bodyViews({ ...mix, flakes }, bodyOf(work, data)), cup, data, correction);
}

/** The rounds of a cup in which a colour was seen, beside what it is to look like. */
export function roundsSeen({ now, aim }: CupAdvice, tolerance: number): readonly MatchedRound[] {
  return now.rounds.flatMap(({ cup, seen, number, earlier }): MatchedRound[] => {
    if (earlier) return [];
    const views = aim.asTarget(seen, cup);
    const found = verdict(views, aim.part, thresholdsFor(tolerance));
    if (isNoVerdict(found)) return [];
    return [
      {
        number,
        basis: 'seen',
        ...defined({ moved: aim.moved }),
        ...(views.overWhite && { overWhite: stated(views.overWhite) }),
        ...(views.overBlack && { overBlack: stated(views.overBlack) }),
        verdict: found,
      },
    ];
  });
}

/** What is computed of a cup, with what the model is off by in a cup like it. */
function corrected(
  { overWhite, overBlack }: TwoViews,
  cup: CupState,
  data: MatchPageData,
  correction: ModelCorrection,
): ChipColours {
  const shelf = shelfByName(data.materials);
  const { offWhite, offBlack } = offsetsFor(correction, cup, (name) => required(shelf, name));
  const hex = (lab: Lab, off: Lab): string => predicted({ L: lab.L + off.L, a: lab.a + off.a, b: lab.b + off.b }).hex;
  return { overWhite: hex(overWhite, offWhite), overBlack: hex(overBlack, offBlack) };
}

function stated(lab: Lab): Colour {
  return { lab, ...hexFromLab(lab) };
}
