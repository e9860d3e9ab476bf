/**
 * How much a body hides, in the trade's words, from the contrast ratio (Y over black by Y over white) up from which each is said. `word`
 * is what `book.json` has; at a hot cup thin and thick are words for heat, so that people are told `said`.
 *
 * Source: the bounds are a convention of this book.
 */
export const OPACITY_CLASSES = [
  { word: 'clear', said: 'clear', from: 0, meaning: 'you see straight through it' },
  { word: 'thin', said: 'see-through', from: 0.35, meaning: 'translucent, what’s behind it shows through' },
  { word: 'thick', said: 'cloudy', from: 0.6, meaning: 'light comes through, shapes don’t' },
  { word: 'opaque', said: 'opaque', from: 0.9, meaning: 'you can’t see through it' },
] as const;

/** One of the words. */
export type OpacityWord = (typeof OPACITY_CLASSES)[number]['word'];
