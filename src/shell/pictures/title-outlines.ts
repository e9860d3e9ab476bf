import { readFile } from 'node:fs/promises';
import type { Font } from 'fontkit';

/** A line of text as outlines, so that it is the same on every machine, whatever fonts it has. */
export interface OutlinedText {
  /** SVG markup: its line at y = 0, its beginning at x = 0, at a size of 1. */
  readonly markup: string;
  /** At a size of 1. */
  readonly width: number;
}

/** Makes outlines of texts; undefined for one with a letter that none of the fonts has. */
export type Outlines = (text: string) => OutlinedText | undefined;

/** Reads fonts, the one that is asked first in front. */
export async function readOutlines(files: readonly string[]): Promise<Outlines> {
  // Loaded with the first text: most pictures have none.
  const [{ create }, ...bytes] = await Promise.all([import('fontkit'), ...files.map((file) => readFile(file))]);
  const fonts = bytes.map((each) => create(each));
  return (text) => {
    const runs = runsOf(text, fonts);
    if (!runs) return undefined;
    let width = 0;
    const parts: string[] = [];
    for (const { font, letters } of runs) {
      const scale = 1 / font.unitsPerEm;
      const { glyphs, positions } = font.layout(letters);
      for (const [at, glyph] of glyphs.entries()) {
        const { xAdvance, xOffset, yOffset } = positions[at]!;
        const outline = glyph.path.toSVG();
        if (outline !== '')
          parts.push(
            `<path transform="translate(${width + xOffset * scale} ${-yOffset * scale}) scale(${scale} ${-scale})" d="${outline}"/>`,
          );
        width += xAdvance * scale;
      }
    }
    return { markup: parts.join(''), width };
  };
}

/** A text in pieces that one font has each. */
function runsOf(text: string, fonts: readonly Font[]): readonly { font: Font; letters: string }[] | undefined {
  const runs: { font: Font; letters: string }[] = [];
  for (const letter of text.normalize('NFC')) {
    const font = fonts.find((each) => each.hasGlyphForCodePoint(letter.codePointAt(0)!));
    if (!font) return undefined;
    const last = runs.at(-1);
    if (last?.font === font) last.letters += letter;
    else runs.push({ font, letters: letter });
  }
  return runs;
}
