import { isLikelyRight } from '../matching/belief/expectation.ts';
import { bestPromise } from '../matching/measure/best-tools.ts';
import type { Crowded, NextAddition } from '../matching/next-addition.ts';
import type { Proposal } from '../matching/proposals/proposal.ts';
import { type VolumeUnit, volumeText } from '../units/volume-text.ts';
import { toAddText, weightsText } from './amount.ts';
import { differenceText } from './difference.ts';
import { differsSentences, doubtSentences } from './doubt.ts';
import { expectationText, leftWords } from './expectation.ts';
import { additionHeatSentences, type HeatUnit } from './heats.ts';
import { matchFaultText } from './match-fault.ts';
import { hinderedSentences, missingSentences } from './missing.ts';
import { hitches, proposalText, recipeText, weighedWords } from './proposal.ts';
import { sentence } from './sentence-text.ts';
import { shortPlasticText } from './stock.ts';
import { verdictText } from './verdict.ts';
import { whatWentInText } from './what-went-in.ts';

/** What there is to say of an addition besides what it is and what it leaves, sentence by sentence. */
export function besidesAdditionText(answer: Omit<NextAddition, 'leftOut'>, units: VolumeUnit & HeatUnit): string {
  const { advice, startAgain, spares } = answer;
  const recipe = startAgain && recipeText(startAgain, units);
  const finer = advice.kind === 'add' && advice.nearerBy === 'finer-steps';
  return [
    ...(finer ? ['A cut of the strongest colour, or a finer measure, would get closer.'] : []),
    ...(recipe && !spares ? [`A new cup gets closer: ${recipe}`] : []),
    ...besidesOf(answer, answer.proposals[0], units),
    ...(recipe && spares ? [`A new cup spares it that: ${recipe}`] : []),
  ].join(' ');
}

/** What to do with a cup now, and why. */
export function nextAdditionText(answer: Omit<NextAddition, 'leftOut'>, units: VolumeUnit & HeatUnit): string {
  const { advice, now, doubt, missing, hindered, startAgain, spares } = answer;
  const [best] = answer.proposals;
  const besides = (proposal: Proposal | undefined): readonly string[] => besidesOf(answer, proposal, units);
  const recipe = startAgain && recipeText(startAgain, units);
  const fresher = recipe && !spares ? [`A new cup gets closer: ${recipe}`] : [];
  const sparing = recipe && spares ? [`A new cup spares it that: ${recipe}`] : [];
  switch (advice.kind) {
    case 'fault':
      return matchFaultText(advice.fault, units);
    case 'ask-what-went-in':
      return whatWentInText(advice.asks, units);
    case 'leave-it':
      return `Leave it as it is${leftWords(advice)}. ${sentence(verdictText(now!))}.`;
    case 'start-over': {
      const neither = best && !isLikelyRight(bestPromise(startAgain!)) && !isLikelyRight(bestPromise(best));
      return [
        `Start over with a new cup: ${recipeText(startAgain!, units)}`,
        best
          ? `Fixing this one takes more than that: add ${toAddText(best, units)}; what’s left: ${expectationText(best)}.`
          : 'Nothing you could add gets this one closer.',
        ...(neither ? ['Neither is likely within tolerance.'] : []),
        ...besides(best),
      ].join(' ');
    }
    case 'add':
      return [
        proposalText(best!, units),
        `What’s left: ${expectationText(best!)}${nearerText(best!, advice.nearerBy)}.`,
        ...fresher,
        ...besides(best),
        ...sparing,
      ].join(' ');
    case 'cannot':
      return [
        ...doubtSentences(doubt),
        ...(advice.because === 'look-first'
          ? ['Until then leave the cup as it is.']
          : [
              best
                ? `Nothing on the shelf gets this cup within tolerance. The best fix: add ${toAddText(best, units)}; what’s left: ${expectationText(best)}${weighedWords(best)}.`
                : `Nothing on the shelf gets this cup closer than it is: ${differenceText(now!.deltaE)}.`,
              ...hinderedSentences(hindered),
              ...missingSentences(missing),
              ...fresher,
            ]),
        ...besides(best),
        ...sparing,
      ].join(' ');
  }
}

function besidesOf(
  answer: Omit<NextAddition, 'leftOut'>,
  proposal: Proposal | undefined,
  units: VolumeUnit & HeatUnit,
): readonly string[] {
  const { byHand, crowded, shortPlastic, differs } = answer;
  return [
    ...additionHeatSentences(proposal, units),
    ...hitches(proposal, byHand, units),
    ...(crowded === undefined ? [] : [crowdedText(crowded, units)]),
    ...(shortPlastic === undefined ? [] : [`A new cup would take ${shortPlasticText(shortPlastic, units)}.`]),
    ...differsSentences(differs, answer),
  ];
}

/** What comes nearer than a proposal that only the bench's steps keep from being right. */
function nearerText({ additions, weighed }: Proposal, nearerBy: 'weighing' | 'finer-steps' | undefined): string {
  if (nearerBy === undefined) return '';
  return nearerBy === 'weighing'
    ? `; weighed, with ${weightsText(additions)}, ${expectationText(weighed!)}`
    : '; a cut of the strongest colour, or a finer measure, would get closer';
}

function crowdedText({ kind, plasticMl, roomMl }: Crowded, units: VolumeUnit): string {
  return kind === 'over-full'
    ? `The cup holds ${volumeText(plasticMl, units)} and should hold no more than ${volumeText(roomMl, units)}: hot plastic foams.`
    : `The cup is as full as it should get (${volumeText(roomMl, units)}). To let it down with clear plastic, pour some of it into another cup first.`;
}
