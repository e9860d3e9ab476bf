/**
 * Where a colour chart lies beside a card: looked for in the plane of the card, where it is a grid of squares of which only the size, the
 * turn and the place are unknown.
 *
 * @packageDocumentation
 */
import type { Place } from '../../measuring-card/measuring-card.ts';
import { linearFromLab } from '../../optics/display.ts';
import { labByDaylight } from '../../optics/stated-colour.ts';
import { WHITE_BACKING } from '../../tables/backings.ts';
import { CHART_COLUMNS, CHART_ROWS, COLOUR_CHART, FIRST_GREY } from '../../tables/colour-chart.ts';
import type { Pixels } from '../pixels.ts';
import type { Corners } from './chart-patches.ts';
import { type CardBeside, PlanePicture, rootsOf } from './plane-picture.ts';

/** From patch to patch, mm, of the smallest and the largest chart that is looked for, and how much larger the next one tried is. */
const [SMALLEST, LARGEST, LARGER] = [8, 50, 1.09];

/** Turns that are tried, and steps from place to place, in parts of the way from patch to patch: no patch is missed by half of itself. */
const TURNS = 72;
const STEP = 0.3;

/** From the chart's white to its black each grey is darker than the one before, or hardly lighter, and all together by so much: in cube roots of light. */
const HARDLY_LIGHTER = 0.02;
const LEAST_FALL = 0.3;

/** Part of what its patches differ by that a chart leaves unexplained at most: two real ones left 0.05 and 0.07, drawn ones less, and what was none 0.8. */
const NO_CHART = 0.25;

/** How many places are looked at more closely. */
const CLOSER = 24;

/** Where in a patch, in parts of the way to the next, it is looked at: only with its middle found all of these have its colour. */
const IN_PATCH = [
  [0, 0],
  [0.34, 0.34],
  [-0.34, 0.34],
  [0.34, -0.34],
  [-0.34, -0.34],
] as const;

const MIDDLE_ONLY = IN_PATCH.slice(0, 1);

/** First and last steps by which corners are moved, in parts of the way from patch to patch. */
const [FIRST_MOVE, LAST_MOVE] = [0.25, 0.015];

/** A chart that may be one: which part of what its patches differ by the published colours leave unexplained, 0..1. */
interface Likely {
  readonly off: number;
  readonly corners: Corners;
}

/** The middles of the corner patches of a 24-patch chart, pixels of the photo; undefined where there is none that is whole. */
export function findChart(pixels: Pixels, card: CardBeside): Corners | undefined {
  const picture = new PlanePicture(pixels, card);
  const [best] = likelyPlaces(picture)
    .map((corners) => movedCloser(picture, corners))
    .sort((one, other) => one.off - other.off);
  if (best === undefined || best.off > NO_CHART) return undefined;
  const corners = best.corners.map((corner) => card.toPixel(corner));
  const { width, height } = pixels;
  const isWhole = corners.every(({ x, y }) => x >= 0 && y >= 0 && x < width && y < height);
  return isWhole ? (corners as unknown as Corners) : undefined;
}

/** The patches' colours as a picture has them: as parts of a usual paper. */
const COLOURS = COLOUR_CHART.map(([L, a, b]) => {
  const white = { r: WHITE_BACKING, g: WHITE_BACKING, b: WHITE_BACKING };
  return rootsOf(linearFromLab(labByDaylight({ lab: { L, a, b }, light: 'D50' })), white);
});

/** Middle of a patch from the chart's, in parts of the way from patch to patch. */
const MIDDLES = COLOUR_CHART.map((_, index) => ({
  across: (index % CHART_COLUMNS) - (CHART_COLUMNS - 1) / 2,
  down: Math.floor(index / CHART_COLUMNS) - (CHART_ROWS - 1) / 2,
}));

const GREY_MIDDLES = MIDDLES.slice(FIRST_GREY);

/** The channel that is most of a light. */
const GREEN = 1;

/** Corners of the grids that are least off, mm of the card. */
function likelyPlaces(picture: PlanePicture): readonly Corners[] {
  const likely: Likely[] = [];
  const { left, top, columns, rows, cellMm } = picture;
  for (let pitch = SMALLEST; pitch <= LARGEST; pitch *= LARGER)
    for (let turn = 0; turn < TURNS; turn++) {
      const angle = (2 * Math.PI * turn) / TURNS;
      const [stepX, stepY] = [pitch * Math.cos(angle), pitch * Math.sin(angle)];
      for (let y = top + pitch; y < top + rows * cellMm - pitch; y += STEP * pitch)
        for (let x = left + pitch; x < left + columns * cellMm - pitch; x += STEP * pitch) {
          const grid = { x, y, stepX, stepY };
          if (!greysFall(picture, grid)) continue;
          const corners = cornersOf(grid);
          const off = unexplained(picture, corners, MIDDLE_ONLY);
          if (off > (likely.length < CLOSER ? 1 : likely.at(-1)!.off)) continue;
          likely.push({ off, corners });
          likely.sort((one, other) => one.off - other.off);
          likely.length = Math.min(likely.length, CLOSER);
        }
    }
  return likely.map(({ corners }) => corners);
}

