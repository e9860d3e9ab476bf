/**
 * How far light goes through plastic, and how material that crowds scatters: what is taken where looks have taught nothing.
 *
 * Edition: none, single figures. Step: none.
 * Checked: `CLEAR_SHORTENING` against an integral over the light that gets through a surface, by `tests/optics/optical-model.test.ts`.
 */

/**
 * By what part K and S count for less in a body that scatters nothing than in one through which light goes in all directions.
 *
 * Diffuse light goes twice the thickness on average (P. Kubelka, J. Opt. Soc. Am. 38:448 (1948)); diffuse light that a smooth surface
 * of n = 1.5 has bent toward the normal goes 2n²(1 − √(1 − 1/n²)) = 1.15 times: 1 − 1.15/2 = 0.43.
 */
export const CLEAR_SHORTENING = 0.43;

/**
 * S X at which half of that is left. Our own study on simulated baits, whose light is followed by adding and doubling and not by this
 * book's formulas: books that began anywhere learned 0.40 to 0.76.
 */
export const HALF_CLOUDY = 0.6;

/** Loss of scattering with load, ml/g: usually none. Convention of this book. */
export const USUAL_CROWDING = 0;
