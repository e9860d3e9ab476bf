/**
 * What light does on a bait whatever its colour: it hangs on the mold alone, and is kept with its field.
 *
 * @packageDocumentation
 */
import type { BaitField } from '../../shapes/bait-field.ts';
import { keptFloats, zeroes } from '../kept-arrays.ts';
import { blur, blurRadius } from './blur.ts';
import { cardAlong, roomAlong } from './room.ts';
import { unevenness } from './unevenness.ts';

/** The pixels of a field in which there is bait. */
export interface PixelsInside {
  /** Their places in the field, row by row. */
  readonly inside: Int32Array;
  /** Where each row begins in `inside`; one more at the end. */
  readonly rowStart: Int32Array;
}

/** Each array holds one number for each pixel in which there is bait, in the order of `inside`. */
export interface FieldLight extends PixelsInside {
  /** What a body that hides shows of its colour, and what a clear one does: 1 on the mean of the bait. */
  readonly hiding: Float32Array;
  readonly clear: Float32Array;
  /** What the gloss leaves of the colour below it, 1 where one looks straight on. */
  readonly past: Float32Array;
  /** What the gloss adds from the room, and the part of the card that it mirrors; the white card is 1. */
  readonly gloss: Float32Array;
  readonly mirror: Float32Array;
  /** The room's light as it comes back from the far side of clear plastic. */
  readonly inner: Float32Array;
  /** What a pearl gains by its plates that lie with the surface, times its strength: 0 on the mean of the bait. */
  readonly pearl: Float32Array;
}

const lights = { straight: new WeakMap<BaitField, FieldLight>(), turned: new WeakMap<BaitField, FieldLight>() };

/**
 * The light on a field, made once.
 *
 * @param turned the picture is going to be turned round, left for right: the room is, before it
 */
export function fieldLight(field: BaitField, turned: boolean): FieldLight {
  const known = lights[turned ? 'turned' : 'straight'];
  const light = known.get(field) ?? newFieldLight(field, turned ? -1 : 1);
  known.set(field, light);
  return light;
}

/** Steepest slope that is drawn: beyond it a silhouette would be a dotted line of Fresnel's. */
const STEEPEST = 2.6;
/** Reflection of plastic that is looked at straight on: n = 1.5. */
const STRAIGHT_ON = 0.04;
/** From where the key light comes: left, above, towards the eye; a unit vector. */
const KEY = unit(-0.34, -0.66, 0.67);
/** The direction half way to the eye. */
const HALF_WAY = unit(KEY.x, KEY.y, KEY.z + 1);
/** Far away the room is, mm: the further a place from the bait's middle, the more the room is moved in its mirror. */
const ROOM_MM = 150;
/** Light that has gone into plastic comes out this far away, mm. */
const SPREAD_MM = 0.45;
/** How strong the sheen of pearl alone is where its plates mirror the key light, and how fast it is gone beside that. Looked for by eye. */
const SHEEN = 0.75;
const SHEEN_POWER = 14;
/** What lies lower than its surroundings of this size, mm, gets less of the room's light. */
const HOLLOW_MM = 1.1;

/** @param side 1, or −1 with left for right */
function newFieldLight(field: BaitField, side: 1 | -1): FieldLight {
  const { columns, rows, cover, pixelsPerMm } = field;
  const { inside, rowStart } = pixelsInside(field);
  const count = inside.length;
  const near = smoothedHeight(field, 'near', 0);
  const spread = smoothedHeight(field, 'spread', SPREAD_MM * pixelsPerMm);
  const round = smoothedHeight(field, 'round', HOLLOW_MM * pixelsPerMm);
  const light = {
    inside,
    rowStart,
    hiding: new Float32Array(count),
    clear: new Float32Array(count),
    past: new Float32Array(count),
    gloss: new Float32Array(count),
    mirror: new Float32Array(count),
    inner: new Float32Array(count),
    pearl: new Float32Array(count),
  };
  const middle = middleOf(inside, columns, rows);
  const uneven = unevenness(field);
  const slope = { x: 0, y: 0 };
  const slopeAt = (height: Float32Array, at: number): void => {
    const x = at % columns;
    slope.x = difference(height, cover, at, x > 0 ? 1 : 0, x < columns - 1 ? 1 : 0) * pixelsPerMm;
    slope.y =
      difference(height, cover, at, at >= columns ? columns : 0, at < columns * (rows - 1) ? columns : 0) * pixelsPerMm;
  };
  let [sumHiding, sumClear, sumPearl, sum] = [0, 0, 0, 0];
  for (let i = 0; i < count; i++) {
    const at = inside[i]!;
    const x = at % columns;
    const y = (at - x) / columns;
    slopeAt(near, at);
    const bump = uneven(x, y);
    let [sx, sy] = capped(slope.x + bump.x, slope.y + bump.y);
    let nz = 1 / Math.sqrt(1 + sx * sx + sy * sy);
    const [nx, ny] = [-sx * nz, -sy * nz];
    const fresnel = STRAIGHT_ON + (1 - STRAIGHT_ON) * (1 - nz) ** 5;
    const rx = 2 * nz * nx + (x - middle.x) / pixelsPerMm / ROOM_MM;
    const ry = 2 * nz * ny + (y - middle.y) / pixelsPerMm / ROOM_MM;
    const rz = 2 * nz * nz - 1;
    const whole = leastCoverAround(cover, at, columns, rows);
    light.gloss[i] = fresnel * roomAlong(side * rx, ry, rz) * whole;
    light.mirror[i] = fresnel * cardAlong(rz) * whole;
    light.past[i] = (1 - fresnel * whole) / (1 - STRAIGHT_ON * whole);
    // The far side is a hollow mirror: what is above is seen below.
    light.inner[i] = STRAIGHT_ON * (1 - fresnel) * roomAlong(-1.15 * side * rx, -1.15 * ry, 0.6) * whole;
    const towards = side * nx * HALF_WAY.x + ny * HALF_WAY.y + nz * HALF_WAY.z;
    light.pearl[i] = SHEEN * Math.max(0, towards) ** SHEEN_POWER;
    slopeAt(spread, at);
    [sx, sy] = capped(slope.x, slope.y);
    nz = 1 / Math.sqrt(1 + sx * sx + sy * sy);
    const facing = (-side * sx * KEY.x - sy * KEY.y + KEY.z) * nz;
    const away = (side * sx * KEY.x + sy * KEY.y) * nz;
    const hollow = Math.max(0, round[at]! - near[at]!);
    const open = 1 / (1 + 0.9 * hollow);
    light.hiding[i] = (0.62 + 0.46 * Math.max(0, (facing + 0.25) / 1.25)) * open;
    light.clear[i] = (0.92 + 0.36 * Math.max(-0.35, away) - 0.34 * (1 - nz) ** 3) * Math.sqrt(open);
    const here = cover[at]!;
    sumHiding += here * light.hiding[i]!;
    sumClear += here * light.clear[i]!;
    sumPearl += here * light.pearl[i]!;
    sum += here;
  }
  if (sum > 0) {
    for (let i = 0; i < count; i++) {
      light.hiding[i]! *= sum / sumHiding;
      light.clear[i]! *= sum / sumClear;
      light.pearl[i]! -= sumPearl / sum;
    }
  }
  return light;
}

