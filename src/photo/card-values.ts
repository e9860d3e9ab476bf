import type { LinearRgb } from './pixels.ts';

/**
 * What one's own print of the card is: linear red, green and blue under D65, 0..1, and its size. What is left out nobody
 * has measured.
 */
export interface CardValues {
  /** How long the 80 mm of the scale are on the print, mm. */
  readonly scaleMm: number;
  readonly paper?: LinearRgb;
  readonly black?: LinearRgb;
  /** The five greys, lightest first: with them the card is certified. */
  readonly greys?: readonly LinearRgb[];
}
