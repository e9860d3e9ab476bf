/** Conventions of this book that every kind of proposal keeps. */

/** How many of the sets of materials that were found are worked out with real measures. */
export const WORKED_OUT = 14;

/** What is done to a cup must be worth lighting the stove for: this much nearer, ΔE00. */
export const LEAST_GAIN = 0.1;

/** How many of the bottles nearest to a colour are tried with others, however those do without. */
export const REACHED_FOR = 3;
