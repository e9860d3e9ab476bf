/**
 * Photos of a card's window, drawn by a formula: only what the search for a bait and for its colour needs.
 *
 * @packageDocumentation
 */
import { CARDS, type CardKind, type MeasuringCard, type Place } from '../../../src/measuring-card/measuring-card.ts';
import type { Shown } from '../../../src/photo/bait/rectify.ts';
import type { LinearRgb, Pixels } from '../../../src/photo/pixels.ts';

/** How a window is photographed. */
export interface Taken {
  readonly perMm?: number;
  /** How much smaller the right end of the window is, of the left one: perspective. */
  readonly tilt?: number;
  readonly turn?: number;
  /** Rms of noise, in linear light as a part of paper's. */
  readonly noise?: number;
  readonly kind?: CardKind;
}

/** What is drawn, and where it is, as a card that was read. */
export interface Drawn extends Shown {
  readonly card: MeasuringCard;
  readonly black: LinearRgb;
}

/** Light of paper in these photos, and of the black half as a part of it. */
const PAPER = 0.8;
export const BLACK: LinearRgb = { r: 0.05, g: 0.05, b: 0.055 };
export const WHITE: LinearRgb = { r: 1, g: 1, b: 1 };

/** A photo of the window with what `over` says at a place, over what lies there: light as a part of paper's. */
export function drawnWindow(over: (place: Place, behind: LinearRgb) => LinearRgb, taken: Taken = {}): Drawn {
  const { perMm = 6, tilt = 0.1, turn = 0, noise = 0.01, kind = 'small' } = taken;
  const card = CARDS[kind];
  const { window, seamX } = card;
  const middle = { x: seamX, y: window.y + window.height / 2 };
  const [cos, sin] = [perMm * Math.cos(turn), perMm * Math.sin(turn)];
  const [long, high] = [window.width + 20, window.height + 24];
  const [c, d] = [Math.abs(Math.cos(turn)), Math.abs(Math.sin(turn))];
  const width = Math.ceil(perMm * (long * c + high * d));
  const height = Math.ceil(perMm * (long * d + high * c));
  const toPixel = ({ x, y }: Place): Place => {
    const [dx, dy] = [x - middle.x, y - middle.y];
    const far = 1 + (tilt * dx) / window.width;
    return { x: width / 2 + (cos * dx - sin * dy) / far, y: height / 2 + (sin * dx + cos * dy) / far };
  };
  const toCard = (px: number, py: number): Place => {
    // u = dx / far and v = dy / far, from which far = 1 / (1 − tilt u / window).
    const [a, b] = [px - width / 2, py - height / 2];
    const u = (cos * a + sin * b) / (perMm * perMm);
    const v = (cos * b - sin * a) / (perMm * perMm);
    const far = 1 / (1 - (tilt * u) / window.width);
    return { x: middle.x + u * far, y: middle.y + v * far };
  };
  const data = new Uint8ClampedArray(4 * width * height);
  const random = seeded(7);
  for (let py = 0; py < height; py++)
    for (let px = 0; px < width; px++) {
      const sum = [0, 0, 0];
      for (const [i, j] of [
        [0.25, 0.25],
        [0.75, 0.25],
        [0.25, 0.75],
        [0.75, 0.75],
      ] as const) {
        const place = toCard(px + i, py + j);
        const { r, g, b } = over(place, place.x < seamX || !inWindow(card, place) ? WHITE : BLACK);
        [r, g, b].forEach((light, channel) => {
          sum[channel]! += light / 4;
        });
      }
      sum.forEach((light, channel) => {
        data[4 * (py * width + px) + channel] = byteOf(PAPER * (light + noise * normal(random)));
      });
    }
  const pixels: Pixels = { data, width, height };
  return { pixels, toPixel, pixelsPerMm: perMm, paperAt: () => ({ r: PAPER, g: PAPER, b: PAPER }), card, black: BLACK };
}

function inWindow({ window }: MeasuringCard, { x, y }: Place): boolean {
  return x >= window.x && x <= window.x + window.width && y >= window.y && y <= window.y + window.height;
}

/** sRGB byte of linear light. IEC 61966-2-1. */
function byteOf(light: number): number {
  return Math.round(255 * (light <= 0.0031308 ? 12.92 * Math.max(0, light) : 1.055 * light ** (1 / 2.4) - 0.055));
}

/** Numbers in 0..1, the same for the same seed: a linear congruence (W. Press et al., Numerical Recipes, from memory). */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

/** A normal number of mean 0 and deviation 1 (G. Box & M. Muller, 1958). */
export function normal(random: () => number): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}
