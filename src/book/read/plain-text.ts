import { withoutUnseen } from '../../recipe/unseen-signs.ts';

/** A text that somebody typed or pasted, as a file of the book takes it: without signs that nobody sees, and on one line. */
export function plainText(text: string): string {
  return withoutUnseen(text).replace(/\s+/g, ' ').trim();
}
