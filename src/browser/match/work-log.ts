import { judgedFirst } from '../../book/looks/judged-first.ts';
import { type CupHistory, type LogStep, readLog } from '../../cup/cup-log.ts';
import { type Cut, partsOfCut } from '../../cup/cut.ts';
import type { HowLooked } from '../../cup/how-looked.ts';
import { type CupState, cupVolume } from '../../cup/ledger.ts';
import type { LogRound } from '../../cup/log-round.ts';
import type { LoggedAmount } from '../../cup/logged-amount.ts';
import type { TriedRound } from '../../matching/cup-question.ts';
import { type SeenViews, viewsOfLabs } from '../../matching/target/target-part.ts';
import type { Lab } from '../../optics/cielab.ts';
import { type LookDoubt, lookDoubt, meansOf } from '../../optics/look-doubt.ts';
import { defined } from '../../values/defined.ts';
import type { MeasuredBy } from './measured-by.ts';
import { inOneGo, plasticOf, type Work, type WorkAmount, type WorkSide, type WorkStep, withCup } from './work.ts';
import { labOfColour, type WorkColour } from './work-colour.ts';

/** What was seen of a cup of a match. */
export interface WorkLook extends HowLooked {
  readonly overWhite?: WorkColour;
  readonly overBlack?: WorkColour;
  readonly measured?: MeasuredBy;
  readonly note?: string;
}

/** A look at a side of a finished bait. */
export interface WholeLook {
  /** Of the cup that faced the eye, and of the one behind it. */
  readonly round: number;
  readonly behind: number;
  readonly look: WorkLook;
  /** Which step of the log it is. */
  readonly step: number;
}

/** What the log of a cup comes to. */
export interface CupNow extends Pick<CupHistory<WorkLook>, 'rounds' | 'last' | 'heats'> {
  readonly start: CupState;
  /** What is left. */
  readonly cup: CupState;
  readonly volumeMl: number;
  /** Looks at its side of a finished bait. */
  readonly whole: readonly WholeLook[];
  /** What the cup looks like as it is; absent where it was not looked at since something was added. */
  readonly seen?: SeenViews;
}

/** What is to be known of the shelf to read a log. */
export interface LogShelf {
  /** Of a material or a cut, g/ml. */
  density(name: string): number;
  cut(name: string): Cut | undefined;
}

/** The log of a cup, read. */
export function cupNow(work: Work, index: number, shelf: LogShelf): CupNow {
  const { steps } = work.cups[index]!;
  const perGram = (material: string): number => 1 / shelf.density(material);
  const start = { plastics: { [plasticOf(work, index)]: work.plasticMl }, materials: {} };
  const { rounds, left, last, heats } = readLog(
    start,
    steps.map((step) => logStep(step, start, shelf)),
    perGram,
  );
  const whole = steps.flatMap((step, at): WholeLook[] =>
    step.do === 'see' && step.behind !== undefined
      ? [{ round: roundOfStep(rounds, at), behind: step.behind, look: lookOf(step), step: at }]
      : [],
  );
  const now = rounds.at(-1);
  const looks = [...whole.filter(({ round }) => round === now?.number).map(({ look }) => look), ...(now?.seen ?? [])];
  const seen = looks.map(viewsOf).find((views) => views !== undefined);
  return { start, rounds, whole, cup: left, last, heats, volumeMl: cupVolume(left, perGram), ...defined({ seen }) };
}

/** Step for step, so that a round says which of them it has. */
function logStep(step: WorkStep, { plastics }: CupState, shelf: LogShelf): LogStep<WorkLook> {
  switch (step.do) {
    case 'new-cup':
      return { kind: 'new-cup', plastics };
    case 'add':
      return { kind: 'add', amounts: step.amounts.map((amount) => loggedAmount(amount, shelf)) };
    case 'plastic':
      return { kind: 'plastic', material: Object.keys(plastics)[0]!, ml: step.ml };
    case 'heat': {
      const { celsius, again, heldMinutes } = step;
      return { kind: 'heat', ahead: true, ...defined({ celsius, again, heldMinutes }) };
    }
    case 'pour':
      return { kind: 'pour', ml: step.ml };
    case 'see':
      // A look at a finished bait is in no cup's log: in the recipe's file it stands beside the cups.
      return step.behind === undefined ? { kind: 'see', looks: [lookOf(step)] } : { kind: 'note', text: '' };
  }
}

function lookOf(step: Extract<WorkStep, { do: 'see' }>): WorkLook {
  const { overWhite, overBlack, measured, note, checked, thicknessMm, after, wet } = step;
  return defined({ overWhite, overBlack, measured, note, checked, thicknessMm, after, wet });
}

