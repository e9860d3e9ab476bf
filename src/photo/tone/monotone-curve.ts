/** A point of a curve, of which y rises with x. */
export interface Knot {
  readonly x: number;
  readonly y: number;
}

/** How much nearer two knots may not lie along x, and how flat and how steep it may be between two of them. */
export interface CurveBounds {
  readonly apart: number;
  readonly flattest: number;
  readonly steepest: number;
  /** Slope below the lowest and above the highest knot. */
  readonly below: number;
  readonly above: number;
}

/**
 * A smooth curve that rises throughout and passes through its knots: cubic between two of them, straight beyond them. A knot that the
 * bounds do not allow is passed by as near as they do, seen from the highest one.
 *
 * Throws: RangeError if there are less than two knots.
 * Source: F. N. Fritsch & J. Butland, SIAM J. Sci. Stat. Comput. 5:300 (1984): slopes at knots as weighted harmonic means.
 */
export function monotoneCurve(knots: readonly Knot[], bounds: CurveBounds): (x: number) => number {
  const at = withinBounds(knots, bounds);
  const last = at.length - 1;
  if (last < 1) throw new RangeError(`A curve was given ${knots.length} knots; give two that lie apart`);
  const slopes = slopesAt(at);
  return (x) => {
    const lowest = at[0]!;
    const highest = at[last]!;
    if (x <= lowest.x) return lowest.y + bounds.below * (x - lowest.x);
    if (x >= highest.x) return highest.y + bounds.above * (x - highest.x);
    let piece = 0;
    while (at[piece + 1]!.x < x) piece += 1;
    return cubic(x, at[piece]!, at[piece + 1]!, slopes[piece]!, slopes[piece + 1]!);
  };
}

/** Knots from the lowest to the highest, moved to where the bounds allow them. */
function withinBounds(knots: readonly Knot[], { apart, flattest, steepest }: CurveBounds): readonly Knot[] {
  const downward = [...knots].sort((one, other) => other.y - one.y);
  const kept: Knot[] = downward.slice(0, 1);
  for (const { x, y } of downward.slice(1)) {
    const above = kept[0]!;
    const step = above.x - x;
    if (step < apart) continue;
    const slope = Math.min(steepest, Math.max(flattest, (above.y - y) / step));
    kept.unshift({ x, y: above.y - slope * step });
  }
  return kept;
}

function slopesAt(at: readonly Knot[]): readonly number[] {
  const last = at.length - 1;
  const widths = at.slice(1).map((knot, i) => knot.x - at[i]!.x);
  const secants = at.slice(1).map((knot, i) => (knot.y - at[i]!.y) / widths[i]!);
  return at.map((_, i) => {
    if (i === 0) return secants[0]!;
    if (i === last) return secants[last - 1]!;
    const before = widths[i]! * 2 + widths[i - 1]!;
    const after = widths[i]! + widths[i - 1]! * 2;
    return (before + after) / (before / secants[i - 1]! + after / secants[i]!);
  });
}

/** Hermite's cubic between two knots with their slopes. */
function cubic(x: number, from: Knot, to: Knot, slopeFrom: number, slopeTo: number): number {
  const width = to.x - from.x;
  const t = (x - from.x) / width;
  const rest = 1 - t;
  return (
    from.y * (1 + 2 * t) * rest * rest +
    width * slopeFrom * t * rest * rest +
    to.y * t * t * (3 - 2 * t) -
    width * slopeTo * t * t * rest
  );
}
