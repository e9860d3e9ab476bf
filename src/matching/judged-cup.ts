import type { CupHeats } from '../cup/heats.ts';
import { amountOf, type CupState } from '../cup/ledger.ts';
import type { BelievedViews } from '../learning/believed-views.ts';
import { defined } from '../values/defined.ts';
import { required } from '../values/required.ts';
import type { Beliefs } from './belief/beliefs.ts';
import { expectationOf, reachOf } from './belief/expecting.ts';
import { type CupBelieved, type Left, leastGain, leftAsSeen, rightAlready } from './belief/stop.ts';
import { REACHED_FOR, WORKED_OUT } from './conventions.ts';
import { cupFault, toleranceFault } from './cup-fault.ts';
import type { MatchFault } from './match-fault.ts';
import { measuring } from './measure/measuring.ts';
import { type AdditionProblem, additionProblem } from './mix/addition-problem.ts';
import { withBehind } from './mix/layers-of-part.ts';
import type { NextAdditionQuestion } from './next-addition-question.ts';
import { figuring, nearestBottles } from './proposals/figures.ts';
import { firstOf } from './proposals/order.ts';
import { type Proposal, proposalFigures, proposalOf, toolsOf } from './proposals/proposal.ts';
import { worthMeasuring } from './proposals/worth-measuring.ts';
import { type Doubt, differing, misfitOf, type SeenAndPredicted } from './rounds/seen-and-believed.ts';
import { type FoundDoses, findDoses } from './search/find-doses.ts';
import { usualDoses } from './search/usual-doses.ts';
import type { MatchBench } from './shelf/match-bench.ts';
import { type SeenShelf, shelfByName } from './shelf/match-material.ts';
import type { AdditionLimits } from './shelf/usable-materials.ts';
import { targetConstants } from './target/target-constants.ts';
import { partFault, type SeenViews, shownOf, type TargetPart } from './target/target-part.ts';
import { isNoVerdict, type Thresholds, thresholdsFor, type Verdict, verdict, verdictOf } from './target/verdict.ts';

/** A cup beside its target, as it was seen and as it is believed to be, and what could be added to it. */
export interface JudgedCup extends SeenShelf {
  readonly cup: CupState;
  readonly target: TargetPart;
  readonly tolerance: number;
  readonly heats?: CupHeats | undefined;
  readonly belief: Beliefs;
  readonly problem: AdditionProblem;
  readonly thresholds: Thresholds;
  /** The cup now, as seen, or else as predicted. */
  readonly now: Verdict;
  readonly believed: CupBelieved;
  /** Why what is believed of it is to be asked about. */
  readonly doubt?: Doubt;
  readonly differs?: SeenAndPredicted;
  /** Whether a candidate is a material that the cup has nothing of yet. */
  readonly isNew: (candidate: number) => boolean;
}

/** A question that has no answer. */
export interface FaultyQuestion {
  readonly fault: MatchFault;
}

/** Whether there was something wrong with the question. */
export function isFaulty(judged: JudgedCup | FaultyQuestion): judged is FaultyQuestion {
  return 'fault' in judged;
}

/** Judges a cup by all that is believed of it; a fault where something in the question is none. */
export function judgedCup(question: NextAdditionQuestion, limits: AdditionLimits): JudgedCup | FaultyQuestion {
  const fault = questionFault(question);
  if (fault !== undefined) return { fault };
  const { cup, target, tolerance, optics, belief, key, seen, heats } = question;
  const shelf = shelfByName(question.shelf);
  const problem = additionProblem(cup, target, { shelf, optics, belief, key }, limits);
  const { mix, ingredients } = problem;
  const views = belief.of(problem.asked(new Float64Array(mix.count)));
  const thresholds = thresholdsFor(tolerance);
  const predicted = verdictOf(shownOf(views, target), target, thresholds);
  const now = seen ? verdict(seen, target, thresholds) : predicted;
  if (isNoVerdict(now)) return now;
  const believed = { now: expectationOf(views, target, tolerance), ...reachOf(views, target, tolerance) };
  const doubt = misfitOf(seen, views, { isRight: now.within, tolerance });
  return {
    ...{ cup, target, tolerance, heats, shelf, optics, belief, problem, thresholds, now, believed },
    ...defined({ doubt, differs: seen && !doubt ? differing(now.deltaE, predicted.deltaE) : undefined }),
    isNew: (candidate) => {
      const { material, letsDown } = ingredients[candidate]!;
      return !letsDown && !(amountOf(cup.materials, material.id) > 0);
    },
  };
}

