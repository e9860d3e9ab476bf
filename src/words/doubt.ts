import type { Doubt, SeenAndPredicted } from '../matching/rounds/reckoning.ts';
import { deltaEText, differenceText } from './difference.ts';

/** Why what is predicted is not to be trusted, and what to do; sentences. */
export function doubtSentences(doubt: Doubt | undefined): readonly string[] {
  if (doubt === undefined) return [];
  return doubt.kind === 'misfit'
    ? [
        `Your last look does not fit what the shelf can produce (ΔE ${deltaEText(doubt.deltaE)} off, even after learning from the rounds).`,
        'Look at a test pour again in daylight, enter the round again, and check the log. Until then predictions may be off by as much.',
      ]
    : [
        `You haven’t noted what it looks like over ${doubt.over}, and there the model has it off: ${differenceText(doubt.deltaE)}. Look, and note it.`,
      ];
}

/** Which of two figures all is reckoned from; sentences. */
export function differsSentences(differs: SeenAndPredicted | undefined): readonly string[] {
  return differs === undefined
    ? []
    : [
        `Your look: ${differenceText(differs.seen)}. The model, corrected by your rounds: ${differenceText(differs.predicted)}; the estimates use that.`,
      ];
}
