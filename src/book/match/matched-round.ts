import type { Beliefs } from '../../matching/belief/beliefs.ts';
import type { TriedRound } from '../../matching/cup-question.ts';
import type { CupAim } from '../../matching/rounds/cup-aim.ts';
import type { SeenViews } from '../../matching/target/target-part.ts';
import { isNoVerdict, thresholdsFor, verdict, verdictOf } from '../../matching/target/verdict.ts';
import { hexFromLab } from '../../optics/display.ts';
import { defined } from '../../values/defined.ts';
import type { Colour, Lab } from '../model/colours.ts';
import type { MatchedRound } from '../model/target.ts';

/** What the rounds of a cup are set beside. */
export interface Beside {
  readonly aim: CupAim;
  /** What looks have taught. */
  readonly belief: Pick<Beliefs, 'mean'>;
  readonly tolerance: number;
}

/** A round beside its target as it was seen, or else as it is believed to be; with its views to all their digits. Undefined where it is no colour. */
export function matchedRound(
  { number, cup, seen, how, behind }: Pick<TriedRound, 'number' | 'cup' | 'seen' | 'how' | 'behind'>,
  { aim, belief, tolerance }: Beside,
): { readonly round: MatchedRound; readonly views: SeenViews } | undefined {
  const views = seen ? aim.asTarget(seen, cup, how?.thicknessMm, behind) : believedViews(belief, aim, cup);
  const found = (seen ? verdict : verdictOf)(views, aim.part, thresholdsFor(tolerance));
  if (isNoVerdict(found)) return undefined;
  const { overWhite, overBlack } = views;
  const round = {
    number,
    basis: seen ? ('seen' as const) : ('predicted' as const),
    ...defined({
      moved: seen && !behind ? aim.moved(how?.thicknessMm) : undefined,
      overWhite: overWhite && stated(overWhite),
      overBlack: overBlack && stated(overBlack),
    }),
    verdict: rounded(found),
  };
  return { round, views };
}

function believedViews(belief: Beside['belief'], aim: CupAim, cup: TriedRound['cup']): SeenViews {
  const { overWhite, overBlack } = belief.mean(aim.asked(cup));
  return { overWhite, overBlack };
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
