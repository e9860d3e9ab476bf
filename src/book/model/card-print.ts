import type { LinearRgb } from '../../optics/display.ts';

/** What is known of the maker's own print of the measuring card. Colours as reflectances of red, green and blue in linear light, under D65. */
export interface CardPrint {
  /** How long the printed scale is, which is designed 80 mm long. */
  readonly scaleMm: number;
  readonly paper?: LinearRgb;
  readonly black?: LinearRgb;
  /** Lightest first, one for each of `GREY_VALUES`; where they are known, the card is certified. */
  readonly greys?: readonly LinearRgb[];
}
