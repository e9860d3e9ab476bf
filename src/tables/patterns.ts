/**
 * How patterns show, and from where on.
 *
 * Source: common practice, no source: a laminate wants see-through cups, a swirl wants contrast.
 */

/** ΔE00 between streaks at which a swirl is seen at arm's length: 12 to 15 in see-through plastic, where the streaks blend at their edges. */
export const SWIRL_SHOWS = 12;

/** Contrast ratio of a side up to which the other side shines through it. */
export const LAMINATE_SHINES_THROUGH = 0.9;

/** mm, thickness of a streak in a swirl where the book doesn't say: 2 to 5 as most pours give. */
export const STREAK_THICKNESS = 2;
