/**
 * Films whose materials are known, computed from the closed forms of `src/optics/` rather than from the fit's own model.
 */
import type { FilmPart, MeasuredFilm } from '../../../src/optics/fit/film.ts';
import { type Surface, surfaceInward, surfaceOutward } from '../../../src/optics/surface.ts';
import { layerReflectance } from '../one-band.ts';

export const WAVELENGTHS: readonly number[] = Array.from({ length: 31 }, (_, i) => 400 + 10 * i);

export const SURFACE: Surface = { k1: 0.035, k2: 0.6, specular: 'included' };
export const BACKING_SURFACE: Surface = { k1: 0.04, k2: 0.6, specular: 'included' };

/** A material in formulas: K and S per unit of thickness undiluted, and its factor. */
export interface KnownMaterial {
  readonly K: (wavelength: number) => number;
  readonly S: (wavelength: number) => number;
  readonly factor: number;
}

const bell = (wavelength: number, centre: number, width: number): number =>
  Math.exp(-(((wavelength - centre) / width) ** 2));

/** Invented paints: a white, a blue, a yellow, a black. */
export const KNOWN: Readonly<Record<string, KnownMaterial>> = {
  chalk: { K: () => 0.02, S: (w) => 9 * (550 / w) ** 0.8, factor: 0.8 },
  dusk: { K: (w) => 0.2 + 25 * bell(w, 610, 70), S: (w) => 1.5 * (550 / w), factor: 1.4 },
  straw: { K: (w) => 0.05 + 30 / (1 + Math.exp((w - 490) / 12)), S: () => 6, factor: 0.7 },
  soot: { K: () => 40, S: () => 0.6, factor: 1.2 },
};

export const BLACK: readonly number[] = WAVELENGTHS.map(() => 0.055);
export const WHITE: readonly number[] = WAVELENGTHS.map((wavelength) => 0.8 + 0.0003 * (wavelength - 550));

/** What a film of known materials shows on a backing. */
export function knownFilm(parts: readonly FilmPart[], backing: readonly number[], thickness = 1): number[] {
  const total = parts.reduce((sum, { material, amount }) => sum + amount * KNOWN[material]!.factor, 0);
  return WAVELENGTHS.map((wavelength, band) => {
    let K = 0;
    let S = 0;
    for (const { material, amount } of parts) {
      const known = KNOWN[material]!;
      K += (amount * known.factor * known.K(wavelength)) / total;
      S += (amount * known.factor * known.S(wavelength)) / total;
    }
    const Rg = surfaceInward(backing[band]!, BACKING_SURFACE);
    return surfaceOutward(layerReflectance(K, S, thickness, Rg), SURFACE);
  });
}

/** Parts from a record, for short. */
export function partsOf(amounts: Readonly<Record<string, number>>): FilmPart[] {
  return Object.entries(amounts).map(([material, amount]) => ({ material, amount }));
}

/** A measured film, each reflectance off by `noise` times what `waver` gives for its number. */
export function measuredFilm(
  name: string,
  amounts: Readonly<Record<string, number>>,
  noise = 0,
  thickness = 1,
): MeasuredFilm {
  const parts = partsOf(amounts);
  const seed = [...name].reduce((sum, letter) => sum * 31 + letter.charCodeAt(0), 7) % 1000;
  const view = (label: string, backing: readonly number[], salt: number) => ({
    label,
    backing,
    seen: knownFilm(parts, backing, thickness).map((R, band) => R + noise * waver(seed + salt, band)),
  });
  return { name, parts, views: [view('film_on_black', BLACK, 1), view('film_on_white', WHITE, 2)] };
}

/** Numbers between −1 and 1 that look like chance and are the same each time. */
function waver(seed: number, band: number): number {
  const x = Math.sin(12.9898 * seed + 78.233 * band) * 43758.5453;
  return 2 * (x - Math.floor(x)) - 1;
}

/** Films enough to know all four paints. */
export function knownShelf(noise = 0): MeasuredFilm[] {
  return [
    measuredFilm('chalk', { chalk: 1 }, noise),
    measuredFilm('dusk', { dusk: 1 }, noise),
    measuredFilm('straw', { straw: 1 }, noise),
    measuredFilm('dusk-tint', { dusk: 0.1, chalk: 0.9 }, noise),
    measuredFilm('dusk-half', { dusk: 0.5, chalk: 0.5 }, noise),
    measuredFilm('straw-tint', { straw: 0.1, chalk: 0.9 }, noise),
    measuredFilm('straw-half', { straw: 0.5, chalk: 0.5 }, noise),
    measuredFilm('grey', { soot: 0.03, chalk: 0.97 }, noise),
    measuredFilm('dark-grey', { soot: 0.3, chalk: 0.7 }, noise),
  ];
}
