/**
 * Measured films: what the joint fit of materials takes in.
 */

/** A material in a film. */
export interface FilmPart {
  readonly material: string;
  /**
   * Above 0. Parts by mass of what the film is made of (any scale: they are divided by their sum), or, where the fit is
   * told so, g per ml of plastic.
   */
  readonly amount: number;
}

/** A film on one backing, both as measured from outside, 0..1, on the grid of the fit. */
export interface FilmView {
  /** Such as `film_on_black`. */
  readonly label: string;
  /** The backing alone. */
  readonly backing: ArrayLike<number>;
  /** The film on it. */
  readonly seen: ArrayLike<number>;
}

/** A film of known composition, measured on one or more backings. */
export interface MeasuredFilm {
  readonly name: string;
  readonly parts: readonly FilmPart[];
  /** In the unit of thickness that K and S shall have; unset: 1. */
  readonly thickness?: number;
  readonly views: readonly FilmView[];
}

/** Lowest and highest reflectance that the fit reads out of a measurement: beyond lie noise and wrong calibration. */
const LOWEST = 0;
const HIGHEST = 1.2;

/**
 * Checks what a programmer can get wrong.
 *
 * Throws: RangeError naming the film and the number if an amount or thickness is not above 0, a spectrum has not `bands`
 * numbers, or one of them is not a reflectance.
 */
export function requireFilm(film: MeasuredFilm, bands: number): void {
  requireParts(film.name, film.parts);
  if (!(inRange(film.thickness ?? 1, 1e-9, 1e9) && film.views.length > 0)) {
    throw new RangeError(`Film ${film.name} has thickness ${film.thickness} and ${film.views.length} views; give both`);
  }
  for (const { label, backing, seen } of film.views) {
    requireReflectances(`${film.name} ${label}, backing`, backing, bands);
    requireReflectances(`${film.name} ${label}`, seen, bands);
  }
}

/** Throws: RangeError if there are no parts, one comes twice, or an amount is not above 0. */
export function requireParts(name: string, parts: readonly FilmPart[]): void {
  if (parts.length === 0) throw new RangeError(`Film ${name} has no parts; give at least one`);
  const seen = new Set<string>();
  for (const { material, amount } of parts) {
    if (!inRange(amount, 1e-12, 1e12)) {
      throw new RangeError(`Film ${name} has ${amount} of ${material}; give an amount above 0`);
    }
    if (seen.has(material)) throw new RangeError(`Film ${name} has ${material} twice; give their sum`);
    seen.add(material);
  }
}

/** Throws: RangeError if there are not `bands` numbers, or one is not a reflectance. */
export function requireReflectances(name: string, values: ArrayLike<number>, bands: number): void {
  if (values.length !== bands) throw new RangeError(`${name} has ${values.length} bands; give ${bands}`);
  for (let band = 0; band < bands; band++) {
    if (!inRange(values[band]!, LOWEST, HIGHEST)) {
      throw new RangeError(`${name} is ${values[band]} in band ${band + 1}; give a reflectance, 0..1, never percent`);
    }
  }
}

function inRange(value: number, lowest: number, highest: number): boolean {
  return value >= lowest && value <= highest;
}
