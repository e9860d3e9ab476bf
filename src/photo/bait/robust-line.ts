/**
 * The straight middle line of what crosses the columns of a patch.
 *
 * @packageDocumentation
 */
import type { Crossing } from './columns.ts';

/** y across a patch by how far along it, mm. */
export interface Line {
  readonly at: (along: number) => number;
}

/** Steeper than this, a bait does not lie along the window. */
const STEEPEST = 0.5;

/** Crossings that are further than this from the line, mm, have no weight; J. W. Tukey's weights, from memory. */
const REACH_MM = 4;
const ROUNDS = 12;

/** A line needs this many columns. */
const LEAST_COLUMNS = 8;

/**
 * The line that most of the contrast lies around; undefined where there is hardly any.
 *
 * A column in which the bait reaches the patch's edge does not tell its middle, and only counts where there is nothing else.
 */
export function robustLine(crossings: readonly Crossing[]): Line | undefined {
  const whole = crossings.filter(({ touches }) => !touches);
  const used = whole.length >= LEAST_COLUMNS ? whole : crossings;
  if (used.length < LEAST_COLUMNS) return undefined;
  const points = used.map(({ along, top, bottom, contrast }) => ({
    x: along,
    y: (top + bottom) / 2,
    weight: contrast,
  }));
  let line = { offset: weightedMedian(points), slope: 0 };
  for (let round = 0; round < ROUNDS; round++) {
    // Wide at first: a bait that lies askew is far from its middle at both ends.
    const reach = REACH_MM * (1 + Math.max(0, 2 - round / 2));
    const weighed = points.map(({ x, y, weight }) => {
      const off = (y - line.offset - line.slope * x) / reach;
      return { x, y, weight: Math.abs(off) < 1 ? weight * (1 - off * off) ** 2 : 0 };
    });
    line = leastSquares(weighed) ?? line;
  }
  return { at: (along) => line.offset + line.slope * along };
}

interface Point {
  readonly x: number;
  readonly y: number;
  readonly weight: number;
}

function leastSquares(points: readonly Point[]): { offset: number; slope: number } | undefined {
  let [w, wx, wy] = [0, 0, 0];
  for (const { x, y, weight } of points) {
    w += weight;
    wx += weight * x;
    wy += weight * y;
  }
  if (w === 0) return undefined;
  const [meanX, meanY] = [wx / w, wy / w];
  let [xx, xy] = [0, 0];
  for (const { x, y, weight } of points) {
    xx += weight * (x - meanX) ** 2;
    xy += weight * (x - meanX) * (y - meanY);
  }
  const slope = xx > 0 ? Math.max(-STEEPEST, Math.min(STEEPEST, xy / xx)) : 0;
  return { offset: meanY - slope * meanX, slope };
}

function weightedMedian(points: readonly Point[]): number {
  const sorted = [...points].sort((one, other) => one.y - other.y);
  const half = sorted.reduce((sum, { weight }) => sum + weight, 0) / 2;
  let sum = 0;
  for (const { y, weight } of sorted) {
    sum += weight;
    if (sum >= half) return y;
  }
  return sorted.at(-1)!.y;
}
