import type { TriedRound } from '../../matching/cup-question.ts';
import type { ModelCorrection } from '../../matching/rounds/correct-model.ts';
import type { CupAim } from '../../matching/rounds/cup-aim.ts';
import { withOffsets } from '../../matching/rounds/off-share.ts';
import type { MatchMaterial } from '../../matching/shelf/match-material.ts';
import type { SeenViews } from '../../matching/target/target-part.ts';
import { isNoVerdict, thresholdsFor, verdict, verdictOf } from '../../matching/target/verdict.ts';
import { hexFromLab } from '../../optics/display.ts';
import { defined } from '../../values/defined.ts';
import type { Colour, Lab } from '../model/colours.ts';
import type { MatchedRound } from '../model/target.ts';

/** What the rounds of a cup are set beside. */
export interface Beside {
  readonly aim: CupAim;
  /** By all that the rounds have taught. */
  readonly correction: ModelCorrection;
  readonly shelf: ReadonlyMap<string, MatchMaterial>;
  readonly tolerance: number;
}

/** A round beside its target as it was seen, or else as the corrected model has it; with its views to all their digits. Undefined where it is no colour. */
export function matchedRound(
  { number, cup, seen, how }: Pick<TriedRound, 'number' | 'cup' | 'seen' | 'how'>,
  { aim, correction, shelf, tolerance }: Beside,
): { readonly round: MatchedRound; readonly views: SeenViews } | undefined {
  const views = seen ? aim.asTarget(seen, cup, how?.thicknessMm) : withOffsets(aim.views(cup), correction, cup, shelf);
  const found = (seen ? verdict : verdictOf)(views, aim.part, thresholdsFor(tolerance));
  if (isNoVerdict(found)) return undefined;
  const { overWhite, overBlack } = views;
  const round = {
    number,
    basis: seen ? ('seen' as const) : ('predicted' as const),
    ...defined({
      moved: seen && aim.moved(how?.thicknessMm),
      overWhite: overWhite && stated(overWhite),
      overBlack: overBlack && stated(overBlack),
    }),
    verdict: rounded(found),
  };
  return { round, views };
}

function stated(lab: Lab): Colour {
  return { lab: rounded(lab), ...hexFromLab(lab) };
}

/** A plain value with its numbers to four decimals: more than any of them deserves. */
export function rounded<T>(value: T): T {
  if (typeof value === 'number') return Number(value.toFixed(4)) as T;
  if (Array.isArray(value)) return value.map(rounded) as T;
  if (typeof value === 'object' && value !== null) {
    return Object.fromEntries(Object.entries(value).map(([name, part]) => [name, rounded(part)])) as T;
  }
  return value;
}
