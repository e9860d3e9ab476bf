import type { Expectation } from '../matching/belief/expectation.ts';
import type { Left, TellsMore } from '../matching/belief/stop.ts';
import { deltaEText, differenceText, differenceWords } from './difference.ts';

/**
 * What is to be expected of a colour: how it looks, its ΔE and the bound that nine in ten stay within.
 *
 * @example expectationText({ expected: 2.2, bound90: 4.8 }) // 'just visible (expect ΔE 2.2, nine in ten within 4.8)'
 */
export function expectationText({ expected, bound90 }: Pick<Expectation, 'expected' | 'bound90'>): string {
  const [mean, bound] = [deltaEText(expected), deltaEText(bound90)];
  // Nothing is in doubt.
  if (mean === bound) return differenceText(expected);
  return `${differenceWords(expected)} (expect ΔE ${mean}, nine in ten within ${bound})`;
}

// What is as likely wrong as right is not called likely.
const LIKELIER = 0.5;

/** "likely right: 85 %", never sure of what is believed; undefined of what is not likely. */
export function likelyText(likely: number): string | undefined {
  return likely < LIKELIER ? undefined : `likely right: ${Math.min(99, Math.round(100 * likely))} %`;
}

/** "just visible (expect ΔE 1.2, nine in ten within 2.0); likely right: 85 %" */
export function promiseText(promised: Expectation): string {
  return [expectationText(promised), likelyText(promised.likely)].filter((text) => text !== undefined).join('; ');
}

/** What would tell more than the looks there are. */
const TELLS_MORE: Readonly<Record<TellsMore, string>> = {
  target: 'Three photos of the target, a certified card in them, or an instrument would tell more',
  cup: 'Another look at a test pour would tell more',
};

/** How to note three photos. */
function meanText(ofThree: number | undefined): string {
  return ofThree === undefined ? '' : ` (in the target’s file, write their mean with doubt ${deltaEText(ofThree)})`;
}

/** Why something is left as it is, as the end of a sentence that says so, without its stop: ", likely right: 91 %". */
export function leftWords(left: Left & { readonly likely: number }): string {
  switch (left.because) {
    case 'likely-right':
      return `, ${likelyText(left.likely)!}`;
    case 'as-near-as-looks-tell':
      return `: your looks can’t tell what would get closer. ${TELLS_MORE[left.tells]}${meanText(left.ofThree)}`;
    case 'no-step-helps':
      return [': nothing you could add is expected to get it closer', likelyText(left.likely)]
        .filter((text) => text !== undefined)
        .join('; ');
  }
}
