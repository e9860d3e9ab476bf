/**
 * Colour differences for people: what the eye makes of one first, the number small and after it.
 *
 * @packageDocumentation
 */

/** What is said of a pair of colours, by the ΔE00 below which it is. Common practice, no source. */
export const DIFFERENCE_WORDS: readonly (readonly [below: number, words: string])[] = [
  [1, 'you won’t see it'],
  [2.5, 'just visible'],
  [5, 'easy to see'],
  [10, 'hard to miss'],
  [Number.POSITIVE_INFINITY, 'plainly another colour'],
];

/**
 * How a colour difference looks, by the figure that is shown of it. Unit: ΔE00, >= 0.
 *
 * @example differenceWords(1.6) // 'just visible'
 */
export function differenceWords(deltaE: number): string {
  const shown = Number(deltaE.toFixed(1));
  return DIFFERENCE_WORDS.find(([below]) => shown < below)![1];
}

/**
 * How a colour difference looks, and its size.
 *
 * @example differenceText(1.6) // 'just visible (ΔE 1.6)'
 */
export function differenceText(deltaE: number): string {
  return `${differenceWords(deltaE)} (ΔE ${deltaEText(deltaE)})`;
}

/**
 * A colour difference: one decimal, none far off, and never a nought where there is a difference.
 *
 * @example deltaEText(0.0093) // 'less than 0.1'
 */
export function deltaEText(deltaE: number): string {
  if (deltaE >= 9.95) return String(Math.round(deltaE));
  return deltaE > 0 && deltaE < 0.05 ? 'less than 0.1' : deltaE.toFixed(1);
}

/**
 * How much of what is behind it a colour hides: its contrast ratio, 0 to 1, in percent.
 *
 * @example hidesText(0.294) // '29 %'
 */
export function hidesText(contrast: number): string {
  return `${Math.round(100 * contrast)} %`;
}
