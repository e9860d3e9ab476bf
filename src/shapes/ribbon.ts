/**
 * Ribbons: shapes along a line that is their middle, with a width to either side. Baits are drawn of them.
 *
 * Units: mm, y downwards.
 *
 * @packageDocumentation
 */

export type Point = readonly [x: number, y: number];

/** A middle line, and at each of its points how far the shape reaches to the left (up) and to the right (down). */
export interface Ribbon {
  readonly middle: readonly Point[];
  readonly up: readonly number[];
  readonly down: readonly number[];
}

/** A number for a path: to a hundredth of a millimetre, finer than any printer's dot. */
export function round(mm: number): number {
  return Math.round(mm * 100) / 100;
}

const at = ([x, y]: Point): string => `${round(x)} ${round(y)}`;

/** Numbers of a path, with no more between them than must be. */
function written(numbers: readonly number[]): string {
  return numbers
    .map((number) => `${number}`.replace(/^(-?)0\./, '$1.'))
    .map((text, index) => (index > 0 && !text.startsWith('-') ? ` ${text}` : text))
    .join('');
}

/**
 * Path through points without corners: cubic curves whose tangent at each point is parallel to the line between its neighbours
 * (Catmull & Rom 1974).
 */
export function smoothPath(points: readonly Point[], closed: boolean): string {
  const count = points.length;
  const point = (index: number): Point =>
    points[closed ? (index + count) % count : Math.min(Math.max(index, 0), count - 1)]!;
  let path = `M${at(points[0]!)}`;
  for (let index = 0; index < (closed ? count : count - 1); index++) {
    const [before, from, to, after] = [point(index - 1), point(index), point(index + 1), point(index + 2)];
    const first: Point = [from[0] + (to[0] - before[0]) / 6, from[1] + (to[1] - before[1]) / 6];
    const second: Point = [to[0] - (after[0] - from[0]) / 6, to[1] - (after[1] - from[1]) / 6];
    // Relative to the point as it was written, so that roundings don't add up.
    const [x, y] = [round(from[0]), round(from[1])];
    path += `c${written([first, second, to].flatMap((each) => [round(round(each[0]) - x), round(round(each[1]) - y)]))}`;
  }
  return closed ? `${path}z` : path;
}

/** Unit vector to the left of the middle line at one of its points; left of a line that runs to the right is up. */
function leftOf(middle: readonly Point[], index: number): Point {
  const [from, to] = [middle[Math.max(index - 1, 0)]!, middle[Math.min(index + 1, middle.length - 1)]!];
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1;
  return [(to[1] - from[1]) / length, -(to[0] - from[0]) / length];
}

/**
 * A line that runs along a ribbon: −1 on its upper edge, 0 in its middle, 1 on its lower edge, further out beyond them.
 *
 * @param offsets one for all points, or one each
 */
export function alongside({ middle, up, down }: Ribbon, offsets: number | readonly number[]): readonly Point[] {
  return middle.map(([x, y], index): Point => {
    const [leftX, leftY] = leftOf(middle, index);
    const offset = typeof offsets === 'number' ? offsets : offsets[index]!;
    const reach = -offset * (offset < 0 ? up[index]! : down[index]!);
    return [x + leftX * reach, y + leftY * reach];
  });
}

/** Outline of a whole ribbon: round where it ends in a point of its middle line, with corners where it is cut off. */
export function outline(ribbon: Ribbon): string {
  const { middle, up, down } = ribbon;
  const pointed = (at: number): boolean => up[at] === 0 && down[at] === 0;
  const last = middle.length - 1;
  const upper = alongside(ribbon, -1);
  const lower = [...alongside(ribbon, 1)].reverse();
  // A point that both sides share is passed once.
  if (pointed(0) && pointed(last)) return smoothPath([...upper, ...lower.slice(1, -1)], true);
  if (pointed(0)) return `${smoothPath([...lower, ...upper.slice(1)], false)}z`;
  if (pointed(last)) return `${smoothPath([...upper, ...lower.slice(1)], false)}z`;
  return `${smoothPath(upper, false)}L${smoothPath(lower, false).slice(1)}z`;
}

/** A line across a ribbon at one of its parts, 0..1, as the ring of a worm. */
export function across(ribbon: Ribbon, part: number, reach = 0.96): string {
  const index = Math.min(ribbon.middle.length - 1, Math.round(part * (ribbon.middle.length - 1)));
  const [up, middle, down] = [-reach, 0, reach].map((offset) => alongside(ribbon, offset)[index]!) as [
    Point,
    Point,
    Point,
  ];
  // Bent towards the tail, as a ring is seen that goes round a body.
  const bend = Math.hypot(up[0] - down[0], up[1] - down[1]) * 0.12;
  return `M${at(up)}Q${at([middle[0] + bend, middle[1]])} ${at(down)}`;
}
