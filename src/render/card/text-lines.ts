/**
 * Lines that a text takes in the book's type, counted from the widths of its letters: never fewer than a browser makes of it.
 *
 * @packageDocumentation
 */
import { letterWidths, type Type } from './letter-widths.ts';

export type { Type } from './letter-widths.ts';

/** Letters in one size and typeface; mm. */
export interface Run {
  readonly text: string;
  readonly size: number;
  readonly type?: Type;
}

/** Another font’s letter, for want of our own: as wide as the widest of the usual ones. */
const OTHER = 1.4;

// Most that pairs of letters stand farther apart than each by itself, over every text of the demo book.
const KERNING: Readonly<Record<Type, number>> = { text: 1.021, bold: 1.021, title: 1.035 };

const KNOWN: Readonly<Record<Type, ReadonlyMap<number, number>>> = {
  text: letterWidths('text'),
  bold: letterWidths('bold'),
  title: letterWidths('title'),
};

/** Width of a text in its type's size. */
export function textWidth(text: string, type: Type = 'text'): number {
  const known = KNOWN[type];
  let width = 0;
  for (const letter of text) width += known.get(letter.codePointAt(0)!) ?? OTHER;
  return width * KERNING[type];
}

/**
 * Lines that runs of text take one after the other, broken between words; a word that is wider than the line is broken too.
 *
 * Units: width in mm.
 */
export function linesOf(runs: readonly Run[], width: number): number {
  let lines = 1;
  let used = 0;
  /** A word may go on in the next run: where it began, and how wide it is so far. */
  let word = 0;
  let widest = 0;
  const endWord = (): void => {
    if (word === 0) return;
    if (used > 0 && used + word > width) {
      lines++;
      used = 0;
    }
    if (word > width) {
      // A broken word leaves up to a letter’s width free at the end of each line.
      const broken = Math.ceil(word / Math.max(width - widest, widest)) - 1;
      lines += broken;
      used = width;
    } else used += word;
    word = 0;
  };
  for (const { text, size, type = 'text' } of runs) {
    const space = textWidth(' ', type) * size;
    for (const [index, part] of text.split(/[^\S\u00a0]+/).entries()) {
      if (index > 0) {
        endWord();
        used += used > 0 ? space : 0;
      }
      word += textWidth(part, type) * size;
      widest = Math.max(widest, size);
    }
  }
  endWord();
  return lines;
}

/** Lines of a text in one type. Units: size and width in mm. */
export function lineCount(text: string, size: number, width: number, type: Type = 'text'): number {
  return linesOf([{ text, size, type }], width);
}
