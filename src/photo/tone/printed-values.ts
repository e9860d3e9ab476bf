import { GREY_VALUES } from '../../measuring-card/measuring-card.ts';
import type { CardValues } from '../card-values.ts';
import { byChannel } from '../channels.ts';
import { LIGHT_OF_BYTE, type LinearRgb } from '../pixels.ts';

/** What matt office paper throws back where nobody has measured it: 0.87, give or take 0.035. Common practice, no source. */
const USUAL_PAPER = 0.87;

/** What printed black throws back where nobody has measured it: inkjets on plain paper 0.04 to 0.09, lasers 0.02 to 0.04. Common practice, no source. */
const USUAL_BLACK = 0.05;

/** All that a print throws back, as its maker knows it, or as such prints do. */
export interface PrintedValues {
  readonly paper: LinearRgb;
  readonly black: LinearRgb;
  /** Lightest first. */
  readonly greys: readonly LinearRgb[];
  /** The greys were measured. */
  readonly certified: boolean;
}

/**
 * What a print throws back. Greys that nobody has measured lie between its black and its paper as the file's values do in linear
 * light: a printer that prints as wanted, with its black for the file's.
 */
export function printedValues(values: CardValues): PrintedValues {
  const paper = values.paper ?? byChannel(() => USUAL_PAPER);
  const black = values.black ?? byChannel(() => USUAL_BLACK);
  const wanted = GREY_VALUES.map((value) =>
    byChannel((channel) => black[channel] + (paper[channel] - black[channel]) * LIGHT_OF_BYTE[value]!),
  );
  return { paper, black, greys: values.greys ?? wanted, certified: values.greys !== undefined };
}