/** Whether a cup is to be left as it is, whatever could be added; undefined where a step is to be looked for. */
export function leftAsItIs({ now, believed, target }: JudgedCup, seen: SeenViews | undefined): Left | undefined {
  if (!seen) return rightAlready(believed);
  const isWhole = seen.overWhite !== undefined && (!target.overBlack || seen.overBlack !== undefined);
  return leftAsSeen(believed, isWhole ? now.deltaE : undefined);
}

/** The exact doses that bring a cup nearest, best first, of so many materials, and so many of them new to it. */
export function dosesFor(
  judged: JudgedCup,
  { most, newBottles }: { readonly most: number; readonly newBottles: number },
): readonly FoundDoses[] {
  const { problem, target, tolerance, optics, isNew } = judged;
  const among = nearestBottles(problem.ingredients, [target], REACHED_FOR, optics);
  const found = findDoses(problem.mix, [problem.cups, withBehind(target, targetConstants(target, optics))], {
    size: most,
    among,
    counts: isNew,
    limit: newBottles,
  });
  return usualDoses(found, problem.problem, tolerance);
}

/** What doses are expected to do to a cup, by these tools, and all that they are chosen by. */
export function figuringOf(
  { problem: { mix, ingredients, asked }, target, tolerance, belief, isNew }: JudgedCup,
  bench: MatchBench,
): ReturnType<typeof figuring> {
  const believed = (doses: Float64Array): readonly BelievedViews[] => [belief.of(asked(doses))];
  return figuring({ mix, ingredients, parts: [target], believed, tolerance, bench, isNew });
}

/** The best of some exact doses, measured with these tools, that are worth it; best first. */
export function measuredProposals(
  judged: JudgedCup,
  found: readonly FoundDoses[],
  bench: MatchBench,
  isWorthIt: (proposal: Proposal) => boolean,
): readonly Proposal[] {
  const { problem, tolerance } = judged;
  const { ingredients, plasticMl } = problem;
  const { expect, figuresOf } = figuringOf(judged, bench);
  const measure = measuring(problem, [plasticMl], bench);
  const worth = worthMeasuring(found, ingredients, { expect, figuresOf }, tolerance, measure, [plasticMl]);
  const proposals = worth.flatMap((each) => {
    const { doses } = each;
    const measured = measure(each);
    if (!measured) return [];
    const expectation = expect(measured.doses, { toolOf: toolsOf(measured.ingredients), plasticMl: [plasticMl] });
    const proposal = proposalOf(measured, doses, { ...judged, bench, expect, expectation });
    if (!isWorthIt(proposal)) return [];
    return [{ proposal, figures: proposalFigures(proposal, figuresOf(measured.doses, { expectation })) }];
  });
  return firstOf(proposals, ({ figures }) => figures, tolerance, WORKED_OUT).map(({ proposal }) => proposal);
}

/** Whether a proposal gains what it costs: the stove, and of a cup with flake one more heat for that. */
export function gainsEnough(proposal: Proposal, { cup, shelf, believed: { now } }: JudgedCup): boolean {
  const hasFlake = Object.keys(cup.materials).some(
    (name) => amountOf(cup.materials, name) > 0 && required(shelf, name).flake !== undefined,
  );
  const heatsFlake = hasFlake && proposal.heat !== undefined && proposal.heat.costs !== 'no';
  return proposal.expected < now.expected - leastGain({ heatsFlake });
}

function questionFault({ cup, target, shelf, tolerance, seen }: NextAdditionQuestion): MatchFault | undefined {
  return (
    cupFault(cup, new Set(shelf.map(({ id }) => id))) ??
    toleranceFault(tolerance) ??
    partFault(target) ??
    (seen && seenFault(seen))
  );
}

function seenFault({ overWhite, overBlack }: SeenViews): MatchFault | undefined {
  return overWhite === undefined && overBlack === undefined ? { kind: 'not-seen' } : undefined;
}
