import jsqr from 'jsqr';

/** Black on white, whatever the colours of the terminal are; and the end of it. */
export const BLACK_ON_WHITE = '\u001b[38;5;16;48;5;231m';
export const AS_BEFORE = '\u001b[0m';

/** What a camera reads in lines of a terminal that shows a module as half a letter. */
export function scanned(lines: readonly string[]): string | undefined {
  const rows = lines.flatMap((line) => {
    const letters = [...line.replace(BLACK_ON_WHITE, '').replace(AS_BEFORE, '')];
    return [letters.map((letter) => '█▀'.includes(letter)), letters.map((letter) => '█▄'.includes(letter))];
  });
  const scale = 4;
  const [width, height] = [rows[0]!.length * scale, rows.length * scale];
  const pixels = new Uint8ClampedArray(width * height * 4);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      pixels.fill(
        rows[Math.floor(y / scale)]![Math.floor(x / scale)] ? 0 : 255,
        (y * width + x) * 4,
        (y * width + x) * 4 + 3,
      );
      pixels[(y * width + x) * 4 + 3] = 255;
    }
  }
  return jsqr(pixels, width, height)?.data;
}

/** The codes of a text, as a camera reads them. */
export const codesIn = (text: string): readonly (string | undefined)[] =>
  text
    .split('\n\n')
    .filter((part) => part.startsWith(BLACK_ON_WHITE))
    .map((part) => scanned(part.split('\n')));
