import { isEmpty } from '../../cup/ledger.ts';
import type { Beliefs } from '../../matching/belief/beliefs.ts';
import { type AskedWith, type CupAsked, cupQuestion, unloggedLook } from '../../matching/cup-question.ts';
import { nextAddition } from '../../matching/next-addition.ts';
import type { MatchMaterial } from '../../matching/shelf/match-material.ts';
import type { OpticalModel } from '../../optics/optical-model.ts';
import { required } from '../../values/required.ts';
import type { Cup } from '../model/cup.ts';
import type { Recipe } from '../model/recipe.ts';
import type { Mold } from '../model/shelf.ts';
import type { CupMatch, RecipeMatch, Target } from '../model/target.ts';
import type { Settings } from '../model.ts';
import { askedCup, askedWith } from './asked-cup.ts';
import { cupUnderLights } from './cup-under-lights.ts';
import { matchedRound, rounded } from './matched-round.ts';

/** What a match is worked out with. */
export interface MatchContext {
  readonly materials: readonly MatchMaterial[];
  readonly optics: OpticalModel;
  /** What looks have taught. */
  readonly belief: Beliefs;
  readonly settings: Settings;
  readonly molds: ReadonlyMap<string, Pick<Mold, 'bodyMm'>>;
}

/**
 * A recipe's cups beside the parts of its target, round by round; undefined where no part is for any of its cups.
 *
 * @param proposes whether to say what to add next
 */
export function matchRounds(
  recipe: Pick<Recipe, 'id' | 'cups' | 'mold' | 'pattern' | 'seen'>,
  target: Omit<Target, 'recipes'>,
  context: MatchContext,
  proposes = true,
): RecipeMatch | undefined {
  const bodyMm = required(context.molds, recipe.mold).bodyMm;
  const cups = recipe.cups.flatMap((cup): CupMatch[] => {
    const asked = askedCup(recipe, cup, target, bodyMm);
    return asked ? [matchCup(cup, asked, askedWith(context, target), proposes)] : [];
  });
  return cups.length > 0 ? { target: target.id, tolerance: target.tolerance, cups } : undefined;
}

function matchCup({ name: cup }: Cup, asked: CupAsked, asking: AskedWith, proposes: boolean): CupMatch {
  const { aim, question } = cupQuestion(asked, asking);
  // A cup without a log is a round that was not looked at.
  const tried = asked.rounds.length > 0 ? asked.rounds : [{ number: 1, cup: asked.start }];
  const all = tried.flatMap((round) => {
    const matched = matchedRound(round, { aim, belief: asking.belief, tolerance: asking.tolerance });
    return matched ? [{ ...matched, state: round.cup }] : [];
  });
  const rounds = all.map(({ round }) => round);
  const last = all.at(-1);
  const known = { cup, part: asked.part.name, rounds };
  if (!last) return known;
  const found = { ...known, lights: rounded(cupUnderLights(aim, last.state, last.views)) };
  const isLeft = asked.rounds.length > 0 && !isEmpty(question.cup);
  // What is to be asked is told to the maker, with its place: see `checkUnlogged`.
  if (!proposes || last.round.verdict.within || !isLeft || unloggedLook(asked)) return found;
  const { leftOut: _, ...told } = nextAddition(question);
  const { kind } = told.advice;
  return kind === 'fault' || kind === 'leave-it' ? found : { ...found, next: rounded(told) };
}
