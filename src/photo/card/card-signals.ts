import type { LinearRgb } from '../pixels.ts';

/**
 * What the card's own fields gave in a photo: light of each as a part of what bare paper at its place gave, by channel. The
 * phone has bent them; what they throw back comes from a `Tone`.
 */
export interface CardSignals {
  readonly greys: readonly GreySignal[];
  /** The black half of the window, away from the bait. */
  readonly black: LinearRgb;
}

/** The signal of one printed grey. */
export interface GreySignal {
  /** Its place among the card's greys, lightest first. */
  readonly step: number;
  readonly signal: LinearRgb;
}
