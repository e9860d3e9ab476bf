/**
 * Measured spectra that may lie beside the project: films of oil paints on white and on black, and acrylic paints.
 *
 * Sources: M. Geldof, A. N. Proaño Gaibor, E. Kirchner & F. Ligterink, Heritage Science 6:17 (2018), doi 10.1186/s40494-018-0181-6
 * (films); Artist Paint Spectral Database of R. S. Berns, RIT, as carried by Unicolour.Datasets (paints). No part of the project.
 *
 * @packageDocumentation
 */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { WAVELENGTHS } from '../../measure/foreign/physics/eye.ts';
import type { Spectrum } from '../../measure/foreign/physics/spectra.ts';

// From the working folder, which is the project's, so that bundled benchmarks find it too.
const FOLDER = join(process.cwd(), '../shared/reference');

/** Why measured spectra are not there; undefined where they are. */
export const NO_REFERENCE: string | undefined = existsSync(join(FOLDER, 'pigment_films_shared.csv'))
  ? undefined
  : 'no folder ../shared/reference';

/** Four reflectances of a drawn-down film, 0..1. */
export interface MeasuredFilm {
  readonly name: string;
  readonly bareBlack: Spectrum;
  readonly bareWhite: Spectrum;
  readonly onBlack: Spectrum;
  readonly onWhite: Spectrum;
}

/** All films; none where the folder is not there. */
export function measuredFilms(): readonly MeasuredFilm[] {
  if (NO_REFERENCE) return [];
  const [header = [], ...rows] = cellsOf('pigment_films_shared.csv');
  const bands = header.slice(4).map(Number);
  const spectra = new Map(
    rows.map(([name, , , surface, ...percent]) => [
      `${name} ${surface}`,
      atWavelengths(
        bands,
        percent.map((each) => Number(each) / 100),
      ),
    ]),
  );
  const of = (name: string, surface: string): Spectrum => {
    const found = spectra.get(`${name} ${surface}`);
    if (!found) throw new RangeError(`no spectrum ${surface} of film ${name}`);
    return found;
  };
  return [...new Set(rows.map(([name = '']) => name))].map((name) => ({
    name,
    bareBlack: of(name, 'bare_black'),
    bareWhite: of(name, 'bare_white'),
    onBlack: of(name, 'film_on_black'),
    onWhite: of(name, 'film_on_white'),
  }));
}

/** K and S of acrylic paints, in one unit for all; none where the folder is not there. */
export function acrylicPaints(): readonly { readonly name: string; readonly K: Spectrum; readonly S: Spectrum }[] {
  if (NO_REFERENCE) return [];
  const [header = [], ...rows] = cellsOf('artist_paint_ks.csv');
  const bands = header.slice(3).map(Number);
  return rows
    .filter(([, , quantity]) => quantity === 'K')
    .map(([name = '', , , ...K]) => {
      const [, , , ...S] = rows.find(([other, , quantity]) => other === name && quantity === 'S') ?? [];
      return { name, K: atWavelengths(bands, K.map(Number)), S: atWavelengths(bands, S.map(Number)) };
    });
}

function cellsOf(file: string): string[][] {
  return readFileSync(join(FOLDER, file), 'utf8')
    .split('\n')
    .filter((line) => line !== '' && !line.startsWith('#'))
    .map((line) => line.split(','));
}

/** A spectrum in bands of 10 nm brought to `WAVELENGTHS`: beyond its ends it stays what it is there. */
function atWavelengths(bands: readonly number[], values: readonly number[]): Spectrum {
  const first = bands[0] ?? 0;
  return Float64Array.from(WAVELENGTHS, (nm) => {
    const at = Math.min(values.length - 1, Math.max(0, Math.round((nm - first) / 10)));
    return values[at] ?? Number.NaN;
  });
}
