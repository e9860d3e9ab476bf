/**
 * Where a bait lies on a card.
 *
 * @packageDocumentation
 */
import type { MeasuringCard, Place } from '../../measuring-card/measuring-card.ts';
import type { LinearRgb } from '../pixels.ts';
import { contrastOf, type Half } from './background.ts';
import { type Crossing, crossingsOf } from './columns.ts';
import { type Piece, placeIn, rectify, type Shown } from './rectify.ts';
import { robustLine } from './robust-line.ts';

/** A straight bait, mm of the card. */
export interface BaitPlace {
  /** Its ends, the left one first. */
  readonly from: Place;
  readonly to: Place;
  /** The middle one along the bait, and what is hardly anywhere less on each half: tails are narrower. */
  readonly halfWidth: number;
  readonly narrow: Readonly<Record<Half, number>>;
  /** Its line was touched by hand, along its belly: it is sound up to its ends. */
  readonly touched: boolean;
}

/** A bait is looked for at so many pixels a mm: nothing of it is finer than 2 mm. */
const PER_MM = 4;

/** The window's edge, where its frame and the paper beside may come in, mm. */
const WINDOW_EDGE_MM = 0.6;

/** A crossing further from the bait's line than this, mm, or this part of its half width, is of something else. */
const OFF_LINE_MM = 1.5;
const OFF_LINE = 0.3;

/** A half shows a bait if this much of it is seen, mm; and holes up to this are part of it. */
const LEAST_SEEN_MM = 3;
const HOLE_MM = 6;

/** A bait that ends this far from the seam, mm, does not lie across it. */
const SHORT_OF_SEAM_MM = 4;

/** A half on which a bait does not show is taken to hold as much of it as the other, up to this, mm. */
const UNSEEN_MM = 15;

/** Part of what lies on a half, from the seam, whose width counts for its zone: its end is left out there too. */
const INNER = 0.75;

/** Around a touched line a bait is looked for this far, mm; where none shows, it is taken to be this wide to either side. */
const BESIDE_LINE_MM = 14;
const UNSEEN_HALF_WIDTH_MM = 2.5;

/** What is black on the card, as a part of the light of paper, and the card. */
export interface OnCard {
  readonly card: MeasuringCard;
  readonly black: LinearRgb;
}

/** The bait in the window of a card; undefined where none is seen. */
export function findBait(shown: Shown, { card, black }: OnCard): BaitPlace | undefined {
  const { window, seamX } = card;
  const piece: Piece = {
    corner: { x: window.x + WINDOW_EDGE_MM, y: window.y + WINDOW_EDGE_MM },
    turn: 0,
    length: window.width - 2 * WINDOW_EDGE_MM,
    width: window.height - 2 * WINDOW_EDGE_MM,
  };
  const crossings = crossingsOf(contrastOf(rectify(shown, piece, PER_MM), seamX, black), seamX);
  const line = robustLine(crossings);
  if (line === undefined) return undefined;
  const onLine = crossings.filter((crossing) => {
    const off = Math.abs((crossing.top + crossing.bottom) / 2 - line.at(crossing.along));
    return off < Math.max(OFF_LINE_MM, (OFF_LINE * (crossing.bottom - crossing.top)) / 2);
  });
  const seam = seamX - piece.corner.x;
  const reach = reachOf(onLine, seam, piece.length);
  const trusted = trustedOf(onLine);
  const halfWidth = middle(trusted.map(({ top, bottom }) => (bottom - top) / 2));
  if (reach === undefined || halfWidth === undefined) return undefined;
  const end = (along: number): Place => placeIn(piece, along, line.at(along));
  const narrow = {
    white:
      narrowOf(trusted.filter(({ along }) => along < seam && seam - along < INNER * (seam - reach[0]))) ?? halfWidth,
    black:
      narrowOf(trusted.filter(({ along }) => along > seam && along - seam < INNER * (reach[1] - seam))) ?? halfWidth,
  };
  return { from: end(reach[0]), to: end(reach[1]), halfWidth, narrow, touched: false };
}

