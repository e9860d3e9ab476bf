import { SLUG_WORDS, slugOf } from '../../recipe/source.ts';
import { SLUG } from '../../values/slug.ts';
import type { Finding } from '../report.ts';

// A program sorts names of digits before all others, so that the order in which they were written would be lost.
const DIGITS = /^\d+$/;

// It stands in headings, tables and on cards. Convention of this book.
const LONGEST_PART_NAME = 60;

/** Whether a cup or a part of a target may have this name: it is an id, not too long, and not a number. */
export function isPartName(name: string): boolean {
  return name.length <= LONGEST_PART_NAME && SLUG.test(name) && !DIGITS.test(name);
}

/** What is told of a cup or a part that may not. */
export function misnamedPart(what: 'cup' | 'part', name: string, why: string): Finding {
  if (name.length > LONGEST_PART_NAME) {
    return {
      found: `${what} with a name of ${name.length} letters`,
      expected: `at most ${LONGEST_PART_NAME}`,
      why: 'it has one line of a card',
      fix: 'shorten it',
    };
  }
  const slug = slugOf(name);
  const better = DIGITS.test(slug) ? `${what}-${slug}` : slug;
  return {
    found: `${what} named \`${name}\``,
    expected: DIGITS.test(name) ? 'a name with a letter in it' : SLUG_WORDS,
    why: DIGITS.test(name) ? 'the order of the cups counts, and numbers do not keep theirs' : why,
    ...(better === '' ? {} : { fix: `write \`${better}\`` }),
  };
}
