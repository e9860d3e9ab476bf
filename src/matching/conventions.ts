/** Conventions of this book that every kind of proposal keeps. */

/** How many of the sets of materials that were found are worked out with real measures. */
export const WORKED_OUT = 14;

/** How many of the bottles nearest to a colour are tried with others, however those do without. */
export const REACHED_FOR = 3;

/** A colour is right where the belief that it is within tolerance is at least this. */
export const LIKELY_RIGHT = 0.85;