function unit(x: number, y: number, z: number): { readonly x: number; readonly y: number; readonly z: number } {
  const length = Math.hypot(x, y, z);
  return { x: x / length, y: y / length, z: z / length };
}

function pixelsInside({ columns, rows, cover }: BaitField): PixelsInside {
  const rowStart = new Int32Array(rows + 1);
  let count = 0;
  for (let at = 0; at < cover.length; at++) if (cover[at]! > 0) count++;
  const inside = new Int32Array(count);
  count = 0;
  for (let row = 0, at = 0; row < rows; row++) {
    rowStart[row] = count;
    for (const end = at + columns; at < end; at++) if (cover[at]! > 0) inside[count++] = at;
  }
  rowStart[rows] = count;
  return { inside, rowStart };
}

function middleOf(inside: Int32Array, columns: number, rows: number): { readonly x: number; readonly y: number } {
  let [left, right, top, bottom] = [columns, 0, rows, 0];
  for (const at of inside) {
    const x = at % columns;
    const y = (at - x) / columns;
    if (x < left) left = x;
    if (x > right) right = x;
    if (y < top) top = y;
    if (y > bottom) bottom = y;
  }
  return { x: (left + right) / 2, y: (top + bottom) / 2 };
}

/**
 * The near surface, smoothed twice with 1-2-1, or wider: once would show the steps of its sweep in the gloss. Where bait ends it is not
 * drawn down by the nothing beside it: each place counts by its cover.
 */
function smoothedHeight({ columns, rows, cover, heightMm }: BaitField, name: string, deviation: number): Float32Array {
  const size = columns * rows;
  const sums = keptFloats(`height ${name}`, size);
  const weights = keptFloats('height weights', size);
  for (let at = 0; at < size; at++) {
    const part = cover[at]!;
    weights[at] = part;
    sums[at] = part * heightMm[at]!;
  }
  for (const values of [sums, weights]) {
    if (deviation > 0) blur(values, columns, rows, blurRadius(deviation, 2), 2);
    else for (let pass = 0; pass < 2; pass++) smooth121(values, columns, rows);
  }
  for (let at = 0; at < size; at++) sums[at] = cover[at]! > 0 ? sums[at]! / Math.max(1e-6, weights[at]!) : 0;
  return sums;
}

function smooth121(values: Float32Array, columns: number, rows: number): void {
  for (let row = 0; row < rows; row++) {
    let before = 0;
    const end = (row + 1) * columns;
    for (let at = row * columns; at < end; at++) {
      const here = values[at]!;
      values[at] = 0.25 * (before + 2 * here + (at + 1 < end ? values[at + 1]! : 0));
      before = here;
    }
  }
  const above = zeroes('row above', columns);
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const at = row * columns + column;
      const here = values[at]!;
      values[at] = 0.25 * (above[column]! + 2 * here + (row + 1 < rows ? values[at + columns]! : 0));
      above[column] = here;
    }
  }
}

/** Change from a pixel to the next one, of neighbours that hold bait: of both where both do. */
function difference(values: Float32Array, cover: Float32Array, at: number, before: number, after: number): number {
  const from = before > 0 && cover[at - before]! > 0 ? at - before : at;
  const to = after > 0 && cover[at + after]! > 0 ? at + after : at;
  if (from === to) return 0;
  return (values[to]! - values[from]!) / (from === at || to === at ? 1 : 2);
}

function capped(x: number, y: number): [number, number] {
  const steep = Math.hypot(x, y);
  return steep > STEEPEST ? [(x * STEEPEST) / steep, (y * STEEPEST) / steep] : [x, y];
}

/** The least of the covers of a pixel and its four neighbours: a pixel at the border has no gloss. */
function leastCoverAround(cover: Float32Array, at: number, columns: number, rows: number): number {
  const x = at % columns;
  let least = cover[at]!;
  if (x > 0) least = Math.min(least, cover[at - 1]!);
  if (x < columns - 1) least = Math.min(least, cover[at + 1]!);
  if (at >= columns) least = Math.min(least, cover[at - columns]!);
  if (at < columns * (rows - 1)) least = Math.min(least, cover[at + columns]!);
  return least;
}
