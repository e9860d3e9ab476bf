import { emptyRaster, put } from '../../picture/laid-together.ts';
import { WHITE_CARD_BYTE } from '../../picture/light/cards.ts';
import { SHARED_PICTURE } from '../../render/shared-head.ts';
import { BLACK_CARD } from '../../render/swatch/tint.ts';
import type { LinkWords } from './pictured.ts';
import { linkWords, sharpOf } from './shared-link.ts';
import type { Outlines } from './title-outlines.ts';

const { width: WIDTH, height: HEIGHT } = SHARED_PICTURE;

/** The card that is seen beside the colours, and between those of two sides, px; above and below it is wide enough for words. */
const SIDE = 44;
const BETWEEN = 22;
const WORDS = 112;

/** Colours of a part of a target, `#rrggbb`; what nobody saw over black is bare card there. */
export interface TargetColours {
  readonly white: string;
  readonly black?: string;
}

/** A target's colours over white and over black under its name, as the bytes of a JPEG: the picture of a link to it. */
export async function targetLink(
  parts: readonly TargetColours[],
  words: LinkWords,
  outlines: Outlines,
): Promise<Uint8Array> {
  const whole = emptyRaster(WIDTH, HEIGHT, [WHITE_CARD_BYTE, WHITE_CARD_BYTE, WHITE_CARD_BYTE]);
  put(emptyRaster(WIDTH, HEIGHT / 2, bytesOf(BLACK_CARD)), whole, 0, HEIGHT / 2);
  const wide = Math.floor((WIDTH - 2 * SIDE - BETWEEN * (parts.length - 1)) / parts.length);
  const high = HEIGHT / 2 - WORDS;
  for (const [at, { white, black }] of parts.entries()) {
    const left = SIDE + at * (wide + BETWEEN);
    put(emptyRaster(wide, high, bytesOf(white)), whole, left, WORDS);
    if (black !== undefined) put(emptyRaster(wide, high, bytesOf(black)), whole, left, HEIGHT / 2);
  }
  return sharpOf(whole)
    .composite([{ input: linkWords(words, outlines) }])
    .jpeg({ quality: 90 })
    .toBuffer();
}

function bytesOf(hex: string): readonly [number, number, number] {
  const number = Number.parseInt(hex.slice(1), 16);
  return [number >> 16, (number >> 8) & 255, number & 255];
}
