/**
 * The look of a film that nobody has made yet, and how far off it may be.
 */
import type { LabD65 } from '../cielab.ts';
import { type ColourSpread, colourSpread } from '../spread-of-colour.ts';
import { observerWeights, type Tristimulus } from '../tristimulus.ts';
import { type FilmPart, requireParts, requireReflectances } from './film.ts';
import { filmCovariance } from './film-covariance.ts';
import { backingInside, type FilmNumbers, filmState, mixFilm } from './film-model.ts';
import type { FittedMaterials } from './fit-materials.ts';
import { viewSlopes } from './view-slopes.ts';

/** A predicted film on a backing. */
export interface PredictedFilm extends ColourSpread {
  /** Reflectance from outside, 0..1, on the grid of the fit. */
  readonly spectrum: Float64Array;
  /** D65, 2°, sums over the grid of the fit, white from the same sums. */
  readonly tristimulus: Tristimulus;
  readonly lab: LabD65;
  /** Names of the films that hold any of its materials: what the prediction rests on. */
  readonly restsOn: readonly string[];
}

/**
 * Predicts the film that `parts` make on a backing.
 *
 * Units: parts as in the fit, `thickness` in its unit (1 if unset), backing as measured bare, 0..1.
 * Throws: RangeError if a material was not in the fit, or a number is out of range.
 */
export function predictFilm(
  fitted: FittedMaterials,
  parts: readonly FilmPart[],
  backing: ArrayLike<number>,
  thickness = 1,
): PredictedFilm {
  const { options } = fitted;
  const bands = options.wavelengths.length;
  requireParts('to predict', parts);
  requireReflectances('backing', backing, bands);
  const names = [...fitted.materials.keys()];
  const materials = [...fitted.materials.values()];
  const film: FilmNumbers = {
    materials: parts.map(({ material }) => {
      const index = names.indexOf(material);
      if (index < 0) throw new RangeError(`No material ${material} in the fit; give one of ${names.join(', ')}`);
      return index;
    }),
    amounts: parts.map((part) => part.amount),
  };
  const state = filmState(bands, parts.length);
  mixFilm(film, materials, options.amounts, state);
  const weights = observerWeights(options.wavelengths, 'D65');
  const inside = backingInside(backing, options.backingSurface);
  const slopes = viewSlopes(state, thickness, inside, options.surface, weights);
  const [L, a, b] = slopes.lab.lab as unknown as [number, number, number];
  const lab = { L, a, b };
  const held = new Set(parts.flatMap((part) => fitted.materials.get(part.material)!.films));
  return {
    spectrum: slopes.R,
    tristimulus: {
      X: weighted(weights.x, slopes.R),
      Y: weighted(weights.y, slopes.R),
      Z: weighted(weights.z, slopes.R),
    },
    lab,
    restsOn: fitted.films.map((residual) => residual.name).filter((name) => held.has(name)),
    ...colourSpread(filmCovariance(fitted, film, state, slopes, lab)),
  };
}

function weighted(weights: Float64Array, R: Float64Array): number {
  let sum = 0;
  for (let band = 0; band < R.length; band++) sum += weights[band]! * R[band]!;
  return sum;
}
