import { additionProblem } from './addition-problem.ts';
import { correctModel } from './correct-model.ts';
import { findDoses } from './find-doses.ts';
import { withBehind } from './layers-of-part.ts';
import { shelfByName } from './match-material.ts';
import { measureDoses } from './measure-doses.ts';
import { freshCup, freshMl, type NextAdditionQuestion, questionFault } from './next-addition.ts';
import { type Proposal, proposalOf } from './proposal.ts';
import type { RecipeProposal } from './recipe-proposal.ts';
import { targetConstants } from './target-constants.ts';
import { isNoVerdict, thresholdsFor, type Verdict, verdict, verdictOf } from './verdict.ts';
import { differenceText } from './words.ts';

/** Whether an overshot cup can be thinned back. */
export interface CutBack {
  /** 'leave' it, 'thin' it, 'start-again' with a new cup, 'cannot' be thinned, or a 'fault' in what was asked. */
  readonly advice: 'leave' | 'thin' | 'start-again' | 'cannot' | 'fault';
  /** For the maker. */
  readonly sentence: string;
  readonly now?: Verdict;
  /** With plastic alone, where that brings it nearer. */
  readonly thinned?: Proposal;
  /** With plastic and up to two materials to mend what thinning spoils, where that is nearer still. */
  readonly mended?: Proposal;
  /** The same colour in a new cup, with what the rounds have taught. */
  readonly fresh?: RecipeProposal;
}

// What plastic alone cannot do better than this much ΔE00 nearer is not worth it.
const LEAST_GAIN = 0.1;
const WORTH_MENDING = 0.5;
const STEPS = 24;

/**
 * How much clear plastic brings an overshot cup back, what volume results, and whether that is better than starting again.
 *
 * Never throws for what a maker gives.
 */
export function cutBack(question: NextAdditionQuestion): CutBack {
  const fault = questionFault(question);
  if (fault !== undefined) return { advice: 'fault', sentence: fault };
  const { cup, target, bench, tolerance, seen, limits = {} } = question;
  const shelf = shelfByName(question.shelf);
  const correction = correctModel(question.rounds ?? [], (name) => shelf.get(name)!, question.priors);
  const problem = additionProblem(cup, target, shelf, correction, { ...limits, mayThin: true });
  const { mix, ingredients, plasticMl } = problem;
  const nothingAdded = new Float64Array(mix.count);
  const [white, black] = mix.labs(nothingAdded);
  const thresholds = thresholdsFor(tolerance);
  const predictedViews = { overWhite: white!, ...(black ? { overBlack: black } : {}) };
  const now = seen ? verdict(seen, target, thresholds) : verdictOf(predictedViews, target, thresholds);
  if (isNoVerdict(now)) return { advice: 'fault', sentence: now.fault };
  if (now.within) return { advice: 'leave', sentence: `Leave it: it is ${now.sentence}.`, now };
  const thin = ingredients.findIndex(({ thins }) => thins);
  if (thin < 0)
    return {
      advice: 'cannot',
      sentence: `There is no room in the cup for more plastic: there are ${Math.round(plasticMl)} ml in it, and it is to be filled to ${Math.round(limits.roomMl ?? plasticMl)} ml. Pour half of it into another cup, write that pour down, and ask again.`,
      now,
    };

  const isNew = (j: number): boolean =>
    !ingredients[j]!.thins && !((cup.materials[ingredients[j]!.material.id] ?? 0) > 0);
  const context = { problem, cup, target, shelf, bench, thresholds, isNew };
  const measured = (set: readonly number[], doses: Float64Array): ReturnType<typeof measureDoses> =>
    measureDoses(mix, ingredients, set, doses, [plasticMl], bench);
  const share = bestShare(mix, thin);
  const alone = measured([thin], share);
  const predicted = mix.worst(nothingAdded);
  const thinned =
    alone.ingredients.length > 0 && mix.worst(alone.doses) < predicted - LEAST_GAIN
      ? proposalOf(alone, share, context)
      : undefined;
  const [withOthers] = findDoses(mix, [problem.cups, withBehind(target, targetConstants(target))], {
    size: 3,
    counts: isNew,
    limit: 2,
  })
    .filter(({ set }) => set.includes(thin))
    .map(({ set, doses }) => ({ exact: doses, each: measured(set, doses) }))
    .filter(
      ({ each: { ingredients: used, doses } }) =>
        used.some(({ candidate }) => candidate === thin) && mix.worst(doses) < predicted - LEAST_GAIN,
    )
    .sort((one, other) => one.each.score - other.each.score);
  const other =
    withOthers && withOthers.each.ingredients.length > 1
      ? proposalOf(withOthers.each, withOthers.exact, context)
      : undefined;
  // What plastic alone makes worse is hardly overshot: more plastic than the cup holds would be another cup.
  const worthIt = other !== undefined && (thinned !== undefined || (other.thin?.ml ?? 0) <= plasticMl);
  const mended = worthIt && other.left.deltaE < (thinned?.left.deltaE ?? predicted) - WORTH_MENDING ? other : undefined;
  const best = thinned?.left.within ? thinned : (mended ?? thinned);
  const fresh = freshCup(question, correction, Number.POSITIVE_INFINITY);
  const known = {
    now,
    ...(thinned === undefined ? {} : { thinned }),
    ...(mended === undefined ? {} : { mended }),
    ...(fresh === undefined ? {} : { fresh }),
  };
  if (!best) {
    const again = fresh && fresh.deltaE < predicted ? ` A new cup would come nearer: ${fresh.sentence}` : '';
    return {
      advice: fresh && fresh.deltaE <= tolerance ? 'start-again' : 'cannot',
      sentence: `Clear plastic does not bring this cup nearer: it is ${now.sentence}.${again}`,
      ...known,
    };
  }
  return { ...judge(best, fresh, freshMl(question), tolerance), ...known };
}

