/**
 * Measured films of oil paints, read through the command's own tables.
 *
 * Source of the data: M. Geldof, A. N. Proaño Gaibor, F. Ligterink, E. Hendriks & E. Kirchner, "Reconstructing Van Gogh's
 * palette to determine the optical characteristics of his paints", Heritage Science 6:17 (2018),
 * doi 10.1186/s40494-018-0181-6; CC0. It is no part of the project (see `../reference.ts`).
 */
import { measuredFilms } from '../../../src/book/films/films-samples.ts';
import { readFilmsTable } from '../../../src/book/films/films-table.ts';
import { paintDensities } from '../../../src/book/films/paint-densities.ts';
import type { Lab } from '../../../src/optics/cielab.ts';
import { deltaE00 } from '../../../src/optics/delta-e00.ts';
import { labSlopes, labSlopesSpace } from '../../../src/optics/fit/colour-misfit.ts';
import type { MeasuredFilm } from '../../../src/optics/fit/film.ts';
import { type FittedMaterials, fitMaterials } from '../../../src/optics/fit/fit-materials.ts';
import type { FitOptions } from '../../../src/optics/fit/fit-options.ts';
import { predictFilm } from '../../../src/optics/fit/predict-film.ts';
import { observerWeights } from '../../../src/optics/tristimulus.ts';

/** The films by the role that the data gives them. */
export interface PigmentFilms {
  readonly wavelengths: readonly number[];
  /** Of the paints that the command knows a density of, g/ml: the table itself has none. */
  readonly densities: ReadonlyMap<string, number>;
  readonly calibration: readonly MeasuredFilm[];
  readonly validation: readonly MeasuredFilm[];
  readonly all: readonly MeasuredFilm[];
}

/** A film left out and predicted, on one backing. */
export interface Miss {
  readonly film: string;
  readonly label: string;
  readonly deltaE00: number;
  readonly bound90: number;
}

/** Reads the text of `pigment_films_shared.csv`. */
export function pigmentFilms(text: string): PigmentFilms {
  const table = readFilmsTable(text, 'pigment_films_shared.csv');
  const { films: all, findings } = measuredFilms(table);
  if (table.findings.length + findings.length > 0) throw new Error(JSON.stringify([...table.findings, ...findings]));
  const roles = new Map(text.split('\n').map((line) => line.split(',').slice(0, 2) as [string, string]));
  const ofRole = (role: string): MeasuredFilm[] => all.filter(({ name }) => roles.get(name) === role);
  return {
    wavelengths: table.wavelengths,
    densities: paintDensities(table).densities,
    calibration: ofRole('calibration'),
    validation: ofRole('validation'),
    all,
  };
}

/** Lab of a measured spectrum on a grid: D65, 2°, plain sums, white from the same sums. */
export function labOnGrid(R: ArrayLike<number>, wavelengths: readonly number[]): Lab {
  const space = labSlopesSpace(R.length);
  labSlopes(R, observerWeights(wavelengths, 'D65'), space);
  const [L, a, b] = space.lab;
  return { L: L!, a: a!, b: b! };
}

/** How far predictions of films are from what was measured. */
export function missesOf(fitted: FittedMaterials, films: readonly MeasuredFilm[]): Miss[] {
  const { wavelengths } = fitted.options;
  return films.flatMap(({ name, parts, views }) =>
    views.map(({ label, backing, seen }) => {
      const { lab, bound90 } = predictFilm(fitted, parts, backing);
      return { film: name, label, deltaE00: deltaE00(lab, labOnGrid(seen, wavelengths)), bound90 };
    }),
  );
}

/** Each of `films` predicted from a fit of all the others of `all`; films with a paint that no other holds are left out. */
export function leaveOneOut(
  films: readonly MeasuredFilm[],
  all: readonly MeasuredFilm[],
  options: Partial<FitOptions> & Pick<FitOptions, 'wavelengths'>,
): Miss[] {
  return missesOfOthers(fitsLeavingOut(films, all, options));
}

/** How far each film is from what the fits of all others predict of it. */
export function missesOfOthers(left: readonly FilmLeftOut[]): Miss[] {
  return left.flatMap(({ film, fitOthers }) => missesOf(fitOthers(), [film]));
}

/** A film, and the fit of all others: made once, whoever asks. */
export interface FilmLeftOut {
  readonly film: MeasuredFilm;
  fitOthers(): FittedMaterials;
}

/** Every mix of paints that the other films can tell. */
export function mixesLeftOut({ all, wavelengths, densities }: PigmentFilms): FilmLeftOut[] {
  const mixes = all.filter(({ parts }) => parts.length > 1);
  return fitsLeavingOut(mixes, all, { wavelengths, densities });
}

function fitsLeavingOut(
  films: readonly MeasuredFilm[],
  all: readonly MeasuredFilm[],
  options: Partial<FitOptions> & Pick<FitOptions, 'wavelengths'>,
): FilmLeftOut[] {
  return films.flatMap((film) => {
    const others = all.filter((other) => other !== film);
    const known = new Set(others.flatMap(({ parts }) => parts.map(({ material }) => material)));
    let fitted: FittedMaterials | undefined;
    const fitOthers = (): FittedMaterials => {
      fitted ??= fitMaterials(others, options);
      return fitted;
    };
    return film.parts.every(({ material }) => known.has(material)) ? [{ film, fitOthers }] : [];
  });
}

/** Quantile of numbers, between neighbours by straight lines (R's type 7, numpy's default). */
export function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((one, other) => one - other);
  const place = share * (sorted.length - 1);
  const below = sorted[Math.floor(place)]!;
  return below + (place - Math.floor(place)) * ((sorted[Math.floor(place) + 1] ?? below) - below);
}

/** The one figure that models are compared by: mean of ln(0.5 + ΔE00), which counts small misses as well as large ones. */
export function criterion(misses: readonly Miss[]): number {
  return misses.reduce((sum, { deltaE00: miss }) => sum + Math.log(0.5 + miss), 0) / misses.length;
}

/** Share of misses that their 90 % bounds hold, 0..1. */
export function coverage(misses: readonly Miss[]): number {
  return misses.filter((miss) => miss.deltaE00 <= miss.bound90).length / misses.length;
}

/** Beliefs switched off: each band by itself, every film of thickness 1, all factors 1, all amounts as written, all films believed. */
export const PLAIN_TWO_CONSTANT: Partial<FitOptions> = {
  surface: { k1: 0.04, k2: 0.6, specular: 'included' },
  absorption: { curvature: Number.POSITIVE_INFINITY, slope: Number.POSITIVE_INFINITY, centre: 0, spread: 3 },
  scattering: { curvature: Number.POSITIVE_INFINITY, slope: Number.POSITIVE_INFINITY, centre: 1.5, spread: 3 },
  factorSpread: 1e-6,
  weighing: 1e-6,
  thicknessSpread: 1e-6,
  drawdownSpread: 1e-6,
  colourNoise: 1e6,
  bandNoise: 1,
  robustness: Number.POSITIVE_INFINITY,
};
