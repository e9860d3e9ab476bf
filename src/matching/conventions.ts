/** Conventions of this book that every kind of proposal keeps. */

/** How many of the sets of materials that screening likes best are worked out with real measures. */
export const WORKED_OUT = 14;

/** What is done to a cup must be worth lighting the stove for: this much nearer, ΔE00. */
export const LEAST_GAIN = 0.1;

/** What opening a bottle counts for beside the colour, ΔE00. */
export const BOTTLE = 0.15;
