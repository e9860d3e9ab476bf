/**
 * Finds the name of a thing in a text, however it is written there: in any case, across lines, with hyphens, low lines or
 * emphasis between its words, or run together.
 *
 * @packageDocumentation
 */

/** A place in a text that may be the name. */
export interface Mention {
  /** Where it begins and ends in the normalized text. */
  readonly start: number;
  readonly end: number;
  readonly text: string;
  /** It is the name; else it may be the everyday word: a single word, or the words run together, in lower case. */
  readonly sure: boolean;
}

/** What may stand between two words of a name: spaces, line ends, dashes, and the signs of Markdown for emphasis and quotes. */
const BETWEEN = '(?:[\\s_*~`\\\\>\\p{Pd}]|&nbsp;|&shy;)';
const LETTER = '[\\p{L}\\p{N}\\p{M}]';

// Shorter single words are letters and articles; they only count as the name of a file.
const SHORTEST_WORD = 3;

/** A text in which one way to write it stands for all that look alike: widths, ligatures, apostrophes, marks that are not seen. */
export function normalized(text: string): string {
  return text
    .normalize('NFKC')
    .replace(/[\u00AD\u200B-\u200D\u2060\uFEFF]/g, '')
    .replace(/[\u2018\u2019\u02BC]/g, "'");
}

/** The words of a title or an id, in lower case. */
export function nameWords(name: string): readonly string[] {
  return normalized(name)
    .toLowerCase()
    .split(/[\s_\p{Pd}]+/u)
    .filter((word) => word !== '');
}

/** Every place where a name stands in a normalized text, in the order of the text. */
export function mentions(text: string, name: string): readonly Mention[] {
  const words = nameWords(name);
  if (words.length === 0) return [];
  // Writing without capitals has no spaces between its words either.
  const cased = /[\p{Lu}\p{Ll}]/u.test(name);
  const [before, after] = cased ? [`(?<!${LETTER})`, `(?!${LETTER})`] : ['', ''];
  const pattern = new RegExp(`${before}${words.map(escaped).join(`${BETWEEN}*`)}${after}`, 'giu');
  return [...text.matchAll(pattern)].flatMap((match): readonly Mention[] => {
    const [found] = match;
    const { index: start } = match;
    const end = start + found.length;
    const apart = words.length > 1 && found.toLowerCase() !== words.join('');
    const asFile = /(?:colours|targets)\/$/.test(text.slice(0, start)) || /^\.md\b/.test(text.slice(end));
    const sure = apart || asFile || !cased || /\p{Lu}/u.test(found);
    if (asFile) return [{ start, end, text: found, sure }];
    if (words.length === 1 && found.length < SHORTEST_WORD) return [];
    // `smoke` in `smoke-grey` is a part of another word.
    const within = /[\p{Pd}]$/u.test(text.slice(0, start)) || /^[\p{Pd}]/u.test(text.slice(end));
    return !sure && within ? [] : [{ start, end, text: found, sure }];
  });
}

function escaped(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
}
