/**
 * What an eye makes of a spectrum: colours under daylight (D65) for the standard observer of 1931. The tables are read where the book has
 * them, since data are not physics; what is done with them is not shared.
 *
 * @packageDocumentation
 */
import { differenceCiede2000, formatHex, modeLab65, modeRgb, parse, useMode } from 'culori/fn';
import { ILLUMINANTS } from '../../../../src/tables/illuminants.ts';
import { COLOUR_MATCHING_FUNCTIONS } from '../../../../src/tables/observer.ts';

/** A colour, CIELAB under D65. */
export interface Seen {
  readonly L: number;
  readonly a: number;
  readonly b: number;
}

/** A thing over the white card and over the black one. */
export interface SeenPair {
  readonly white: Seen;
  readonly black: Seen;
}

/** Wavelengths at which light is followed, nm. */
export const WAVELENGTHS: readonly number[] = Array.from({ length: 37 }, (_, band) => 380 + 10 * band);

useMode(modeRgb);
const toLab = useMode(modeLab65);
const ciede2000 = differenceCiede2000();

// Weights of each wavelength for X, Y and Z, so that a perfect diffuser has the white of the same sums.
const SENSITIVITY = WAVELENGTHS.map((nm) => {
  const [, x, y, z] = COLOUR_MATCHING_FUNCTIONS.find(([at]) => at === nm) ?? [nm, 0, 0, 0];
  const [, light] = ILLUMINANTS.find(([at]) => at === nm) ?? [nm, 0];
  return [light * x, light * y, light * z] as const;
});
const WHITE = [0, 1, 2].map((axis) => SENSITIVITY.reduce((sum, band) => sum + band[axis]!, 0));

/** The colour of a reflectance at `WAVELENGTHS`. */
export function seenColour(reflectance: ArrayLike<number>): Seen {
  const [x = 0, y = 0, z = 0] = WHITE.map(
    (white, axis) => SENSITIVITY.reduce((sum, band, at) => sum + band[axis]! * reflectance[at]!, 0) / white,
  );
  const [fx, fy, fz] = [cube(x), cube(y), cube(z)];
  return { L: 116 * fy - 16, a: 500 * (fx - fy), b: 200 * (fy - fz) };
}

// CIE 15: the cube root, and a straight line below (6/29)³.
function cube(t: number): number {
  return t > (6 / 29) ** 3 ? Math.cbrt(t) : t / (3 * (6 / 29) ** 2) + 4 / 29;
}

/** CIEDE2000 between two colours, by a library that the book does not use. */
export function difference(one: Seen, other: Seen): number {
  return ciede2000(culoriOf(one), culoriOf(other));
}

/** The larger difference of those over white and over black. */
export function pairDifference(one: SeenPair, other: SeenPair): number {
  return Math.max(difference(one.white, other.white), difference(one.black, other.black));
}

/** A colour as somebody types it: what a screen cannot show is cut off at its edge. */
export function typedHex(seen: Seen): string {
  return formatHex(culoriOf(seen));
}

/** The colour of a hex. */
export function colourOfHex(hex: string): Seen {
  const { l, a, b } = toLab(parse(hex)) ?? { l: Number.NaN, a: 0, b: 0 };
  return { L: l, a, b };
}

function culoriOf({ L, a, b }: Seen): { mode: 'lab65'; l: number; a: number; b: number } {
  return { mode: 'lab65', l: L, a, b };
}
