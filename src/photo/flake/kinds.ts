/**
 * Kinds of flake told apart by their colour.
 *
 * @packageDocumentation
 */
import type { Spot } from './spots.ts';

/** A flake's lightness hangs on how it lies, its hue does not: lightness counts for this much. */
const LIGHTNESS = 0.5;

/** Two kinds are further apart than this, OKLab, and than this many times what each spreads along the line between them. */
const LEAST_APART = 0.08;
const TIMES_SPREAD = 4;

/** A kind has so many flakes at least, and this part of the area of all. */
const LEAST_FLAKES = 4;
const LEAST_PART = 0.05;

/** Only flakes of so many pixels across tell their colour: smaller ones are mixed with the body. */
const LEAST_PIXELS = 12;

const ROUNDS = 12;

type Point = readonly [number, number, number];

/**
 * Spots by kind: split in two as long as both parts lie clearly apart.
 *
 * A single kind cut through its middle lies 2.6 (normal) to 3.5 (even) of its parts' spreads apart; flakes that blur into the body are
 * spread evenly between both.
 */
export function kindsOf(spots: readonly Spot[]): readonly (readonly Spot[])[] {
  const telling = spots.filter(({ pixels }) => pixels >= LEAST_PIXELS);
  const least = LEAST_PART * telling.reduce((sum, { areaMm2 }) => sum + areaMm2, 0);
  const groups = split(telling, least);
  if (groups.length < 2) return spots.length === 0 ? [] : [spots];
  const centres = groups.map(centreOf);
  const kinds: Spot[][] = groups.map(() => []);
  for (const spot of spots) {
    const distances = centres.map((centre) => apart(pointOf(spot), centre));
    kinds[distances.indexOf(Math.min(...distances))]!.push(spot);
  }
  return kinds;
}

function split(spots: readonly Spot[], least: number): readonly (readonly Spot[])[] {
  const [one, other] = twoOf(spots);
  const area = (part: readonly Spot[]): number => part.reduce((sum, { areaMm2 }) => sum + areaMm2, 0);
  if (Math.min(one.length, other.length) < LEAST_FLAKES || Math.min(area(one), area(other)) < least) return [spots];
  const [a, b] = [centreOf(one), centreOf(other)];
  const distance = apart(a, b);
  const spread = Math.sqrt((spreadAlong(one, a, b) + spreadAlong(other, a, b)) / 2);
  if (distance < Math.max(LEAST_APART, TIMES_SPREAD * spread)) return [spots];
  return [...split(one, least), ...split(other, least)];
}

/** Two parts with the nearest middle each (S. Lloyd, 1982), started from the spot furthest from the middle, and the one furthest from that. */
function twoOf(spots: readonly Spot[]): readonly [readonly Spot[], readonly Spot[]] {
  if (spots.length < 2 * LEAST_FLAKES) return [spots, []];
  const furthest = (from: Point): Point =>
    spots.map(pointOf).reduce((best, point) => (apart(point, from) > apart(best, from) ? point : best));
  let one = furthest(centreOf(spots));
  let other = furthest(one);
  let parts: readonly [readonly Spot[], readonly Spot[]] = [spots, []];
  for (let round = 0; round < ROUNDS; round++) {
    const nearOne = spots.filter((spot) => apart(pointOf(spot), one) <= apart(pointOf(spot), other));
    const nearOther = spots.filter((spot) => apart(pointOf(spot), one) > apart(pointOf(spot), other));
    parts = [nearOne, nearOther];
    if (nearOne.length === 0 || nearOther.length === 0) break;
    [one, other] = [centreOf(nearOne), centreOf(nearOther)];
  }
  return parts;
}

/** Mean square of how far a part's spots are from its middle, along the line from there to the other's. */
function spreadAlong(spots: readonly Spot[], a: Point, b: Point): number {
  const length = apart(a, b) || 1;
  const centre = centreOf(spots);
  const along = spots.map((spot) => {
    const point = pointOf(spot);
    return [0, 1, 2].reduce((sum, i) => sum + ((point[i]! - centre[i]!) * (b[i]! - a[i]!)) / length, 0);
  });
  return along.reduce((sum, each) => sum + each * each, 0) / along.length;
}

function pointOf({ core: [L, a, b] }: Spot): Point {
  return [LIGHTNESS * L, a, b];
}

function centreOf(spots: readonly Spot[]): Point {
  const sum = [0, 0, 0] as [number, number, number];
  for (const spot of spots)
    pointOf(spot).forEach((value, i) => {
      sum[i]! += value / spots.length;
    });
  return sum;
}

function apart(one: Point, other: Point): number {
  return Math.hypot(one[0] - other[0], one[1] - other[1], one[2] - other[2]);
}