/** Whether thinning beats a new cup: by the colour, and by how much plastic each takes. */
function judge(
  best: Proposal,
  fresh: RecipeProposal | undefined,
  startMl: number,
  tolerance: number,
): Pick<CutBack, 'advice' | 'sentence'> {
  const ml = best.thin?.ml ?? 0;
  const result = `${best.sentence} That makes ${Math.round(best.volumeMl)} ml in all and leaves ΔE ${differenceText(best.left.deltaE)}.`;
  const nearer = fresh !== undefined && !best.left.within && fresh.deltaE < best.left.deltaE - WORTH_MENDING;
  const cheaper = fresh !== undefined && ml > startMl && fresh.deltaE <= Math.max(tolerance, best.left.deltaE);
  if (nearer) return { advice: 'start-again', sentence: `${result} A new cup would come nearer: ${fresh.sentence}` };
  if (cheaper) return { advice: 'start-again', sentence: `${result} A new cup takes less plastic: ${fresh.sentence}` };
  const why =
    fresh === undefined
      ? ''
      : ml > startMl
        ? ''
        : ` That beats starting again, which would take ${Math.round(startMl)} ml.`;
  return { advice: 'thin', sentence: `${result}${why}` };
}

/** The share of added plastic that leaves least, by trying the whole range and then closing in. */
function bestShare(mix: Parameters<typeof measureDoses>[0], thin: number): Float64Array {
  const doses = new Float64Array(mix.count);
  const score = (share: number): number => {
    doses[thin] = share;
    return mix.score(doses);
  };
  const most = mix.most[thin]!;
  let best = 0;
  for (let step = 1; step <= STEPS; step++)
    if (score((most * step) / STEPS) < score((most * best) / STEPS)) best = step;
  let low = (most * Math.max(0, best - 1)) / STEPS;
  let high = (most * Math.min(STEPS, best + 1)) / STEPS;
  for (let i = 0; i < 20; i++) {
    const one = low + (high - low) / 3;
    const other = high - (high - low) / 3;
    if (score(one) < score(other)) high = other;
    else low = one;
  }
  doses[thin] = (low + high) / 2;
  return doses;
}
