import type { Backings } from '../../optics/optical-model.ts';
import { constantSpectrum, type Spectrum, spectrumFrom } from '../../optics/spectrum.ts';
import { BESIDE_GLOSS, surfaceOutwardSpectrum } from '../../optics/surface.ts';
import { linearOfCoded } from '../../tables/srgb.ts';
import { writeLinear } from '../colour/linear-weights.ts';

/** A card in linear sRGB: bare, and under plastic that does nothing but lie on it. */
export interface Card {
  readonly bare: Float64Array;
  readonly below: Float64Array;
}

/** Byte of the white card beside a bait, whatever card the book has: pages go on round a picture in it (`--tile` in their styles). */
export const WHITE_CARD_BYTE = 0xf6;

/** The cards under a bait, as its colour was computed over them; beside it the white one is drawn. */
export function cardsOf({ white, black }: Backings): { readonly white: Card; readonly black: Card } {
  const bare = new Float64Array(3).fill(linearOfCoded(WHITE_CARD_BYTE / 255));
  return { white: { ...cardOf(white), bare }, black: cardOf(black) };
}

function cardOf(backing: number | ArrayLike<number>): Card {
  const spectrum: Spectrum = typeof backing === 'number' ? constantSpectrum(backing) : spectrumFrom(backing);
  return { bare: linearOf(spectrum), below: linearOf(surfaceOutwardSpectrum(spectrum, BESIDE_GLOSS)) };
}

function linearOf(spectrum: Spectrum): Float64Array {
  const linear = new Float64Array(3);
  writeLinear(spectrum, linear, 0);
  return linear;
}
