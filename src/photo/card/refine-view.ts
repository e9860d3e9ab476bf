import type { MeasuringCard, Place } from '../../measuring-card/measuring-card.ts';
import { solveLinear } from '../../optics/linear-system.ts';
import { medianOf } from '../median.ts';
import type { Pixels } from '../pixels.ts';
import { type CardView, toPixel } from './card-view.ts';
import { edgeCrossing } from './edge-crossing.ts';
import { type EdgePoint, edgePoints } from './edge-points.ts';
import { huberWeights } from './huber.ts';

/** A view that meets the card's edges, and how well. */
export interface RefinedView {
  readonly view: CardView;
  /** Root mean square of what the edges are off, mm. */
  readonly edgeRmsMm: number;
  /** Share of the points of edges within the photo that showed an edge. */
  readonly edgesUsed: number;
}

/** How far an edge is looked for in each round, mm. Marks alone are off by 0.1 to 0.4. */
const REACHES = [1, 0.5, 0.33];

/** Edges are found to about so much, mm; less than this is never too far off. */
const LEAST_OFF = 0.005;

/** How far phones that straighten their pictures still bend them: k1, one standard deviation. Common practice, no source. */
const USUAL_K1 = 0.05;

/** The numbers of H but its last, and k1: of each so much moves a point of the card by about a pixel. */
const STEPS = [0.01, 0.01, 1, 0.01, 0.01, 1, 1e-5, 1e-5, 1e-3];
const K1 = STEPS.length - 1;

/** Last comes how far ink has spread over all edges. */
const UNKNOWNS = STEPS.length + 1;

/** An edge that was met: how far off, mm, and how that changes with each unknown, in its steps. */
interface Met {
  readonly off: number;
  readonly slopes: readonly number[];
}

/**
 * Moves a view until the card's straight edges lie where they are seen: Gauss-Newton on the homography, the lens's bend and the spread of
 * ink, with Huber's weights. Undefined if too few edges are seen.
 */
export function refineView(pixels: Pixels, card: MeasuringCard, from: CardView): RefinedView | undefined {
  const points = edgePoints(card);
  let view: CardView = { ...from, H: from.H.map((value) => value / from.H[8]!) };
  for (const reach of REACHES) {
    const { met } = meet(pixels, view, points, reach);
    const move = met.length < 2 * UNKNOWNS ? undefined : leastSquares(view, met);
    if (move === undefined) return undefined;
    view = moved(view, move);
  }
  const { met, inside } = meet(pixels, view, points, REACHES.at(-1)!);
  if (met.length < 2 * UNKNOWNS) return undefined;
  const offs = met.map(({ off }) => off);
  const spread = medianOf(offs);
  const square = offs.reduce((sum, off) => sum + (off - spread) ** 2, 0) / offs.length;
  return { view, edgeRmsMm: Math.sqrt(square), edgesUsed: met.length / inside };
}

/** The edges that are met, and how many of the points lie in the photo. */
function meet(pixels: Pixels, view: CardView, points: readonly EdgePoint[], reach: number) {
  const crossings = points.map((point) => edgeCrossing(pixels, view, point, reach));
  const met = points.flatMap((point, i): Met[] => {
    const off = crossings[i];
    return typeof off === 'number' ? [{ off, slopes: slopesAt(view, point) }] : [];
  });
  return { met, inside: crossings.filter((crossing) => crossing !== 'outside').length };
}

/** How what an edge is off by changes when the view is moved. */
function slopesAt(view: CardView, { place, across }: EdgePoint): readonly number[] {
  const here = toPixel(view, place);
  const along = minus(toPixel(view, { x: place.x + across.y, y: place.y - across.x }), here);
  const inward = minus(toPixel(view, { x: place.x + across.x, y: place.y + across.y }), here);
  // Square to the edge as it is seen; a mm across the edge is so many pixels along it.
  const square = { x: -along.y, y: along.x };
  const perMm = dot(square, inward);
  const slopes = STEPS.map((_, unknown) => {
    const there = minus(toPixel(moved(view, unitMove(unknown)), place), here);
    return -dot(square, there) / (perMm * PROBE);
  });
  return [...slopes, -1];
}

/** Part of a step by which slopes are found. */
const PROBE = 0.1;

function unitMove(unknown: number): readonly number[] {
  return STEPS.map((_, i) => (i === unknown ? PROBE : 0));
}

/** The move, in steps, that leaves least of what the edges are off. */
function leastSquares(view: CardView, met: readonly Met[]): readonly number[] | undefined {
  const weights = huberWeights(
    met.map(({ off }) => off),
    LEAST_OFF,
  );
  const A = new Float64Array(UNKNOWNS * UNKNOWNS);
  const b = new Float64Array(UNKNOWNS);
  met.forEach(({ off, slopes }, i) => {
    for (let row = 0; row < UNKNOWNS; row++) {
      b[row]! -= weights[i]! * slopes[row]! * off;
      for (let column = 0; column < UNKNOWNS; column++)
        A[row * UNKNOWNS + column]! += weights[i]! * slopes[row]! * slopes[column]!;
    }
  });
  const ridge = ((LEAST_OFF * STEPS[K1]!) / USUAL_K1) ** 2;
  A[K1 * UNKNOWNS + K1]! += ridge;
  b[K1]! -= (ridge * view.k1) / STEPS[K1]!;
  return solveLinear(A, b) && b.every(Number.isFinite) ? [...b] : undefined;
}

function moved({ H, k1, width, height }: CardView, move: readonly number[]): CardView {
  const numbers = H.map((value, i) => (i < K1 ? value + move[i]! * STEPS[i]! : value));
  return { H: numbers, k1: k1 + move[K1]! * STEPS[K1]!, width, height };
}

function minus(one: Place, other: Place): Place {
  return { x: one.x - other.x, y: one.y - other.y };
}

function dot(one: Place, other: Place): number {
  return one.x * other.x + one.y * other.y;
}
