import { slipQuestions } from '../book/checks/slip-questions.ts';
import type { DoubtedLook } from '../book/model/doubted-look.ts';
import type { WrongLog } from '../matching/rounds/wrong-log.ts';
import { differenceText } from './difference.ts';

/**
 * What is said of a look that counts for little in what a book learns, and what its maker is asked; sentences.
 *
 * @example doubtedLookText({ weight: 0.05 }) // 'This look counts for little in what the book has learned (5 %): it doesn’t fit the others.'
 */
export function doubtedLookText({ wrong, weight }: Pick<DoubtedLook, 'wrong' | 'weight'>): string {
  return wrong
    ? `${wrongLogText(wrong)} ${ANSWER}. ${countsFor(weight)}`
    : `This look counts for little in what the book has learned (${percent(weight)}): it doesn’t fit the others.`;
}

/** What is asked of a look that does not fit its log; sentences. */
export function wrongLogText({ deltaE, slips }: WrongLog): string {
  return `This look doesn’t fit what the log says: ${differenceText(deltaE)}. ${slipQuestions(slips)}`;
}

const ANSWER = 'Correct the log; if the log and the look are both right, write `checked: true` in the look';

function countsFor(weight: number): string {
  return weight < 0.5
    ? `Until then it counts for little: ${percent(weight)}.`
    : `Until then it counts for ${percent(weight)}.`;
}

function percent(weight: number): string {
  return weight < 0.01 ? 'less than 1 %' : `${Math.round(100 * weight)} %`;
}
