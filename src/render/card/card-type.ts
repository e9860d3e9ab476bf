/**
 * The one size of type and the measures of every card; the style sheet has the same, and a test compares them.
 *
 * Units: mm.
 *
 * @packageDocumentation
 */

/** Sizes of type. Nothing on a card is smaller than 8 points, which are 2.82 mm. */
export const TYPE = {
  title: 6,
  limit: 5.6,
  measure: 3.8,
  name: 3.6,
  cup: 3.7,
  steps: 3,
  weight: 3,
  small: 2.9,
} as const;

export const LEADING = 1.22;
export const TITLE_LEADING = 1.12;
export const BELOW_TITLE = 0.6;

/** Bare paper round what stands on a side: most printers reach so far. */
export const MARGIN = { side: 6, top: 5.5, bottom: 5 } as const;

/** The plate with the maximum temperature, at the right of every head, and what is free beside it. */
export const PLATE = { width: 25, gap: 3, padding: 1, border: 0.6 } as const;

/** Where date and lot are written by hand. */
export const WRITTEN = 5.2;

/** The bait on the first side, and what is free below it. */
export const PICTURE = { height: 20, below: 1 } as const;

/** The foot of a side, with what is free above it. */
export const FOOT = 5.5;

/** Columns of the measures, the names and the weights, as parts of the width, and what is free at the end of the first two. */
export const COLUMNS = { measure: 0.42, name: 0.4, weight: 0.18, gap: 1.2 } as const;

/** Above and below a row’s text, and its line, which a browser makes a whole pixel. */
export const ROW = { above: 0.45, below: 0.55, line: 0.27 } as const;

/** Smaller type begins lower by so much of the difference, so that a row’s columns stand on one line. */
export const LOWER = 0.97;

/** Above a block; and what a cup’s heading has below it. */
export const ABOVE = { cup: 2, block: 2.4, heading: 0.9 } as const;

/** What the order of work is moved in by; and between its steps. */
export const LIST = { indent: 5.2, between: 0.4 } as const;

/** Where there is so much room below all else, it is ruled for what the maker writes. */
export const NOTES = 17;
