/**
 * Where the cups of a bait lie in a drawing of its flank: see `src/patterns/cut.ts`.
 *
 * @packageDocumentation
 */
import { type CutRegion, cutAlong, evenly, regionsOf } from '../../patterns/cut.ts';
import { PATTERNS, type Pattern } from '../../patterns/patterns.ts';
import type { BaitShape } from '../../shapes/bait-shapes.ts';
import { band, type Point, type Ribbon } from '../../shapes/ribbon.ts';

/** Edges at the outline of a body are drawn beyond it, and cut off there. */
const BEYOND = 1.6;

/** Steps along a body at which edges that are not straight are drawn. */
const STEPS = 24;

/**
 * Outlines of what the cups after the first fill of a body, in the order in which one comes upon them; the first fills the rest.
 *
 * @param shares of the cups, 1 together
 * @param thinMm thickness of the thin parts, which a tail's share of the plastic depends on
 */
export function cupRegions(
  pattern: Pattern,
  shares: readonly number[],
  shape: Pick<BaitShape, 'body' | 'thin'>,
  thinMm: number,
): readonly { readonly cup: number; readonly path: string }[] {
  const before = plasticBefore(shape, thinMm);
  const end = before.at(-1)!;
  return regionsOf(cutAlong(PATTERNS[pattern].through, shares), evenly(STEPS))
    .filter(({ cup, edges }) => cup !== 0 && edges[0]!.at < end)
    .map((region) => ({ cup: region.cup, path: regionPath(shape.body, before, region) }));
}

/** Part of a bait's plastic that lies before each point of its body: that is round, and what is thin comes after it. */
function plasticBefore({ body, thin }: Pick<BaitShape, 'body' | 'thin'>, thinMm: number): readonly number[] {
  const round = running(body, (width) => (Math.PI / 4) * width * width);
  const flat = thin.map((part) => running(part, (width) => Math.min(width, thinMm) * width).at(-1)!);
  const all = flat.reduce((sum, volume) => sum + volume, round.at(-1)!);
  return round.map((volume) => volume / all);
}

/** Volume before each point of a ribbon, given the area of its cut at a width. */
function running({ middle, up, down }: Ribbon, area: (width: number) => number): readonly number[] {
  const cuts = middle.map((_, index) => area(up[index]! + down[index]!));
  let sum = 0;
  return middle.map(([x, y], index) => {
    const last = middle[index - 1];
    if (last !== undefined) sum += (Math.hypot(x - last[0], y - last[1]) * (cuts[index - 1]! + cuts[index]!)) / 2;
    return sum;
  });
}

function regionPath(body: Ribbon, before: readonly number[], { edges }: CutRegion): string {
  const [start, end] = [edges[0]!.at, edges.at(-1)!.at];
  const inner = before.filter((at) => at > start && at < end);
  const places = [...(start <= 0 ? [] : [start]), ...inner, ...(end >= before.at(-1)! ? [] : [end])];
  const piece = ribbonAt(body, before, places);
  const edge = (side: 'from' | 'to', outline: number): readonly number[] =>
    places.map((at) => {
      const part = between(
        at,
        edges.map((each) => each.at),
        edges.map((each) => each[side]),
      );
      return part === outline ? BEYOND * (2 * outline - 1) : 2 * part - 1;
    });
  return band(piece, edge('from', 0), edge('to', 1));
}

/** A ribbon at places of its own measure, which rises from point to point. */
function ribbonAt({ middle, up, down }: Ribbon, measure: readonly number[], places: readonly number[]): Ribbon {
  const at = (values: readonly number[]): readonly number[] => places.map((place) => between(place, measure, values));
  const [x, y] = [at(middle.map((point) => point[0])), at(middle.map((point) => point[1]))];
  return { middle: x.map((each, index): Point => [each, y[index]!]), up: at(up), down: at(down) };
}

/** A value at a place between those at which it is known, in a straight line. */
function between(place: number, places: readonly number[], values: readonly number[]): number {
  const found = places.findIndex((each) => each >= place);
  const after = found === -1 ? places.length - 1 : found;
  const [from, to] = [places[Math.max(0, after - 1)]!, places[after]!];
  const [low, high] = [values[Math.max(0, after - 1)]!, values[after]!];
  return to > from ? low + (high - low) * Math.min(1, (place - from) / (to - from)) : high;
}
