/**
 * Ribbons made dense, and painted: what each pixel of one holds.
 *
 * @packageDocumentation
 */
import type { FieldFrame } from './bait-field.ts';
import type { Ring, SolidRibbon, Station } from './solid.ts';

/** A ribbon at many places along it; lengths in pixels of a frame but for what says mm. */
export interface DenseRibbon {
  readonly count: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Unit vector along the middle line. */
  readonly tx: Float64Array;
  readonly ty: Float64Array;
  /** Squares of the reach up and down: negative beyond a rounded end. */
  readonly up: Float64Array;
  readonly down: Float64Array;
  readonly alongMm: Float64Array;
  readonly deepMm: Float64Array;
  readonly flat: Float64Array;
  readonly liftMm: Float64Array;
  readonly twist: Float64Array;
  readonly thin: Uint8Array;
}

/** What the pixels of one ribbon hold; `liftMm` is of the middle between its two surfaces. */
export interface Layer {
  readonly cover: Float32Array;
  readonly thicknessMm: Float32Array;
  readonly alongMm: Float32Array;
  readonly across: Float32Array;
  readonly halfMm: Float32Array;
  readonly part: Uint8Array;
  readonly liftMm: Float32Array;
}

/** Pixels of a frame: columns and rows from the first to before the last. */
export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** A curve through four points by Catmull & Rom (1974), between the second and the third. */
function curve(a: number, b: number, c: number, d: number, t: number): number {
  return b + 0.5 * t * (c - a + t * (2 * a - 5 * b + 4 * c - d + t * (3 * (b - c) + d - a)));
}

function slope(a: number, b: number, c: number, d: number, t: number): number {
  return 0.5 * (c - a + t * (2 * (2 * a - 5 * b + 4 * c - d) + 3 * t * (3 * (b - c) + d - a)));
}

/** The squares of a reach at all stations: heights are drawn in their squares, so that ends are round rather than pointed. */
function squares(ribbon: SolidRibbon, side: 'up' | 'down'): readonly number[] {
  const all = ribbon.stations.map((station) => station[side] ** 2);
  if (ribbon.roundStart) all[0] = 0;
  if (ribbon.roundEnd) all[all.length - 1] = 0;
  return all;
}

/** A list with what goes before it and after it: on where it ends round, the same again where it is cut off. */
function withEnds(all: readonly number[], { roundStart, roundEnd }: SolidRibbon): readonly number[] {
  const count = all.length;
  return [roundStart ? -all[1]! : all[0]!, ...all, roundEnd ? -all[count - 2]! : all[count - 1]!];
}

const onward = (all: readonly number[]): readonly number[] => [
  2 * all[0]! - all[1]!,
  ...all,
  2 * all.at(-1)! - all.at(-2)!,
];

/** How much of a ribbon's thickness its rings take at a place along it. */
function ringsAt(rings: readonly Ring[], alongMm: number): number {
  let taken = 0;
  for (const ring of rings) {
    const away = (alongMm - ring.alongMm) / ring.widthMm;
    if (away > -4 && away < 4) taken += ring.deep * Math.exp(-away * away);
  }
  return taken;
}

/** Part of what rings take of the thickness that they take of the outline too. */
const RINGS_OF_OUTLINE = 0.55;

/** Steps of the table of rings, a mm. */
const RING_STEPS = 16;

/** How far a thin part is at most deeper than it is high. */
const DEEP_TO_HIGH = 0.95;

