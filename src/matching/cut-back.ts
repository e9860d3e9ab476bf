import { defined } from '../values/defined.ts';
import { required } from '../values/required.ts';
import { LEAST_GAIN, WORKED_OUT } from './conventions.ts';
import { byBestTools, leastLeft } from './measure/best-tools.ts';
import { measureDoses } from './measure/measure-doses.ts';
import { weighedWords } from './measure/weigh-doses.ts';
import { additionProblem } from './mix/addition-problem.ts';
import { withBehind } from './mix/layers-of-part.ts';
import { type NextAdditionQuestion, questionFault } from './next-addition.ts';
import { leftBy } from './next-addition-words.ts';
import { freshCup, freshMl } from './proposals/fresh-cup.ts';
import { type Proposal, proposalOf, rankProposals } from './proposals/proposal.ts';
import type { RecipeProposal } from './proposals/recipe-proposal.ts';
import { correctModel } from './rounds/correct-model.ts';
import { reckoning } from './rounds/reckoning.ts';
import { findDoses } from './search/find-doses.ts';
import { type MatchBench, plasticText } from './shelf/match-bench.ts';
import { shelfByName } from './shelf/match-material.ts';
import { isOvershot } from './target/overshot.ts';
import { targetConstants } from './target/target-constants.ts';
import { isNoVerdict, thresholdsFor, type Verdict, verdict } from './target/verdict.ts';
import { differenceText } from './words.ts';

/** Whether an overshot cup can be thinned back. */
export interface CutBack {
  /**
   * 'leave' it, 'thin' it, 'start-again' with a new cup, 'add' to it, since there is not too much of anything in it, 'cannot' be
   * thinned, 'ask' first what went in, or a 'fault' in what was asked.
   */
  readonly advice: 'leave' | 'thin' | 'start-again' | 'add' | 'cannot' | 'ask' | 'fault';
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
  const correction = correctModel(question.rounds ?? [], (name) => required(shelf, name), question.priors);
  const problem = additionProblem(cup, target, shelf, correction, { ...limits, mayThin: true });
  const { mix, ingredients, plasticMl } = problem;
  const nothingAdded = new Float64Array(mix.count);
  const [white, black] = mix.labs(nothingAdded);
  const thresholds = thresholdsFor(tolerance);
  const predictedViews = { overWhite: white!, ...(black ? { overBlack: black } : {}) };
  const views = seen ?? predictedViews;
  const now = verdict(views, target, thresholds);
  if (isNoVerdict(now)) return { advice: 'fault', sentence: now.fault };
  if (question.asks !== undefined) return { advice: 'ask', sentence: question.asks, now };
  const predicted = mix.worst(nothingAdded);
  const { isDone, below, caution } = reckoning({
    correction,
    now,
    predictedDeltaE: predicted,
    seen,
    target,
    tolerance,
  });
  if (isDone) return { advice: 'leave', sentence: `Leave it: it is ${now.sentence}.`, now };
  if (now.within) return { advice: 'add', sentence: `${caution}\`next\` then says what to do.`, now };
  const tooMuch = isOvershot(now, views, target);
  const thin = ingredients.findIndex(({ thins }) => thins);
  if (thin < 0) {
    const room = limits.roomMl ?? plasticMl;
    return {
      advice: 'cannot',
      sentence: `There is no room in the cup for more plastic: there are ${plasticText(plasticMl, bench)} in it, and it is to be filled to ${plasticText(room, bench)}. Pour all but ${plasticText(room / 2, bench)} of it into other cups, write that pour down, and ask again.`,
      now,
    };
  }

