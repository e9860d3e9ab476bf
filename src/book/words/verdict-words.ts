/**
 * What a maker must know to read a verdict and a proposal: the same on the page and on the command line.
 *
 * @packageDocumentation
 */

/** What the words of a verdict mean, a sentence each. */
export const VERDICT_WORDS: readonly string[] = [
  'ΔE is the whole difference of two colours: up to the tolerance they count as the same.',
  'Hue is which colour it is; strong and weak say how vivid it is, not how large the dose.',
  'The contrast ratio says how well it hides what is behind it, from 0, clear, to 1, opaque.',
];

/** Why one amount of a proposal must not be weighed while the others are dropped and spooned. */
export const MEASURED_TOGETHER =
  'Drops and spoons make up for each other: measure all of a cup this way, or weigh all of it.';
