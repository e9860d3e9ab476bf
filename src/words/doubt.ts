import type { Expectation } from '../matching/belief/expectation.ts';
import type { Doubt, SeenAndPredicted } from '../matching/rounds/seen-and-believed.ts';
import { deltaEText, differenceText } from './difference.ts';
import { wrongLogText } from './doubted-look.ts';
import { expectationText } from './expectation.ts';

/** Why a look is asked about, and what to do; sentences. */
export function doubtSentences(doubt: Doubt | undefined): readonly string[] {
  if (doubt === undefined) return [];
  if (doubt.wrong)
    return [
      wrongLogText(doubt.wrong),
      'Correct the log, or look at a test pour again in daylight and enter the round again.',
    ];
  return [
    `Your last look does not fit what is in the cup (ΔE ${deltaEText(doubt.deltaE)} off what all your looks say).`,
    'Look at a test pour again in daylight, enter the round again, and check the log.',
  ];
}

/**
 * Which of two figures all is reckoned from; sentences.
 *
 * @param expected what is to be expected of the cup as it is, so that it can be held against what is expected of a proposal
 */
export function differsSentences(
  differs: SeenAndPredicted | undefined,
  { expected, bound90 }: Partial<Expectation>,
): readonly string[] {
  if (differs === undefined) return [];
  const now =
    expected === undefined || bound90 === undefined
      ? differenceText(differs.predicted)
      : expectationText({ expected, bound90 });
  return [`Your look: ${differenceText(differs.seen)}. By all your looks together: ${now}; the estimates go by that.`];
}
