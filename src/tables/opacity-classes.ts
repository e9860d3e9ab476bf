/**
 * How much a body hides, in the trade's words, from the contrast ratio (Y over black by Y over white) up from which each is said.
 *
 * Source: the bounds are a convention of this book.
 */
export const OPACITY_CLASSES = [
  { word: 'clear', from: 0, meaning: 'you see straight through it' },
  { word: 'thin', from: 0.35, meaning: 'translucent, what’s behind it shows through' },
  { word: 'thick', from: 0.6, meaning: 'light comes through, shapes don’t' },
  { word: 'opaque', from: 0.9, meaning: 'you can’t see through it' },
] as const;

/** One of the words. */
export type OpacityWord = (typeof OPACITY_CLASSES)[number]['word'];
