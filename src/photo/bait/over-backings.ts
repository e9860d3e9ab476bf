/**
 * A bait that was seen over the paper and the black of a printed card, over the two backings of this book.
 *
 * @packageDocumentation
 */
import { BLACK_BACKING, WHITE_BACKING } from '../../tables/backings.ts';

/** Linear red, green and blue. */
type LinearRgb = Readonly<Record<'r' | 'g' | 'b', number>>;

/** A bait, or what lies behind it, over white and over black. */
export interface OverBoth {
  readonly white: LinearRgb;
  readonly black: LinearRgb;
}

/** Backings that are nearer than this do not tell how much light passes: the bait is then taken to hide them. */
const LEAST_APART = 0.02;

/**
 * What a bait reflects over the white and the black of this book, from what it reflects over those of a card, channel by channel.
 *
 * A layer with reflectance R0 by itself and transmittance T shows R = R0 + T² G / (1 − R0 G) over a backing G, whatever is in it (the light
 * goes to and fro between both; G. Kubelka, from memory; derived here). Two backings give R0 and T².
 * Units: linear reflectance, 1 is a perfect white. A channel below 0, of a colour outside sRGB, goes through the same algebra.
 */
export function overBackings(seen: OverBoth, behind: OverBoth): OverBoth {
  const channel = (name: 'r' | 'g' | 'b'): { white: number; black: number } =>
    channelOver(seen.white[name], seen.black[name], behind.white[name], behind.black[name]);
  const [r, g, b] = [channel('r'), channel('g'), channel('b')];
  return {
    white: { r: r.white, g: g.white, b: b.white },
    black: { r: r.black, g: g.black, b: b.black },
  };
}

function channelOver(Rw: number, Rk: number, Gw: number, Gk: number): { white: number; black: number } {
  if (Gw - Gk < LEAST_APART) return { white: Rw, black: Rk };
  const R0 = (Gw * Rk - Gk * Rw) / (Gw - Gk + Gw * Gk * (Rk - Rw));
  const T2 = ((Rw - R0) * (1 - R0 * Gw)) / Gw;
  const over = (G: number): number => R0 + (T2 * G) / (1 - R0 * G);
  return { white: over(WHITE_BACKING), black: over(BLACK_BACKING) };
}
