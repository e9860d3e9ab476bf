/**
 * Lines that a text takes in the book's type, estimated from its letters.
 *
 * @packageDocumentation
 */

/** A type: the text face in regular and bold, and the face of titles in bold. */
export type Type = 'text' | 'bold' | 'title';

/** Widths of letters as parts of the type's size: means of our text face by kind of letter, measured in a browser. */
const WIDTHS: readonly (readonly [letters: RegExp, width: number])[] = [
  [/[iljtfrI.,;:'’!|()[\]/ \u00a0-]/u, 0.29],
  [/[mwMW@%—]/u, 0.84],
  [/\p{Lu}/u, 0.64],
  [/[\p{Nd}+°½¼¾×]/u, 0.58],
  [/\p{Ll}/u, 0.53],
];
/** Other scripts may be as wide as they are high. */
const OTHER = 1;
const RELATIVE: Readonly<Record<Type, number>> = { text: 1, bold: 1.07, title: 1.32 };
/** On the safe side of the means. */
const SAFETY = 1.05;

function letterWidth(code: number): number {
  const letter = String.fromCodePoint(code);
  return WIDTHS.find(([letters]) => letters.test(letter))?.[1] ?? OTHER;
}

/** Widths of the letters below U+2100, which are nearly all of a book: a card is laid out many times. */
const KNOWN = Float64Array.from({ length: 0x2100 }, (_, code) => letterWidth(code));

/** Width of a text in its type's size. */
export function textWidth(text: string, type: Type = 'text'): number {
  let width = 0;
  for (let at = 0; at < text.length; at++) {
    const code = text.codePointAt(at)!;
    if (code > 0xffff) at++;
    width += KNOWN[code] ?? letterWidth(code);
  }
  return width * RELATIVE[type] * SAFETY;
}

/**
 * Lines that a text takes, broken between words; a word that is wider than the line is broken too.
 *
 * Units: size and width in mm.
 */
export function lineCount(text: string, size: number, width: number, type: Type = 'text'): number {
  const room = width / size;
  const space = textWidth(' ', type);
  let lines = 1;
  let used = 0;
  for (const word of text.split(/[^\S\u00a0]+/)) {
    const length = textWidth(word, type);
    if (used > 0 && used + space + length <= room) used += space + length;
    else {
      if (used > 0) lines++;
      const broken = Math.max(0, Math.ceil(length / room) - 1);
      lines += broken;
      used = length - broken * room;
    }
  }
  return lines;
}
