import type { CupHeats } from '../cup/heats.ts';
import { amountOf, type CupState } from '../cup/ledger.ts';
import { defined } from '../values/defined.ts';
import { required } from '../values/required.ts';
import { REACHED_FOR, WORKED_OUT } from './conventions.ts';
import { cupFault, toleranceFault } from './cup-fault.ts';
import type { MatchFault } from './match-fault.ts';
import { type MeasuredDoses, measureDoses } from './measure/measure-doses.ts';
import { type AdditionProblem, additionProblem } from './mix/addition-problem.ts';
import { withBehind } from './mix/layers-of-part.ts';
import type { NextAdditionQuestion } from './next-addition-question.ts';
import { figuring, nearestBottles } from './proposals/figures.ts';
import { firstOf } from './proposals/order.ts';
import { type Proposal, proposalFigures, proposalOf } from './proposals/proposal.ts';
import { worthMeasuring } from './proposals/worth-measuring.ts';
import { correctModel, type ModelCorrection } from './rounds/correct-model.ts';
import { type Reckoning, reckoning } from './rounds/reckoning.ts';
import { type FoundDoses, findDoses } from './search/find-doses.ts';
import { usualDoses } from './search/usual-doses.ts';
import type { MatchBench } from './shelf/match-bench.ts';
import { type SeenShelf, shelfByName } from './shelf/match-material.ts';
import type { AdditionLimits } from './shelf/usable-materials.ts';
import { targetConstants } from './target/target-constants.ts';
import { partFault, type SeenViews, type TargetPart } from './target/target-part.ts';
import { isNoVerdict, type Thresholds, thresholdsFor, type Verdict, verdict, verdictOf } from './target/verdict.ts';

/** A cup beside its target, as the rounds so far have taught to see it, and what could be added to it. */
export interface JudgedCup extends SeenShelf {
  readonly cup: CupState;
  readonly target: TargetPart;
  readonly tolerance: number;
  readonly heats?: CupHeats | undefined;
  readonly correction: ModelCorrection;
  readonly problem: AdditionProblem;
  readonly thresholds: Thresholds;
  /** The cup now, as seen, or else as predicted. */
  readonly now: Verdict;
  /** ΔE00 that the corrected model gives the cup now. */
  readonly predictedDeltaE: number;
  readonly reckoned: Reckoning;
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

/** Judges a cup, with the model corrected by the rounds so far; a fault where something in the question is none. */
export function judgedCup(question: NextAdditionQuestion, limits: AdditionLimits): JudgedCup | FaultyQuestion {
  const fault = questionFault(question);
  if (fault !== undefined) return { fault };
  const { cup, target, tolerance, seen, heats, optics } = question;
  const shelf = shelfByName(question.shelf);
  const correction = correctModel(question.rounds ?? [], (name) => required(shelf, name), optics, question.priors);
  const problem = additionProblem(cup, target, { shelf, optics }, correction, limits);
  const { mix, ingredients } = problem;
  const nothingAdded = new Float64Array(mix.count);
  const thresholds = thresholdsFor(tolerance);
  const [white, black] = mix.labs(nothingAdded);
  const now = seen
    ? verdict(seen, target, thresholds)
    : verdictOf({ overWhite: white!, ...defined({ overBlack: black }) }, target, thresholds);
  if (isNoVerdict(now)) return now;
  const predictedDeltaE = mix.worst(nothingAdded);
  return {
    cup,
    target,
    tolerance,
    heats,
    shelf,
    optics,
    correction,
    problem,
    thresholds,
    now,
    predictedDeltaE,
    reckoned: reckoning({ correction, now, predictedDeltaE, seen, target, tolerance }),
    isNew: (candidate) => {
      const { material, letsDown } = ingredients[candidate]!;
      return !letsDown && !(amountOf(cup.materials, material.id) > 0);
    },
  };
}

/** The exact doses that bring a cup nearest, best first, of so many materials, and so many of them new to it. */
export function dosesFor(
  { problem, target, tolerance, optics, isNew }: JudgedCup,
  { most, newBottles }: { readonly most: number; readonly newBottles: number },
): readonly FoundDoses[] {
  const among = nearestBottles(problem.ingredients, [target], REACHED_FOR, optics);
  const found = findDoses(problem.mix, [problem.cups, withBehind(target, targetConstants(target, optics))], {
    size: most,
    among,
    counts: isNew,
    limit: newBottles,
  });
  return usualDoses(found, problem.problem, tolerance);
}

/** The best of some exact doses, measured with these tools, that are worth it; best first. */
export function measuredProposals(
  judged: JudgedCup,
  found: readonly FoundDoses[],
  bench: MatchBench,
  isWorthIt: (measured: MeasuredDoses) => boolean,
): readonly Proposal[] {
  const { problem, target, tolerance, isNew } = judged;
  const { mix, ingredients, plasticMl } = problem;
  const figuresOf = figuring({ mix, ingredients, parts: [target], bench, isNew });
  const proposals = worthMeasuring(found, figuresOf, tolerance).flatMap(({ set, doses }) => {
    const measured = measureDoses(mix, ingredients, set, doses, [plasticMl], bench);
    if (!isWorthIt(measured)) return [];
    const proposal = proposalOf(measured, doses, { ...judged, bench });
    return [{ proposal, figures: proposalFigures(proposal, measured, figuresOf, [plasticMl]) }];
  });
  return firstOf(proposals, ({ figures }) => figures, tolerance, WORKED_OUT).map(({ proposal }) => proposal);
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
