/**
 * Reflectance of the two backings over which this book shows a colour, nonselective, in optical contact with the bait.
 *
 * Source: convention of this book, no source. (ISO 6504-3 asks for a white of at least 0.80 and a black of at most
 * 0.05: from memory.)
 */
export const WHITE_BACKING = 0.9;

/** See `WHITE_BACKING`. */
export const BLACK_BACKING = 0.03;
