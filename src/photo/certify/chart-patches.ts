import type { Place } from '../../measuring-card/measuring-card.ts';
import { CHART_COLUMNS, CHART_ROWS, COLOUR_CHART } from '../../tables/colour-chart.ts';
import { spotOf } from '../photo-spot.ts';
import { type LinearRgb, luminanceOf, type Pixels } from '../pixels.ts';

/** Between places of the card, mm, and pixels of the photo. */
export interface CardPlaces {
  toPixel(place: Place): Place;
  toPlace(pixel: Place): Place;
}

/** A patch of the chart in a photo. */
export interface ChartPatch {
  /** Its middle, mm of the card that it lies beside. */
  readonly place: Place;
  /** Linear light. */
  readonly light: LinearRgb;
}

/** Middles of four patches. */
export type Corners = readonly [Place, Place, Place, Place];

/** Part of the way to the next patch that is read around a middle: a patch is some 0.85 of it, and nobody touches its middle exactly. */
const READ = 0.2;

/** Radius, pixels, for finding out which corner is which. */
const GLANCE = 2;

/**
 * The patches of a chart that lies flat beside the card, in the order of `COLOUR_CHART`.
 *
 * @param corners middles of its four corner patches, pixels, in any order: which is which its light and dark tell
 *
 * Throws: RangeError if one of them lies outside the photo.
 */
export function chartPatches(pixels: Pixels, card: CardPlaces, corners: Corners): readonly ChartPatch[] {
  const places = corners.map((corner) => card.toPlace(corner)) as unknown as Corners;
  const [first, ...others] = permutations(places).map((order) => {
    const middles = middlesOf(order);
    const lights = middles.map((place) => lightAt(pixels, card.toPixel(place), GLANCE));
    return { middles, likeness: likenessOf(lights) };
  });
  const best = others.reduce((most, each) => (each.likeness > most.likeness ? each : most), first!);
  return best.middles.map((place, index) => {
    const { x, y } = card.toPixel(place);
    const beside = card.toPixel(best.middles[index % CHART_COLUMNS === 0 ? index + 1 : index - 1]!);
    const radius = Math.max(GLANCE, READ * Math.hypot(beside.x - x, beside.y - y));
    return { place, light: lightAt(pixels, { x, y }, radius) };
  });
}

function lightAt(pixels: Pixels, { x, y }: Place, radius: number): LinearRgb {
  return spotOf(pixels, x, y, radius);
}

/** Middles of all patches: the chart is flat, so they lie evenly between its corners (left top, right top, right bottom, left bottom). */
function middlesOf([leftTop, rightTop, rightBottom, leftBottom]: Corners): readonly Place[] {
  const between = (from: Place, to: Place, part: number): Place => ({
    x: from.x + part * (to.x - from.x),
    y: from.y + part * (to.y - from.y),
  });
  return COLOUR_CHART.map((_, index) => {
    const across = (index % CHART_COLUMNS) / (CHART_COLUMNS - 1);
    const down = Math.floor(index / CHART_COLUMNS) / (CHART_ROWS - 1);
    return between(between(leftTop, rightTop, across), between(leftBottom, rightBottom, across), down);
  });
}

/** How well lights agree with how light the patches are published to be: the correlation of both. */
function likenessOf(lights: readonly LinearRgb[]): number {
  const seen = lights.map((light) => Math.cbrt(Math.max(0, luminanceOf(light))));
  const published = COLOUR_CHART.map(([L]) => L);
  const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
  const [ofSeen, ofPublished] = [mean(seen), mean(published)];
  const product = (one: readonly number[], its: number, other: readonly number[], itsOwn: number): number =>
    one.reduce((sum, value, i) => sum + (value - its) * (other[i]! - itsOwn), 0);
  const spread = product(seen, ofSeen, seen, ofSeen) * product(published, ofPublished, published, ofPublished);
  return spread > 0 ? product(seen, ofSeen, published, ofPublished) / Math.sqrt(spread) : -1;
}

function permutations<T>([first, second, third, fourth]: readonly [T, T, T, T]): (readonly [T, T, T, T])[] {
  const all = [first, second, third, fourth];
  return all.flatMap((a, i) =>
    all.flatMap((b, j) =>
      all.flatMap((c, k) => {
        if (i === j || i === k || j === k) return [];
        return [[a, b, c, all[6 - i - j - k]!] as const];
      }),
    ),
  );
}