/** Makes a ribbon dense, in the pixels of a frame. */
export function denseRibbon(ribbon: SolidRibbon, { pixelsPerMm, noseX, noseY }: FieldFrame): DenseRibbon {
  const { stations, rings, thinFrom } = ribbon;
  const stepMm = Math.max(0.2, 2.5 / pixelsPerMm);
  const [x, y] = [onward(stations.map((each) => each.x)), onward(stations.map((each) => each.y))];
  const [up, down] = [withEnds(squares(ribbon, 'up'), ribbon), withEnds(squares(ribbon, 'down'), ribbon)];
  const steps = stations.slice(1).map((to, index) => {
    const from = stations[index]!;
    return Math.max(3, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / stepMm));
  });
  const [before, after] = [Number(ribbon.roundStart), Number(ribbon.roundEnd)];
  const count = steps.reduce((sum, each) => sum + each, 1) + before + after;
  const numbers = (): Float64Array => new Float64Array(count);
  const dense: DenseRibbon = {
    count,
    x: numbers(),
    y: numbers(),
    tx: numbers(),
    ty: numbers(),
    up: numbers(),
    down: numbers(),
    alongMm: numbers(),
    deepMm: numbers(),
    flat: numbers(),
    liftMm: numbers(),
    twist: numbers(),
    thin: new Uint8Array(count),
  };
  const toPixels = pixelsPerMm * pixelsPerMm;
  let alongMm = ribbon.startMm;
  let at = before;
  let last: { x: number; y: number } | undefined;
  const add = (segment: number, t: number): void => {
    const of = (all: readonly number[]): number =>
      curve(all[segment]!, all[segment + 1]!, all[segment + 2]!, all[segment + 3]!, t);
    const slopeOf = (all: readonly number[]): number =>
      slope(all[segment]!, all[segment + 1]!, all[segment + 2]!, all[segment + 3]!, t);
    const [from, to] = [stations[segment]!, stations[segment + 1]!];
    const mixed = (name: 'deep' | 'flat' | 'lift' | 'twist'): number => {
      const line = (index: number): number => {
        const station: Station = stations[Math.min(Math.max(index, 0), stations.length - 1)]!;
        return station[name] ?? 0;
      };
      return curve(line(segment - 1), line(segment), line(segment + 1), line(segment + 2), t);
    };
    const place = { x: of(x), y: of(y) };
    const [dx, dy] = [slopeOf(x), slopeOf(y)];
    const long = Math.hypot(dx, dy) || 1;
    if (last !== undefined) alongMm += Math.hypot(place.x - last.x, place.y - last.y);
    last = place;
    const kept = (1 - RINGS_OF_OUTLINE * ringsAt(rings, alongMm)) ** 2;
    const [upper, lower] = [Math.max(0, of(up)) * kept, Math.max(0, of(down)) * kept];
    const flat = Math.min(1, Math.max(0, mixed('flat')));
    const high = Math.sqrt(upper) + Math.sqrt(lower);
    const deep = Math.min(Math.max(0, mixed('deep')), Math.max(from.deep, to.deep));
    dense.x[at] = noseX + place.x * pixelsPerMm;
    dense.y[at] = noseY + place.y * pixelsPerMm;
    dense.tx[at] = dx / long;
    dense.ty[at] = dy / long;
    dense.up[at] = upper * toPixels;
    dense.down[at] = lower * toPixels;
    dense.alongMm[at] = alongMm;
    dense.deepMm[at] = deep + flat * (Math.min(deep, DEEP_TO_HIGH * high) - deep);
    dense.flat[at] = flat;
    dense.liftMm[at] = mixed('lift');
    dense.twist[at] = mixed('twist');
    dense.thin[at] = Number(segment + t >= thinFrom);
    at++;
  };
  steps.forEach((all, segment) => {
    for (let step = 0; step < all; step++) add(segment, step / all);
  });
  add(steps.length - 1, 1);
  if (before === 1) beyond(dense, 1, 0);
  if (after === 1) beyond(dense, count - 2, count - 1);
  return dense;
}

/** How far beyond a rounded end a ribbon is followed, and beyond its edges, pixels: its outline may run through those. */
const BEYOND = 1.5;

/** Goes on beyond a rounded end, where squares of heights are negative. */
function beyond(dense: DenseRibbon, end: number, to: number): void {
  const away = to - end;
  const inner = end - away;
  const step = Math.hypot(dense.x[end]! - dense.x[inner]!, dense.y[end]! - dense.y[inner]!) || 1;
  dense.x[to] = dense.x[end]! + away * BEYOND * dense.tx[end]!;
  dense.y[to] = dense.y[end]! + away * BEYOND * dense.ty[end]!;
  dense.up[to] = -(dense.up[inner]! * BEYOND) / step;
  dense.down[to] = -(dense.down[inner]! * BEYOND) / step;
  for (const name of ['tx', 'ty', 'alongMm', 'deepMm', 'flat', 'liftMm', 'twist', 'thin'] as const) {
    dense[name][to] = dense[name][end]!;
  }
}

