/**
 * A colour of a match: from a screen as its digits, from an instrument as it was measured, whatever a screen can show of it.
 *
 * @packageDocumentation
 */
import type { Lab } from '../../optics/cielab.ts';
import { hexFromLab, labFromHex } from '../../optics/display.ts';
import type { Written } from '../../recipe/write-front-matter.ts';
import { noColour as noHex, typedHex } from '../typed-hex.ts';

/** `#rrggbb`, or CIELAB by daylight (D65, 2° observer). */
export type WorkColour = string | Lab;

/** As the files of a book take an instrument's. */
const LIMITS = { L: [0, 110], a: [-200, 200], b: [-200, 200] } as const;
/** More than any instrument says, and as many as a book keeps. */
const DECIMALS = 4;

/** A colour that was typed: `#a4814f`, with or without its sign, or L, a and b such as `56.2 7.1 32`; undefined where it is none. */
export function typedColour(text: string): WorkColour | undefined {
  const hex = typedHex(text);
  if (hex !== undefined) return hex;
  const pieces = text
    .replaceAll('−', '-')
    .trim()
    .split(/[\s;]+/);
  const numbers = (
    pieces.length === 1 ? text.split(',') : pieces.map((piece) => piece.replace(/,$/, '').replace(',', '.'))
  )
    .map((piece) => piece.trim())
    .map((piece) => (/^[-+]?\d+(?:\.\d+)?$/.test(piece) ? Number(piece) : Number.NaN));
  if (numbers.length !== 3) return undefined;
  const [L, a, b] = numbers as [number, number, number];
  return settledLab({ L, a, b });
}

/** A colour that is none, in a sentence. */
export function noColour(typed: string): string {
  return `${noHex(typed).replace(/\.$/, '')}; or what an instrument says by daylight as L, a and b, such as 45 12 30.`;
}

/** A measured colour to the digits that are kept; undefined where it is none that is seen. */
export function settledLab(lab: Lab): Lab | undefined {
  const within = (['L', 'a', 'b'] as const).every(
    (name) => lab[name] >= LIMITS[name][0] && lab[name] <= LIMITS[name][1],
  );
  const kept = (value: number): number => Number(value.toFixed(DECIMALS));
  return within ? { L: kept(lab.L), a: kept(lab.a), b: kept(lab.b) } : undefined;
}

/** A colour of the book, as a match keeps it: its digits where those are all that was said. */
export function bookColour({ lab, hex }: { readonly lab: Lab; readonly hex: string }): WorkColour {
  const { L, a, b } = labFromHex(hex);
  const stated = Math.max(Math.abs(L - lab.L), Math.abs(a - lab.a), Math.abs(b - lab.b)) < 10 ** -DECIMALS;
  return (stated ? undefined : settledLab(lab)) ?? hex;
}

/** As it is judged. */
export function labOfColour(colour: WorkColour): Lab {
  return typeof colour === 'string' ? labFromHex(colour) : colour;
}

/** As it is drawn. */
export function hexOfColour(colour: WorkColour): string {
  return typeof colour === 'string' ? colour : hexFromLab(colour).hex;
}

/** As it is typed and told. */
export function colourText(colour: WorkColour): string {
  return typeof colour === 'string' ? colour : `${colour.L} ${colour.a} ${colour.b}`;
}

/** As the files of a book have it. */
export function colourInFile(colour: WorkColour): Written {
  return typeof colour === 'string' ? colour : { lab: [colour.L, colour.a, colour.b] };
}
