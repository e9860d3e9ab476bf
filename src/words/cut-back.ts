import type { CutBack } from '../matching/cut-back.ts';
import { type VolumeUnit, volumeText } from '../units/volume-text.ts';
import { differenceText } from './difference.ts';
import { doubtSentences } from './doubt.ts';
import { expectationText, leftWords } from './expectation.ts';
import { additionHeatSentences, type HeatUnit } from './heats.ts';
import { matchFaultText } from './match-fault.ts';
import { proposalText, recipeText, weighedWords } from './proposal.ts';
import { sentence } from './sentence-text.ts';
import { verdictText } from './verdict.ts';
import { whatWentInText } from './what-went-in.ts';

/** Whether to let a cup down with clear plastic, and why. */
export function cutBackText(answer: CutBack, units: VolumeUnit & HeatUnit): string {
  const { advice, now, doubt, fresh } = answer;
  const volume = (ml: number): string => volumeText(ml, units);
  switch (advice.kind) {
    case 'fault':
      return matchFaultText(advice.fault, units);
    case 'ask-what-went-in':
      return whatWentInText(advice.asks, units);
    case 'leave-it':
      return `Leave it as it is${leftWords(advice)}. ${sentence(verdictText(now!))}.`;
    case 'add':
      return 'It doesn’t have too much of anything, so clear plastic won’t help: ask `next` what to add.';
    case 'let-down':
      return [downText(answer, advice.by, units), ...newCupSentences(answer, units)].join(' ');
    case 'start-over':
      if (advice.because !== 'plastic-does-not-help')
        return [
          downText(answer, advice.than, units),
          `A new cup ${advice.because === 'comes-nearer' ? 'gets closer' : 'takes less plastic'}: ${recipeText(fresh!, units)}`,
        ].join(' ');
      break;
    case 'cannot':
      if (advice.because === 'look-first')
        return [...doubtSentences(doubt), 'Until then leave the cup as it is.'].join(' ');
      if (advice.because === 'no-room') {
        const { plasticMl, roomMl } = advice;
        return `There is no room for more plastic: the cup holds ${volume(plasticMl)} and should hold no more than ${volume(roomMl)}. Pour all but ${volume(roomMl / 2)} into other cups, log that pour, and ask again.`;
      }
  }
  return [
    `Clear plastic won’t get this cup closer than it is: ${differenceText(now!.deltaE)}.`,
    ...(fresh ? [`A new cup would get closer: ${recipeText(fresh, units)}`] : []),
  ].join(' ');
}

/** What to add, and what comes of it. */
function downText(answer: CutBack, by: 'plasticAlone' | 'mended', units: VolumeUnit & HeatUnit): string {
  const best = answer[by]!;
  return [
    proposalText(best, units),
    `That makes ${volumeText(best.volumeMl, units)}. What’s left: ${expectationText(best)}${weighedWords(best)}.`,
    ...additionHeatSentences(best, units),
  ].join(' ');
}

/** Why a new cup is no better; none where there is none. */
function newCupSentences({ advice, fresh }: CutBack, units: VolumeUnit): readonly string[] {
  if (advice.kind !== 'let-down' || advice.newCup === undefined || fresh === undefined) return [];
  const cup = `${volumeText(fresh.cups[0]!.plasticMl, units)} and leave a difference: ${expectationText(fresh)}${weighedWords(fresh)}`;
  switch (advice.newCup) {
    case 'farther-off':
      return [`A new cup would take ${cup}.`];
    case 'spares':
      return [`A new cup spares it that: it would take ${cup}.`];
    case 'no-nearer':
      return [`That beats starting over, which would take ${cup}.`];
    case 'hardly-less':
      return [`Starting over would be hardly better: it would take ${cup}.`];
  }
}
