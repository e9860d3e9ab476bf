/**
 * The shadow of a bait on its card, in colour: light that goes through coloured plastic falls on the card as that colour.
 *
 * @packageDocumentation
 */
import type { BaitField } from '../../shapes/bait-field.ts';
import { keptFloats, zeroes } from '../kept-arrays.ts';
import { blur, blurRadius } from './blur.ts';
import type { PixelsInside } from './field-light.ts';

/** Light on the card, a number for each of three channels in each cell of a grid: 1 where nothing is in the way. */
export interface CardLight {
  /** Pixels in a cell, either way. */
  readonly cell: number;
  readonly columns: number;
  readonly rows: number;
  /** Red of all cells, then green, then blue. */
  readonly light: Float32Array;
  /** Cells before and beyond these have light 1: first and last, columns and rows. */
  readonly reach: { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number };
}

/** About so large is a cell, mm: a shadow has nothing finer. */
const CELL_MM = 0.5;

/** Running means for each shadow. */
const PASSES = 2;

/** Shadows of a bait, from the tight one where it touches to the wide one of the room: how far they are moved, how soft they are, mm, and how deep. */
const SHADOWS = [
  { right: 0.12, down: 0.3, soft: 0.42, deep: 0.3 },
  { right: 0.85, down: 2, soft: 1.05, deep: 0.34 },
  { right: 0.6, down: 1.5, soft: 2.9, deep: 0.22 },
] as const;

/** Light that a clear bait gathers as a lens does: taken from what is wide, given to what is narrow. */
const GATHERED = { right: 0.75, down: 1.7, narrow: 0.6, wide: 1.7, part: 0.16 };

/**
 * The light on the card beside and below a bait.
 *
 * @param inside the pixels that hold bait
 * @param turned the picture is going to be turned round: the lamp is at the other side
 * @param clear what of the card's light comes back through the bait at each of them, for each channel, 0 to 1
 */
export function cardLight(
  field: BaitField,
  { inside, rowStart }: PixelsInside,
  clear: Float32Array,
  turned: boolean,
): CardLight {
  const { cover, pixelsPerMm } = field;
  const cell = Math.max(2, Math.round(CELL_MM * pixelsPerMm));
  const [columns, rows] = [Math.ceil(field.columns / cell) + 1, Math.ceil(field.rows / cell) + 1];
  const size = columns * rows;
  const held = zeroes('shadow held', 3 * size);
  const passed = zeroes('shadow passed', 3 * size);
  const part = 1 / (cell * cell);
  const cellOf = Uint16Array.from({ length: field.columns }, (_, x) => x / cell);
  for (let row = 0; row < field.rows; row++) {
    const from = row * field.columns;
    const below = ((row / cell) | 0) * columns;
    for (let i = rowStart[row]!, end = rowStart[row + 1]!; i < end; i++) {
      const at = inside[i]!;
      const place = below + cellOf[at - from]!;
      const here = part * cover[at]!;
      // Light has gone through twice where it is seen again, and once where it falls on the card.
      const red = here * Math.sqrt(clear[3 * i]!);
      const green = here * Math.sqrt(clear[3 * i + 1]!);
      const blue = here * Math.sqrt(clear[3 * i + 2]!);
      held[place]! += here - red;
      held[size + place]! += here - green;
      held[2 * size + place]! += here - blue;
      passed[place]! += red;
      passed[size + place]! += green;
      passed[2 * size + place]! += blue;
    }
  }
  const light = keptFloats('shadow light', 3 * size).fill(1);
  const soft = keptFloats('shadow soft', size);
  const cells = (mm: number): number => (mm * pixelsPerMm) / cell;
  for (let channel = 0; channel < 3; channel++) {
    const into = light.subarray(channel * size, (channel + 1) * size);
    const cast = (from: Float32Array, shadows: readonly Cast[]): void => {
      soft.set(from.subarray(channel * size, (channel + 1) * size));
      let softness = 0;
      // Each is blurred out of the one before it.
      for (const { right, down, soft: mm, times } of shadows) {
        blur(soft, columns, rows, blurRadius(cells(Math.sqrt(mm * mm - softness * softness)), PASSES), PASSES);
        softness = mm;
        addMoved(soft, into, columns, rows, cells(turned ? -right : right), cells(down), times);
      }
    };
    cast(
      held,
      SHADOWS.map((shadow) => ({ ...shadow, times: -shadow.deep })),
    );
    const { narrow, wide, part: gathered } = GATHERED;
    cast(passed, [
      { ...GATHERED, soft: narrow, times: gathered },
      { ...GATHERED, soft: wide, times: -gathered },
    ]);
  }
  return { cell, columns, rows, light, reach: reachOf(light, columns, rows) };
}

interface Cast {
  readonly right: number;
  readonly down: number;
  readonly soft: number;
  readonly times: number;
}

/** Adds a grid that is moved by parts of a cell. */
function addMoved(
  from: Float32Array,
  into: Float32Array,
  columns: number,
  rows: number,
  right: number,
  down: number,
  times: number,
): void {
  const [wholeX, wholeY] = [Math.floor(right), Math.floor(down)];
  const [fx, fy] = [right - wholeX, down - wholeY];
  const [a, b, c, d] = [times * (1 - fx) * (1 - fy), times * fx * (1 - fy), times * (1 - fx) * fy, times * fx * fy];
  for (let y = wholeY + 1; y < rows; y++) {
    const to = y * columns;
    const source = (y - wholeY) * columns - wholeX;
    for (let x = Math.max(0, wholeX + 1); x < columns + Math.min(0, wholeX); x++) {
      const at = source + x;
      into[to + x]! += a * from[at]! + b * from[at - 1]! + c * from[at - columns]! + d * from[at - columns - 1]!;
    }
  }
}

/** Less than this changes no byte of a white card. */
const UNSEEN = 0.004;

function reachOf(light: Float32Array, columns: number, rows: number): CardLight['reach'] {
  let [left, right, top, bottom] = [columns, -1, rows, -1];
  const size = columns * rows;
  for (let y = 0; y < rows; y++) {
    for (let x = 0; x < columns; x++) {
      const at = y * columns + x;
      const most = Math.max(
        Math.abs(light[at]! - 1),
        Math.abs(light[size + at]! - 1),
        Math.abs(light[2 * size + at]! - 1),
      );
      if (most < UNSEEN) continue;
      left = Math.min(left, x);
      right = Math.max(right, x);
      top = Math.min(top, y);
      bottom = y;
    }
  }
  return { left, right, top, bottom };
}