/** Of a cut, with what is in it. */
function loggedAmount(amount: WorkAmount, shelf: LogShelf): LoggedAmount {
  const cut = shelf.cut(amount.material);
  return cut ? { ...amount, parts: partsOfCut(cut, amount.grams) } : amount;
}

const labOf = (colour: WorkColour | undefined): Lab | undefined =>
  colour === undefined ? undefined : labOfColour(colour);

const viewsOf = ({ overWhite, overBlack }: WorkLook = {}): SeenViews | undefined =>
  viewsOfLabs(labOf(overWhite), labOf(overBlack));

/** How far the colours of a match may be off: as photos say, else as is usual of such a look; undefined where no colour was noted. */
export function doubtOfColours({
  overWhite,
  overBlack,
  measured,
  after,
  wet,
}: Pick<WorkLook, 'overWhite' | 'overBlack' | 'measured' | 'after' | 'wet'>): LookDoubt | undefined {
  const colours = [overWhite, overBlack].filter((colour) => colour !== undefined);
  if (colours.length === 0) return undefined;
  return lookDoubt(meansOf(colours, measured?.camera), measured?.doubt, defined({ after, wet }));
}

/** How surely a side was seen that no target of the book says it of. */
export function doubtOfSide(side: Pick<WorkSide, 'overWhite' | 'overBlack' | 'measured'>): LookDoubt {
  return doubtOfColours(side)!;
}

/**
 * The rounds of a cup as matching takes them, each with the look that it is judged by, as in the book (`triedRounds` of `asked-cup.ts`).
 *
 * @param other the other cup of a finished bait
 */
export function triedRounds(
  { rounds, whole }: Pick<CupNow, 'rounds' | 'whole'>,
  bodyMm: number,
  other?: Pick<CupNow, 'rounds'>,
): readonly TriedRound[] {
  return rounds.map(({ seen, ...round }) => {
    const bait = other && whole.findLast((each) => each.round === round.number && viewsOf(each.look) !== undefined);
    const behind = bait && other.rounds.find(({ number }) => number === bait.behind)?.cup;
    const [alone] = judgedFirst(seen, bodyMm);
    const look = behind ? bait.look : alone;
    const { thicknessMm, after, wet, checked } = look ?? {};
    const how = defined({ thicknessMm, after, wet, checked });
    return { ...round, how, ...defined({ seen: viewsOf(look), axisSd: look && doubtOfColours(look)?.axisSd, behind }) };
  });
}

/** The work with its last look at a cup said to stand. */
export function withLookChecked(work: Work, index: number, shelf: LogShelf): Work {
  const { rounds, whole } = cupNow(work, index, shelf);
  const last = rounds.at(-1);
  const looked = last?.looked ?? whole.findLast(({ round }) => round === last?.number)?.step;
  return withCup(work, index, ({ steps, ...cup }) => ({
    ...cup,
    // A round may have been looked at in several ways, a step each.
    steps: steps.map((step, at) =>
      looked !== undefined && at >= looked && step.do === 'see' ? { ...step, checked: true } : step,
    ),
  }));
}

/** The work with steps that were done before the last round in which a colour was seen, though they were not noted then. */
export function withStepsBeforeLook(work: Work, index: number, done: readonly WorkStep[], shelf: LogShelf): Work {
  const { rounds } = cupNow(work, index, shelf);
  const looked = rounds.findLast(({ seen }) => seen.some((look) => viewsOf(look)))?.looked;
  return withCup(work, index, ({ steps, ...cup }) => {
    // A round that is noted with its pour is one thing that was done.
    const at = looked === undefined ? steps.length : steps.findLastIndex((step, each) => each <= looked && !step.also);
    return { ...cup, steps: [...steps.slice(0, at), ...inOneGo(done), ...steps.slice(at)] };
  });
}

/** Number of the round that a step of a log is in. */
export function roundOfStep(rounds: readonly Pick<LogRound<WorkLook>, 'first' | 'number'>[], step: number): number {
  return rounds.findLast(({ first }) => first <= step)?.number ?? 1;
}

/** The looks at finished baits of a match, in the order in which a recipe's file has them; `index` is the cup that faced the eye. */
export function wholeLooks(
  cups: readonly Pick<CupNow, 'whole'>[],
): readonly (WholeLook & { readonly index: number })[] {
  return cups.flatMap(({ whole }, index) => whole.map((look) => ({ ...look, index })));
}
