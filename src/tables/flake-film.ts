/**
 * The film that flake is cut from.
 *
 * Edition: none, single figures. Step: none.
 */

/** g/ml. PET (polyester) film, ASTM D1505: 1.390, product information of a film maker; tables give 1.38 to 1.40. */
export const FLAKE_FILM_DENSITY = 1.39;

/** mm. Common practice, no source: cut polyester glitter is sold as 1 to 2 mil film; 0.001 in = 0.0254 mm exactly. */
export const FLAKE_FILM_THICKNESS = 0.0254;
