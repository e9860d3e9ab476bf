/**
 * A plane seen by a camera: homographies, as nine numbers row by row.
 *
 * Source: R. Hartley & A. Zisserman, Multiple View Geometry in Computer Vision, 2nd edition (2004), section 4.1 (direct linear
 * transformation) and 4.4 (normalisation).
 *
 * @packageDocumentation
 */
import type { Place } from '../../measuring-card/measuring-card.ts';
import { solveLinear } from '../../optics/linear-system.ts';

export type Homography = readonly number[];

/** Where a place comes to lie. */
export function mapped(H: Homography, { x, y }: Place): Place {
  const w = H[6]! * x + H[7]! * y + H[8]!;
  return { x: (H[0]! * x + H[1]! * y + H[2]!) / w, y: (H[3]! * x + H[4]! * y + H[5]!) / w };
}

/** The way back. */
export function inverse(H: Homography): Homography {
  const [a, b, c, d, e, f, g, h, i] = H as [number, number, number, number, number, number, number, number, number];
  return [
    e * i - f * h,
    c * h - b * i,
    b * f - c * e,
    f * g - d * i,
    a * i - c * g,
    c * d - a * f,
    d * h - e * g,
    b * g - a * h,
    a * e - b * d,
  ];
}

/** First one and then the other. */
export function after(second: Homography, first: Homography): Homography {
  return [0, 3, 6].flatMap((row) =>
    [0, 1, 2].map((column) => [0, 1, 2].reduce((sum, k) => sum + second[row + k]! * first[3 * k + column]!, 0)),
  );
}

/**
 * The homography that brings places nearest to where they were seen, by least squares; undefined where they don't fix one, as when all
 * lie on a line.
 *
 * Throws: RangeError if there are less than four pairs.
 */
export function homographyOf(pairs: readonly (readonly [place: Place, seen: Place])[]): Homography | undefined {
  if (pairs.length < 4) throw new RangeError(`A homography was given ${pairs.length} pairs; give four`);
  const from = normalisation(pairs.map(([place]) => place));
  const to = normalisation(pairs.map(([, seen]) => seen));
  const A = new Float64Array(64);
  const b = new Float64Array(8);
  for (const [place, seen] of pairs) {
    const { x, y } = mapped(from, place);
    const { x: u, y: v } = mapped(to, seen);
    addRow(A, b, [x, y, 1, 0, 0, 0, -u * x, -u * y], u);
    addRow(A, b, [0, 0, 0, x, y, 1, -v * x, -v * y], v);
  }
  if (!solveLinear(A, b) || b.some((value) => !Number.isFinite(value))) return undefined;
  return after(inverse(to), after([...b, 1], from));
}

function addRow(A: Float64Array, b: Float64Array, row: readonly number[], value: number): void {
  row.forEach((one, i) => {
    b[i]! += one * value;
    row.forEach((other, j) => {
      A[8 * i + j]! += one * other;
    });
  });
}

/** Brings places around 0, about 1 away from it. */
function normalisation(places: readonly Place[]): Homography {
  const mean = (of: (place: Place) => number): number =>
    places.reduce((sum, place) => sum + of(place), 0) / places.length;
  const x = mean((place) => place.x);
  const y = mean((place) => place.y);
  const scale = 1 / (mean((place) => Math.hypot(place.x - x, place.y - y)) || 1);
  return [scale, 0, -x * scale, 0, scale, -y * scale, 0, 0, 1];
}