  const isNew = (j: number): boolean =>
    !ingredients[j]!.thins && !((cup.materials[ingredients[j]!.material.id] ?? 0) > 0);
  const share = bestShare(mix, thin);
  const alone = measureDoses(mix, ingredients, [thin], share, [plasticMl], bench);
  const context = { problem, cup, target, shelf, thresholds, isNew };
  const thinned =
    alone.ingredients.length > 0 && mix.worst(alone.doses) < below - LEAST_GAIN
      ? proposalOf(alone, share, { ...context, bench })
      : undefined;
  if (!tooMuch && (thinned === undefined || isTooThin(now)))
    return {
      advice: 'add',
      sentence: 'It is not overshot, so thinning does not help it: `next` says what to add.',
      now,
    };
  const withPlastic = findDoses(mix, [problem.cups, withBehind(target, targetConstants(target))], {
    size: 3,
    counts: isNew,
    limit: 2,
  }).filter(({ set }) => set.includes(thin));
  const mendedBy = (tools: MatchBench): readonly Proposal[] =>
    rankProposals(
      withPlastic
        .slice(0, WORKED_OUT)
        .map(({ set, doses }) => ({
          exact: doses,
          each: measureDoses(mix, ingredients, set, doses, [plasticMl], tools),
        }))
        .filter(
          ({ each: { ingredients: used, doses } }) =>
            used.length > 1 &&
            used.some(({ candidate }) => candidate === thin) &&
            mix.worst(doses) < below - LEAST_GAIN,
        )
        .map(({ exact, each }) => proposalOf(each, exact, { ...context, bench: tools })),
      tolerance,
      1,
    );
  const [other] = byBestTools(bench, mendedBy, leftBy, tolerance, predicted).proposals;
  // What plastic alone makes worse is hardly overshot: more plastic than the cup holds would be another cup.
  const worthIt = other !== undefined && (thinned !== undefined || (other.thin?.ml ?? 0) <= plasticMl);
  const mended =
    worthIt && leastLeft(leftBy(other)) < (thinned?.left.deltaE ?? below) - WORTH_MENDING ? other : undefined;
  const best = thinned?.left.within ? thinned : (mended ?? thinned);
  const anew = freshCup(question, correction);
  const fresh = anew && leastLeft(anew) < below ? anew : undefined;
  const known = {
    now,
    ...defined({ thinned, mended, fresh }),
  };
  if (!best) {
    const again = fresh && leastLeft(fresh) < below ? ` A new cup would come nearer: ${fresh.sentence}` : '';
    return {
      advice: fresh && leastLeft(fresh) <= tolerance ? 'start-again' : 'cannot',
      sentence: `${caution}Clear plastic does not bring this cup nearer: it is ${now.sentence}.${again}`,
      ...known,
    };
  }
  const judged = judge(best, fresh, question);
  return { ...judged, sentence: `${caution}${judged.sentence}`, ...known };
}

function isTooThin({ thickness }: Verdict): boolean {
  return thickness !== undefined && !thickness.within && thickness.contrast < thickness.target;
}

/** Whether thinning beats a new cup: by the colour, and by how much plastic each takes. */
function judge(
  best: Proposal,
  fresh: RecipeProposal | undefined,
  question: NextAdditionQuestion,
): Pick<CutBack, 'advice' | 'sentence'> {
  const { bench, tolerance } = question;
  const startMl = freshMl(question);
  const ml = best.thin?.ml ?? 0;
  const left = leastLeft(leftBy(best));
  const result = `${best.sentence} That makes ${plasticText(best.volumeMl, bench)} in all and leaves ΔE ${differenceText(best.left.deltaE)}${weighedWords(leftBy(best))}.`;
  if (fresh === undefined) return { advice: 'thin', sentence: result };
  const anew = leastLeft(fresh);
  const again = (advice: string): Pick<CutBack, 'advice' | 'sentence'> => ({
    advice: 'start-again',
    sentence: `${result} A new cup ${advice}: ${fresh.sentence}`,
  });
  if (left > tolerance && anew < left - WORTH_MENDING) return again('comes nearer');
  if (ml > startMl && anew <= Math.max(tolerance, left)) return again('takes less plastic');
  const cup = `${plasticText(startMl, bench)} and leave ΔE ${differenceText(fresh.deltaE)}${weighedWords(fresh)}`;
  const why =
    ml > startMl
      ? `A new cup would take ${cup}.`
      : left <= tolerance || left <= anew
        ? `That beats starting again, which would take ${cup}.`
        : `Starting again would take ${cup}, hardly less.`;
  return { advice: 'thin', sentence: `${result} ${why}` };
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
