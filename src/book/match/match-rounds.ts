import type { CupState } from '../../cup/ledger.ts';
import { nextAddition } from '../../matching/next-addition.ts';
import { correctModel } from '../../matching/rounds/correct-model.ts';
import { offsetsFor } from '../../matching/rounds/off-share.ts';
import { unloggedMove, unloggedQuestion } from '../../matching/rounds/unlogged.ts';
import { type MatchMaterial, shelfByName } from '../../matching/shelf/match-material.ts';
import type { SeenViews } from '../../matching/target/target-part.ts';
import { isNoVerdict, thresholdsFor, type Verdict, verdict, verdictOf } from '../../matching/target/verdict.ts';
import type { TwoViews } from '../../optics/cup-body.ts';
import { hexFromLab } from '../../optics/display.ts';
import { required } from '../../values/required.ts';
import type {
  Colour,
  Cup,
  CupMatch,
  Lab,
  MatchedRound,
  Mold,
  Recipe,
  RecipeMatch,
  Settings,
  Target,
} from '../model.ts';
import { type CupAim, cupAim } from './cup-aim.ts';
import { cupLimits } from './cup-limits.ts';
import { cupLeft, cupState, observationsOf, seenViews } from './cup-states.ts';
import { cupUnderLights } from './cup-under-lights.ts';

/** What a match is worked out with. */
export interface MatchContext {
  readonly materials: readonly MatchMaterial[];
  readonly settings: Settings;
  readonly molds: ReadonlyMap<string, Pick<Mold, 'bodyMm'>>;
}

/** A recipe's cups beside the parts of its target, round by round; undefined where no part is for any of its cups. */
export function matchRounds(
  recipe: Pick<Recipe, 'cups' | 'mold' | 'pattern'>,
  target: Omit<Target, 'recipes'>,
  context: MatchContext,
): RecipeMatch | undefined {
  const bodyMm = required(context.molds, recipe.mold).bodyMm;
  const shelf = shelfByName(context.materials);
  const cups = recipe.cups.flatMap((cup): CupMatch[] => {
    const aim = cupAim(recipe, cup, target, { shelf, bodyMm });
    return aim ? [matchCup(cup, aim, bodyMm, target.tolerance, context)] : [];
  });
  return cups.length > 0 ? { target: target.id, tolerance: target.tolerance, cups } : undefined;
}

/** A round beside the target, with what it was reckoned from. */
interface Matched {
  readonly round: MatchedRound;
  readonly state: CupState;
  readonly views: SeenViews;
}

function matchCup(cup: Cup, aim: CupAim, bodyMm: number, tolerance: number, context: MatchContext): CupMatch {
  const { materials, settings } = context;
  const { part, moved } = aim;
  const shelf = shelfByName(materials);
  const observations = observationsOf(cup, bodyMm);
  const known = (name: string): MatchMaterial => required(shelf, name);
  const correction = correctModel(observations, known);
  // By all that the rounds have taught, as the next addition is reckoned.
  const predicted = (state: CupState): TwoViews => {
    const { overWhite, overBlack } = aim.views(state);
    const { offWhite, offBlack } = offsetsFor(correction, state, known);
    return { overWhite: plus(overWhite, offWhite), overBlack: plus(overBlack, offBlack) };
  };
  const matched = (number: number, state: CupState, seen: SeenViews | undefined): Matched[] => {
    const views = seen ? aim.asTarget(seen, state) : predicted(state);
    const found = seen
      ? verdict(views, part, thresholdsFor(tolerance))
      : verdictOf(views, part, thresholdsFor(tolerance));
    if (isNoVerdict(found)) return [];
    const round: MatchedRound = {
      number,
      basis: seen ? 'seen' : 'predicted',
      ...(moved && seen ? { moved } : {}),
      ...(views.overWhite === undefined ? {} : { overWhite: stated(views.overWhite) }),
      ...(views.overBlack === undefined ? {} : { overBlack: stated(views.overBlack) }),
      verdict: keptVerdict(found),
    };
    return [{ round, state, views }];
  };
  const all =
    cup.rounds.length > 0
      ? cup.rounds.flatMap((round) =>
          matched(round.number, cupState(cup, round.plasticMl, round.contents), seenViews(round)),
        )
      : matched(1, cupState(cup, 100, cup.contents), undefined);
  const rounds = all.map(({ round }) => round);
  const last = all.at(-1);
  const left = cupLeft(cup);
  if (!last) return { cup: cup.name, part: part.name, rounds };
  const found = {
    cup: cup.name,
    part: part.name,
    rounds,
    lights: rounded(cupUnderLights(aim, last.state, last.views)),
  };
  if (last.round.verdict.within || !left) return found;
  const seen = seenViews(cup.rounds.at(-1)!);
  const move = seen && unloggedMove(observations);
  const next = nextAddition({
    cup: left,
    target: part,
    shelf: materials,
    bench: settings,
    tolerance,
    rounds: observations,
    ...(seen ? { seen: aim.asTarget(seen, left) } : {}),
    startMl: Math.round(cup.rounds[0]!.plasticMl),
    limits: cupLimits(settings),
    ...(move ? { asks: unloggedQuestion(move, cup.rounds.at(-1)!.number - 1) } : {}),
  });
  const { advice, sentence, proposals, missing } = next;
  // What is to be asked is told to the maker, with its place: see `checkUnlogged`.
  return advice === 'fault' || advice === 'leave' || advice === 'ask'
    ? found
    : { ...found, next: rounded({ advice, sentence, proposals, missing }) };
}

function plus({ L, a, b }: Lab, off: Lab): Lab {
  return { L: Math.min(100, Math.max(0, L + off.L)), a: a + off.a, b: b + off.b };
}

function stated(lab: Lab): Colour {
  return { lab: rounded(lab), ...hexFromLab(lab) };
}

function keptVerdict(found: Verdict): Verdict {
  return rounded(found);
}

/** A plain value with its numbers to four decimals: more than any of them deserves. */
function rounded<T>(value: T): T {
  if (typeof value === 'number') return Number(value.toFixed(4)) as T;
  if (Array.isArray(value)) return value.map(rounded) as T;
  if (typeof value === 'object' && value !== null) {
    return Object.fromEntries(Object.entries(value).map(([name, part]) => [name, rounded(part)])) as T;
  }
  return value;
}