/** The bait along a line that was touched on it, mm of the card. */
export function baitAlong(shown: Shown, { card, black }: OnCard, line: readonly [Place, Place]): BaitPlace {
  const [from, to] = line[0].x <= line[1].x ? line : [line[1], line[0]];
  const turn = Math.atan2(to.y - from.y, to.x - from.x);
  const length = Math.max(Math.hypot(to.x - from.x, to.y - from.y), 1 / PER_MM);
  const corner = { x: from.x + BESIDE_LINE_MM * Math.sin(turn), y: from.y - BESIDE_LINE_MM * Math.cos(turn) };
  const piece: Piece = { corner, turn, length, width: 2 * BESIDE_LINE_MM };
  const contrast = contrastOf(rectify(shown, piece, PER_MM), card.seamX, black);
  // What is near the line on its narrower side, since a line may be off the middle.
  const sides = crossingsOf(contrast, card.seamX, BESIDE_LINE_MM).map(({ top, bottom }) =>
    Math.min(BESIDE_LINE_MM - top, bottom - BESIDE_LINE_MM),
  );
  const halfWidth = Math.max(1, middle(sides) ?? UNSEEN_HALF_WIDTH_MM);
  return { from, to, halfWidth, narrow: { white: halfWidth, black: halfWidth }, touched: true };
}

/** Corners of what a bait covers, once around, mm of the card. */
export function outlineOf({ from, to, halfWidth }: BaitPlace): readonly Place[] {
  const turn = Math.atan2(to.y - from.y, to.x - from.x);
  const [x, y] = [halfWidth * Math.sin(turn), halfWidth * Math.cos(turn)];
  return [
    { x: from.x + x, y: from.y - y },
    { x: to.x + x, y: to.y - y },
    { x: to.x - x, y: to.y + y },
    { x: from.x - x, y: from.y + y },
  ];
}

/** From where to where along the patch the bait goes; undefined where neither half shows it. */
function reachOf(onLine: readonly Crossing[], seam: number, length: number): readonly [number, number] | undefined {
  const left = reachFrom(onLine.filter(({ half }) => half === 'white').map(({ along }) => seam - along));
  const right = reachFrom(onLine.filter(({ half }) => half === 'black').map(({ along }) => along - seam));
  if (left && right) return [seam - left.far, seam + right.far];
  const seen = left ?? right;
  if (seen === undefined) return undefined;
  const other = seen.near > SHORT_OF_SEAM_MM ? -seen.near : Math.min(UNSEEN_MM, seen.far);
  return left ? [seam - left.far, Math.min(length, seam + other)] : [Math.max(0, seam - other), seam + seen.far];
}

/** The longest stretch of crossings on one half, by their distances from the seam. */
function reachFrom(distances: readonly number[]): { readonly near: number; readonly far: number } | undefined {
  const sorted = [...distances].sort((one, other) => one - other);
  let best = { near: 0, far: 0 };
  let near = sorted[0];
  for (const [index, far] of sorted.entries()) {
    if (index > 0 && far - sorted[index - 1]! > HOLE_MM) near = far;
    if (far - near! > best.far - best.near) best = { near: near!, far };
  }
  return best.far - best.near >= LEAST_SEEN_MM ? best : undefined;
}

/** Crossings on the half that shows the bait better, or on both if they show it alike. */
function trustedOf(onLine: readonly Crossing[]): readonly Crossing[] {
  const contrastOn = (side: Half): number =>
    middle(onLine.filter(({ half }) => half === side).map(({ contrast }) => contrast)) ?? 0;
  const on = { white: contrastOn('white'), black: contrastOn('black') };
  return onLine.filter(({ half }) => 2 * on[half] >= Math.max(on.white, on.black));
}

/** The half width that a sixth of the crossings have less than. */
function narrowOf(crossings: readonly Crossing[]): number | undefined {
  return quantile(
    crossings.map(({ top, bottom }) => (bottom - top) / 2),
    1 / 6,
  );
}

const middle = (values: readonly number[]): number | undefined => quantile(values, 0.5);

function quantile(values: readonly number[], part: number): number | undefined {
  return [...values].sort((one, other) => one - other)[Math.floor(values.length * part)];
}
