/**
 * Films that no layer can reproduce: lighter over the darker backing.
 */
import type { MeasuredFilm } from './film.ts';

/** A film that a fit can't follow, and where. */
export interface FilmFault {
  readonly film: string;
  readonly fault: 'darker-over-white';
  /** Labels of the view over the lighter and over the darker backing. */
  readonly views: readonly [string, string];
  /** nm, those in which it is seen. */
  readonly wavelengths: readonly number[];
  /** By how much reflectance at most. */
  readonly by: number;
  /** For the maker: what was found and what would mend it. */
  readonly message: string;
}

/**
 * A film may be this much darker over the lighter backing before it is called a fault: about what an instrument repeats to
 * on matt paint (common practice, no source).
 */
const REPEATABILITY = 0.003;

/** Finds the films that no model can reproduce. They are used nevertheless, as much as the fit can believe them. */
export function filmFaults(films: readonly MeasuredFilm[], wavelengths: readonly number[]): FilmFault[] {
  const faults: FilmFault[] = [];
  for (const film of films) {
    for (let i = 0; i < film.views.length; i++) {
      for (let j = i + 1; j < film.views.length; j++) {
        const fault = pairFault(film, i, j, wavelengths);
        if (fault) faults.push(fault);
      }
    }
  }
  return faults;
}

function pairFault(film: MeasuredFilm, i: number, j: number, wavelengths: readonly number[]): FilmFault | undefined {
  const [one, other] = [film.views[i]!, film.views[j]!];
  const places: number[] = [];
  let by = 0;
  let light = one;
  let dark = other;
  wavelengths.forEach((wavelength, band) => {
    const higher = one.backing[band]! >= other.backing[band]! ? one : other;
    const lower = higher === one ? other : one;
    // Backings that hardly differ tell nothing of the order of the films.
    if (higher.backing[band]! - lower.backing[band]! < 0.05) return;
    const drop = lower.seen[band]! - higher.seen[band]!;
    if (drop <= REPEATABILITY) return;
    places.push(wavelength);
    if (drop > by) {
      by = drop;
      light = higher;
      dark = lower;
    }
  });
  if (places.length === 0) return undefined;
  const range = places.length === 1 ? `${places[0]} nm` : `${places.length} bands from ${places[0]} nm`;
  return {
    film: film.name,
    fault: 'darker-over-white',
    views: [light.label, dark.label],
    wavelengths: places,
    by,
    message: `Film ${film.name} is darker as ${light.label} than as ${dark.label}, by up to ${by.toFixed(4)} (${range}): no layer does that. The two drawdowns differ, or were swapped; draw and measure them again`,
  };
}