/** A grid: its middle, and the step along a row, mm. The rows follow square to it. */
interface Grid extends Place {
  readonly stepX: number;
  readonly stepY: number;
}

/** Whether the greys of a grid fall from white to black: nearly nothing but a chart has that, however a phone bends light and dark. */
function greysFall(picture: PlanePicture, { x, y, stepX, stepY }: Grid): boolean {
  let [first, before] = [0, Number.POSITIVE_INFINITY];
  for (const { across, down } of GREY_MIDDLES) {
    const index = picture.indexAt(x + across * stepX - down * stepY, y + across * stepY + down * stepX);
    if (index === undefined) return false;
    const light = picture.values[index + GREEN]!;
    if (light > before + HARDLY_LIGHTER) return false;
    if (before === Number.POSITIVE_INFINITY) first = light;
    before = light;
  }
  return first - before > LEAST_FALL;
}

function cornersOf({ x, y, stepX, stepY }: Grid): Corners {
  const [right, bottom] = [(CHART_COLUMNS - 1) / 2, (CHART_ROWS - 1) / 2];
  const corner = (across: number, down: number): Place => ({
    x: x + across * stepX - down * stepY,
    y: y + across * stepY + down * stepX,
  });
  return [corner(-right, -bottom), corner(right, -bottom), corner(right, bottom), corner(-right, bottom)];
}

/** Moves the corners, each by itself, as long as that brings the chart nearer. */
function movedCloser(picture: PlanePicture, start: Corners): Likely {
  const [first, second] = start;
  const pitch = Math.hypot(second.x - first.x, second.y - first.y) / (CHART_COLUMNS - 1);
  const corners = start.map((corner) => ({ ...corner }));
  let off = unexplained(picture, corners, IN_PATCH);
  for (let move = FIRST_MOVE * pitch; move > LAST_MOVE * pitch; ) {
    const before = off;
    for (const corner of corners)
      for (const axis of ['x', 'y'] as const)
        for (const by of [move, -move]) {
          corner[axis] += by;
          const moved = unexplained(picture, corners, IN_PATCH);
          if (moved < off) off = moved;
          else corner[axis] -= by;
        }
    if (off >= before) move /= 2;
  }
  return { off, corners: corners as unknown as Corners };
}

/**
 * Which part of what the patches between four corners differ by the published colours don't explain, 0..1, a line for each channel: a phone
 * may brighten all of them, and make one channel stronger. 1 where a patch is not in the photo.
 */
function unexplained(
  picture: PlanePicture,
  [leftTop, rightTop, rightBottom, leftBottom]: readonly Place[],
  within: readonly (readonly [number, number])[],
): number {
  const n = MIDDLES.length * within.length;
  const [ofSeen, ofPublished, seenSquared, publishedSquared, product] = [0, 1, 2, 3, 4].map(() => [
    0, 0, 0,
  ]) as unknown as Sums;
  for (const [patch, { across, down }] of MIDDLES.entries())
    for (const [aside, below] of within) {
      const u = (across + aside) / (CHART_COLUMNS - 1) + 0.5;
      const v = (down + below) / (CHART_ROWS - 1) + 0.5;
      const between = (axis: 'x' | 'y'): number =>
        (1 - v) * ((1 - u) * leftTop![axis] + u * rightTop![axis]) +
        v * ((1 - u) * leftBottom![axis] + u * rightBottom![axis]);
      const index = picture.indexAt(between('x'), between('y'));
      if (index === undefined) return 1;
      for (let channel = 0; channel < 3; channel++) {
        const [seen, published] = [picture.values[index + channel]!, COLOURS[patch]![channel]!];
        ofSeen[channel]! += seen;
        ofPublished[channel]! += published;
        seenSquared[channel]! += seen * seen;
        publishedSquared[channel]! += published * published;
        product[channel]! += seen * published;
      }
    }
  let explained = 0;
  for (let channel = 0; channel < 3; channel++) {
    const together = product[channel]! - (ofSeen[channel]! * ofPublished[channel]!) / n;
    const seen = seenSquared[channel]! - ofSeen[channel]! ** 2 / n;
    const published = publishedSquared[channel]! - ofPublished[channel]! ** 2 / n;
    if (together > 0 && seen > 0) explained += together ** 2 / (seen * published) / 3;
  }
  return 1 - explained;
}

type Sums = readonly [number[], number[], number[], number[], number[]];