/** Pixels that a dense ribbon can reach. */
export function boxOf({ count, x, y, up, down }: DenseRibbon, { columns, rows }: FieldFrame): Box {
  let [left, right, top, bottom] = [columns, 0, rows, 0];
  for (let at = 0; at < count; at++) {
    const reach = Math.sqrt(Math.max(up[at]!, down[at]!, 0)) + BEYOND + 1;
    left = Math.min(left, x[at]! - reach);
    right = Math.max(right, x[at]! + reach);
    top = Math.min(top, y[at]! - reach);
    bottom = Math.max(bottom, y[at]! + reach);
  }
  return {
    left: Math.max(0, Math.floor(left)),
    right: Math.min(columns, Math.ceil(right)),
    top: Math.max(0, Math.floor(top)),
    bottom: Math.min(rows, Math.ceil(bottom)),
  };
}

/** Places in the tables of sections. */
const SECTION_STEPS = 256;

/** 1 − u^(p/2) for u, the square of a place across, from 0 to 1: what a section's square is. */
export function sectionTable(exponent: number): Float64Array {
  return Float64Array.from({ length: SECTION_STEPS + 2 }, (_, index) =>
    Math.max(0, 1 - (index / SECTION_STEPS) ** (exponent / 2)),
  );
}

/** How far the middle of a ring lies further along than its ends, in half heights: it goes round a body. */
const RING_BEND = 0.22;

function ringTable(rings: readonly Ring[], endMm: number): Float64Array | undefined {
  if (rings.length === 0) return undefined;
  return Float64Array.from({ length: Math.ceil(endMm * RING_STEPS) + 3 }, (_, index) =>
    ringsAt(rings, index / RING_STEPS),
  );
}

/**
 * Paints a ribbon into a layer whose pixels are empty.
 *
 * Between two places of a ribbon a pixel lies as far along as its distances from the two lines across them tell. Where a ribbon lies over itself, the thicker counts.
 */
