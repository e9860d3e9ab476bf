/**
 * What a cup of a match looks like, and looked like.
 *
 * @packageDocumentation
 */
import type { MatchedRound, Seen } from '../../book/model.ts';
import { total } from '../../cup/ledger.ts';
import type { ModelCorrection } from '../../matching/correct-model.ts';
import { baseOfCup } from '../../matching/cup-model.ts';
import { shelfByName, withStrengths } from '../../matching/match-material.ts';
import { predicted } from '../../matching/proposal.ts';
import { isNoVerdict, thresholdsFor, verdict } from '../../matching/verdict.ts';
import type { Lab } from '../../optics/cielab.ts';
import { bodyViews } from '../../optics/cup-body.ts';
import { labFromHex } from '../../optics/display.ts';
import type { BenchPageData } from '../../render/pages/bench.ts';
import type { ChipColours } from '../../render/swatch/chip.ts';
import { densityIn } from './ask.ts';
import { aimOf, cupNow, partOfSide, type Work } from './work.ts';

/** What a cup looks like now: as it was seen, or as the corrected model says; undefined where it is empty. */
export function lookNow(
  work: Work,
  index: number,
  data: BenchPageData,
  correction: ModelCorrection,
): ChipColours | undefined {
  const { cup, seen } = cupNow(work, index, densityIn(data));
  const last = work.cups[index]!.steps.findLast((step) => step.do === 'see' && (step.overWhite || step.overBlack));
  if (seen && last?.do === 'see') return last;
  if (!(total(cup.plastics) > 1e-6)) return undefined;
  const shelf = withStrengths(shelfByName(data.materials), correction.strengths);
  const { mix, flakes } = baseOfCup(cup, (name) => shelf.get(name)!);
  const { overWhite, overBlack } = bodyViews({ ...mix, flakes }, aimOf(work, index).thicknessMm);
  const { offWhite, offBlack } = correction;
  const hex = (lab: Lab, off: Lab): string => predicted({ L: lab.L + off.L, a: lab.a + off.a, b: lab.b + off.b }).hex;
  return { overWhite: hex(overWhite, offWhite), overBlack: hex(overBlack, offBlack) };
}

/** The rounds of a cup in which a colour was seen, beside what it is to look like. */
export function roundsSeen(work: Work, index: number): readonly MatchedRound[] {
  const part = partOfSide(aimOf(work, index));
  const looks = work.cups[index]!.steps.flatMap((step) => (step.do === 'see' ? [step] : []));
  return looks.flatMap(({ overWhite, overBlack }, at): MatchedRound[] => {
    const stated = (hex: string): Seen => ({ lab: labFromHex(hex), hex, mapped: false });
    const seen = {
      ...(overWhite && { overWhite: stated(overWhite) }),
      ...(overBlack && { overBlack: stated(overBlack) }),
    };
    const found = verdict(
      {
        ...(seen.overWhite && { overWhite: seen.overWhite.lab }),
        ...(seen.overBlack && { overBlack: seen.overBlack.lab }),
      },
      part,
      thresholdsFor(work.tolerance),
    );
    return isNoVerdict(found) ? [] : [{ number: at + 1, basis: 'seen', ...seen, verdict: found }];
  });
}
