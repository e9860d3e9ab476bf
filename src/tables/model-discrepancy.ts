/**
 * How far the theory itself is from real plastic, and how soon that changes from cup to cup: ΔE00 along each of three axes of a view.
 *
 * Source of every figure: our own study on simulated benches whose physics are not this book's (`npm run bench foreign` holds what it
 * comes to). Smaller ones looked better on the looks themselves, and broke the bounds of mixtures that had not been seen.
 */

/** Standard deviation of what the theory is off by, by how a look was made: of a photo its light and its lens are part of that. */
export const DISCREPANCY_SD = { instrument: 0.65, screen: 0.8 } as const;

/** Standard deviation of what one cup is off by in all its looks, by the errors of its doses. */
export const SAME_CUP_SD = 0.35;

/** How far apart compositions are, as `squaredDistance` counts, where the theory's errors have e^(−½) in common. */
export const ALIKE_WITHIN = 1.3;

/** Part of the typical dose up to which doses count by their difference, and beyond by their ratio. */
export const TRACE_OF_TYPICAL = 0.03;

/** What ln of a thickness counts for beside ln of a dose, and the mm from which it is reckoned. */
export const THICKNESS_COUNTS = 2;
export const MIDDLE_THICKNESS_MM = 6;

/** Standard deviation, in ln, of how steady a maker's hand is, about what is common practice. Convention of this book. */
export const HAND_SD = 0.7;
