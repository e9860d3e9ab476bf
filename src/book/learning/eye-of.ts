import { Belief } from '../../learning/belief.ts';
import type { LearnedShelf } from '../../learning/learned-shelf.ts';
import { BookEye } from './book-eye.ts';

/** With what a book looks that has learned this: made once for each learned shelf, since it is asked all over a book. */
export function eyeOf(learned: LearnedShelf): BookEye<Belief> {
  const known = eyes.get(learned);
  if (known) return known;
  const eye = new BookEye(learned, new Belief(learned));
  eyes.set(learned, eye);
  return eye;
}

/** What is believed of cups by a learned shelf. */
export function beliefOf(learned: LearnedShelf): Belief {
  return eyeOf(learned).belief;
}

// A learned shelf never changes.
const eyes = new WeakMap<LearnedShelf, BookEye<Belief>>();
