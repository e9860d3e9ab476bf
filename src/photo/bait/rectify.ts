/**
 * A straight piece of a card, out of a photo that shows it turned and tilted.
 *
 * @packageDocumentation
 */
import type { Place } from '../../measuring-card/measuring-card.ts';
import { CLIPPED_BYTE, inSrgbPrimaries, LIGHT_OF_BYTE, type LinearRgb, type Pixels } from '../pixels.ts';

/** What of a photo that shows a card is asked here. */
export interface Shown {
  readonly pixels: Pixels;
  /** Where a place of the card is in the photo, pixels. */
  readonly toPixel: (place: Place) => Place;
  readonly pixelsPerMm: number;
  /** The light of bare paper at a place, linear. */
  readonly paperAt: (place: Place) => LinearRgb;
}

/** A rectangle of the card, at any angle: from its first corner `length` mm along, and `width` mm to the right of that way (y is down). */
export interface Piece {
  readonly corner: Place;
  /** Direction of its length, radians from x toward y. */
  readonly turn: number;
  readonly length: number;
  readonly width: number;
}

/** A piece as a picture: its rows run along its length. */
export interface Patch {
  readonly piece: Piece;
  readonly columns: number;
  readonly rows: number;
  readonly perMm: number;
  /** Light as a part of that of paper, with the primaries of sRGB: three numbers a pixel. */
  readonly signal: Float32Array;
  /** 1 where two channels or more of the photo are at the camera's upper end. */
  readonly clipped: Uint8Array;
}

/** Between nodes of this many mm, places and light are straight lines: at a tilt of 35° off by less than 0.05 pixels. */
const NODE_MM = 1;

/** Where the middle of a pixel of a patch is on the card. */
export function placeIn({ corner, turn }: Piece, along: number, across: number): Place {
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return { x: corner.x + along * cos - across * sin, y: corner.y + along * sin + across * cos };
}

/**
 * A piece of the card as a patch of about `perMm` pixels a mm, whole pixels.
 *
 * Where the photo has more, each pixel is the mean of several, in linear light; where the photo ends, its last pixels go on.
 */
export function rectify(shown: Shown, piece: Piece, perMm: number): Patch {
  const columns = Math.max(1, Math.round(piece.length * perMm));
  const rows = Math.max(1, Math.round(piece.width * perMm));
  const nodes = nodesOf(shown, piece);
  const fine = Math.max(1, Math.round(shown.pixelsPerMm / perMm));
  const signal = new Float32Array(3 * columns * rows);
  const clipped = new Uint8Array(columns * rows);
  const read = reader(shown.pixels);
  const node = new Float64Array(NODE_SIZE);
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const at = row * columns + column;
      read.start();
      for (let i = 0; i < fine; i++)
        for (let j = 0; j < fine; j++) {
          const along = ((column + (j + 0.5) / fine) / columns) * piece.length;
          const across = ((row + (i + 0.5) / fine) / rows) * piece.width;
          between(nodes, along, across, node);
          read.add(node[0]!, node[1]!);
        }
      const { r, g, b } = inSrgbPrimaries(read.mean(), shown.pixels.space);
      signal[3 * at] = r / node[2]!;
      signal[3 * at + 1] = g / node[3]!;
      signal[3 * at + 2] = b / node[4]!;
      clipped[at] = read.clipped() ? 1 : 0;
    }
  return { piece, columns, rows, perMm: columns / piece.length, signal, clipped };
}

/** x and y in the photo, and the paper's red, green and blue. */
const NODE_SIZE = 5;

interface Nodes {
  readonly across: number;
  readonly along: number;
  readonly stepAlong: number;
  readonly stepAcross: number;
  readonly values: Float64Array;
}

function nodesOf({ toPixel, paperAt }: Shown, piece: Piece): Nodes {
  const along = Math.ceil(piece.length / NODE_MM) + 1;
  const across = Math.ceil(piece.width / NODE_MM) + 1;
  const [stepAlong, stepAcross] = [piece.length / (along - 1), piece.width / (across - 1)];
  const values = new Float64Array(NODE_SIZE * along * across);
  for (let row = 0; row < across; row++)
    for (let column = 0; column < along; column++) {
      const place = placeIn(piece, column * stepAlong, row * stepAcross);
      const { x, y } = toPixel(place);
      const { r, g, b } = paperAt(place);
      values.set([x, y, r, g, b], NODE_SIZE * (row * along + column));
    }
  return { along, across, stepAlong, stepAcross, values };
}

function between(
  { along, across, stepAlong, stepAcross, values }: Nodes,
  x: number,
  y: number,
  out: Float64Array,
): void {
  const column = Math.min(along - 2, Math.floor(x / stepAlong));
  const row = Math.min(across - 2, Math.floor(y / stepAcross));
  const right = x / stepAlong - column;
  const down = y / stepAcross - row;
  const at = NODE_SIZE * (row * along + column);
  const below = at + NODE_SIZE * along;
  for (let i = 0; i < NODE_SIZE; i++) {
    const upper = values[at + i]! * (1 - right) + values[at + NODE_SIZE + i]! * right;
    const lower = values[below + i]! * (1 - right) + values[below + NODE_SIZE + i]! * right;
    out[i] = upper * (1 - down) + lower * down;
  }
}

/** Reads the light of a photo between its pixels, and means of it. */
function reader({ data, width, height }: Pixels) {
  let [r, g, b, count, ends] = [0, 0, 0, 0, 0];
  const clamp = (value: number, most: number): number => Math.min(most, Math.max(0, value));
  return {
    start(): void {
      r = g = b = count = ends = 0;
    },
    add(x: number, y: number): void {
      // The middle of the first pixel is at one half.
      const left = Math.floor(x - 0.5);
      const top = Math.floor(y - 0.5);
      const [right, down] = [x - 0.5 - left, y - 0.5 - top];
      const [x0, x1] = [clamp(left, width - 1), clamp(left + 1, width - 1)];
      const [y0, y1] = [clamp(top, height - 1) * width, clamp(top + 1, height - 1) * width];
      const [a, b0, c, d] = [4 * (y0 + x0), 4 * (y0 + x1), 4 * (y1 + x0), 4 * (y1 + x1)];
      const [wa, wb, wc, wd] = [(1 - right) * (1 - down), right * (1 - down), (1 - right) * down, right * down];
      const light = (channel: number): number =>
        wa * LIGHT_OF_BYTE[data[a + channel]!]! +
        wb * LIGHT_OF_BYTE[data[b0 + channel]!]! +
        wc * LIGHT_OF_BYTE[data[c + channel]!]! +
        wd * LIGHT_OF_BYTE[data[d + channel]!]!;
      r += light(0);
      g += light(1);
      b += light(2);
      count += 1;
      const nearest = 4 * (clamp(Math.floor(y), height - 1) * width + clamp(Math.floor(x), width - 1));
      const high = (channel: number): number => (data[nearest + channel]! >= CLIPPED_BYTE ? 1 : 0);
      ends += high(0) + high(1) + high(2) >= 2 ? 1 : 0;
    },
    mean: (): LinearRgb => ({ r: r / count, g: g / count, b: b / count }),
    clipped: (): boolean => 2 * ends >= count,
  };
}
