/**
 * How light each place of a printed card is, from its picture and its print, at the fineness that a photo needs.
 *
 * @packageDocumentation
 */
import type { CardPicture } from './card-picture.ts';

/** Tones of a card: 0 where ink is full, 1 where paper is bare; `perMm` to a mm as printed. */
export interface CardTones {
  readonly columns: number;
  readonly rows: number;
  readonly perMm: number;
  readonly tones: Float32Array;
}

/** The tones of a picture whose file values have these tones, about as fine as the photo's pixels. */
export function cardTones(card: CardPicture, toneOfValue: Float32Array, scale: number, pixelsPerMm: number): CardTones {
  const { columns, rows, values } = card;
  const fine = new Float32Array(columns * rows);
  for (let at = 0; at < fine.length; at++) fine[at] = toneOfValue[values[at]!]!;
  let tones: CardTones = { columns, rows, perMm: card.perMm / scale, tones: fine };
  while (tones.perMm > 1.4 * pixelsPerMm) tones = halved(tones);
  return tones;
}

/** Means of two by two: tones are linear, so that edges stay where they are. */
function halved({ columns, rows, perMm, tones }: CardTones): CardTones {
  const [across, down] = [Math.floor(columns / 2), Math.floor(rows / 2)];
  const means = new Float32Array(across * down);
  for (let row = 0; row < down; row++) {
    for (let column = 0; column < across; column++) {
      const at = 2 * row * columns + 2 * column;
      means[row * across + column] =
        (tones[at]! + tones[at + 1]! + tones[at + columns]! + tones[at + columns + 1]!) / 4;
    }
  }
  return { columns: across, rows: down, perMm: perMm / 2, tones: means };
}

/** The tone at a place in mm as printed, between its four neighbours; -1 beside the card. */
export function toneAt({ columns, rows, perMm, tones }: CardTones, x: number, y: number): number {
  const [across, down] = [x * perMm - 0.5, y * perMm - 0.5];
  if (across < -0.5 || down < -0.5 || across > columns - 0.5 || down > rows - 0.5) return -1;
  const left = Math.max(0, Math.min(columns - 2, Math.floor(across)));
  const top = Math.max(0, Math.min(rows - 2, Math.floor(down)));
  const [right, below] = [Math.min(1, Math.max(0, across - left)), Math.min(1, Math.max(0, down - top))];
  const at = top * columns + left;
  const upper = tones[at]! + right * (tones[at + 1]! - tones[at]!);
  const lower = tones[at + columns]! + right * (tones[at + columns + 1]! - tones[at + columns]!);
  return upper + below * (lower - upper);
}