export function paintRibbon(
  dense: DenseRibbon,
  {
    rings,
    round,
    flat: flatSection,
  }: { readonly rings: readonly Ring[]; readonly round: Float64Array; readonly flat: Float64Array },
  frame: FieldFrame,
  layer: Layer,
): void {
  const { columns, rows, pixelsPerMm } = frame;
  const { x, y, tx, ty, up, down } = dense;
  const ring = ringTable(rings, dense.alongMm[dense.count - 1]!);
  const cornersX = new Float64Array(4);
  const cornersY = new Float64Array(4);
  for (let i = 0; i + 1 < dense.count; i++) {
    const j = i + 1;
    const x0 = x[i]!;
    const y0 = y[i]!;
    const x1 = x[j]!;
    const y1 = y[j]!;
    const tx0 = tx[i]!;
    const ty0 = ty[i]!;
    const tx1 = tx[j]!;
    const ty1 = ty[j]!;
    const reachUp = Math.sqrt(Math.max(up[i]!, up[j]!, 0)) + BEYOND;
    const reachDown = Math.sqrt(Math.max(down[i]!, down[j]!, 0)) + BEYOND;
    // To the left of (tx, ty) lies (ty, -tx).
    cornersX[0] = x0 + ty0 * reachUp;
    cornersY[0] = y0 - tx0 * reachUp;
    cornersX[1] = x1 + ty1 * reachUp;
    cornersY[1] = y1 - tx1 * reachUp;
    cornersX[2] = x1 - ty1 * reachDown;
    cornersY[2] = y1 + tx1 * reachDown;
    cornersX[3] = x0 - ty0 * reachDown;
    cornersY[3] = y0 + tx0 * reachDown;
    const step = Math.hypot(x1 - x0, y1 - y0) || 1;
    const upSlope = (up[j]! - up[i]!) / step;
    const downSlope = (down[j]! - down[i]!) / step;
    const top = Math.max(0, Math.ceil(Math.min(cornersY[0], cornersY[1], cornersY[2], cornersY[3]) - 0.5));
    const bottom = Math.min(rows - 1, Math.floor(Math.max(cornersY[0], cornersY[1], cornersY[2], cornersY[3]) - 0.5));
    for (let row = top; row <= bottom; row++) {
      const py = row + 0.5;
      let from = Number.POSITIVE_INFINITY;
      let to = Number.NEGATIVE_INFINITY;
      for (let corner = 0; corner < 4; corner++) {
        const next = (corner + 1) & 3;
        const ya = cornersY[corner]!;
        const yb = cornersY[next]!;
        if ((ya <= py && yb >= py) || (yb <= py && ya >= py)) {
          const xa = cornersX[corner]!;
          const xb = cornersX[next]!;
          if (ya === yb) {
            from = Math.min(from, xa, xb);
            to = Math.max(to, xa, xb);
          } else {
            const cut = xa + ((xb - xa) * (py - ya)) / (yb - ya);
            if (cut < from) from = cut;
            if (cut > to) to = cut;
          }
        }
      }
      const first = Math.max(0, Math.ceil(from - 0.501));
      const last = Math.min(columns - 1, Math.floor(to - 0.499));
      for (let column = first; column <= last; column++) {
        const px = column + 0.5;
        const fromFirst = (px - x0) * tx0 + (py - y0) * ty0;
        const fromSecond = (px - x1) * tx1 + (py - y1) * ty1;
        if (fromFirst < -1e-9 || fromSecond > 1e-9 || fromFirst === fromSecond) continue;
        const t = fromFirst / (fromFirst - fromSecond);
        const cx = px - x0 - (x1 - x0) * t;
        const cy = py - y0 - (y1 - y0) * t;
        // Positive upwards.
        const offset = cx * (ty0 + (ty1 - ty0) * t) - cy * (tx0 + (tx1 - tx0) * t);
        const away = offset < 0 ? -offset : offset;
        const side = offset < 0 ? down : up;
        const sideSlope = offset < 0 ? downSlope : upSlope;
        const square = side[i]! + (side[j]! - side[i]!) * t;
        const half = square > 0 ? Math.sqrt(square) : 0;
        // Distance from the outline, by the slope of the square there.
        const inside =
          (square - away * away) / Math.sqrt(sideSlope * sideSlope + (half + away) * (half + away) + 1e-12);
        if (inside <= -0.5) continue;
        const cover = inside >= 0.5 ? 1 : inside + 0.5;
        // A pixel on the outline is as thick as the middle of what is bait of it.
        const place = half > 0 ? Math.max(0, Math.min(away, half - cover / 2)) / half : 0;
        const u = place * place * SECTION_STEPS;
        const cell = u | 0;
        const within = u - cell;
        const flat = dense.flat[i]! + (dense.flat[j]! - dense.flat[i]!) * t;
        let section = 0;
        if (flat < 1) section = (1 - flat) * Math.sqrt(round[cell]! + (round[cell + 1]! - round[cell]!) * within);
        if (flat > 0) {
          section += flat * Math.sqrt(flatSection[cell]! + (flatSection[cell + 1]! - flatSection[cell]!) * within);
        }
        let thickness = section * (dense.deepMm[i]! + (dense.deepMm[j]! - dense.deepMm[i]!) * t);
        const alongMm = dense.alongMm[i]! + (dense.alongMm[j]! - dense.alongMm[i]!) * t;
        const halfMm = half / pixelsPerMm;
        if (ring !== undefined) {
          const bent = (alongMm - RING_BEND * halfMm * (1 - place * place)) * RING_STEPS;
          if (bent > 0) {
            const node = bent | 0;
            thickness *= 1 - (ring[node]! + (ring[node + 1]! - ring[node]!) * (bent - node));
          }
        }
        const pixel = row * columns + column;
        if (layer.cover[pixel]! > 0 && layer.thicknessMm[pixel]! >= thickness) {
          if (cover > layer.cover[pixel]!) layer.cover[pixel] = cover;
          continue;
        }
        const across = half > 0 ? Math.min(1, away / half) : 1;
        if (cover > layer.cover[pixel]!) layer.cover[pixel] = cover;
        layer.thicknessMm[pixel] = thickness;
        layer.alongMm[pixel] = alongMm;
        layer.across[pixel] = offset > 0 ? -across : across;
        layer.halfMm[pixel] = halfMm;
        layer.part[pixel] = dense.thin[i]!;
        layer.liftMm[pixel] =
          dense.liftMm[i]! +
          (dense.liftMm[j]! - dense.liftMm[i]!) * t -
          ((dense.twist[i]! + (dense.twist[j]! - dense.twist[i]!) * t) * offset) / pixelsPerMm;
      }
    }
  }
}
