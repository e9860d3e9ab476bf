/**
 * Baits drawn in lines: the outline of a mold's bait in space, of its thin parts, its rings and gills.
 *
 * Units: mm; the nose is at x = 0, the middle of the body at y = 0.
 *
 * @packageDocumentation
 */
import { baitSolid } from './bait-solid.ts';
import { reachOf } from './reach.ts';
import { across, type Point, type Ribbon, round, smoothPath } from './ribbon.ts';
import type { ShapedMold } from './shaped-mold.ts';
import type { Eye, SolidRibbon, Station } from './solid.ts';

export interface BaitShape {
  readonly lengthMm: number;
  readonly body: Ribbon;
  readonly thin: readonly Ribbon[];
  /** Paths of rings and gills, drawn as fine lines. */
  readonly lines: readonly string[];
  /** How far the drawing reaches above and below the middle. */
  readonly reachMm: number;
}

/** Draws the bait of a mold. */
export function baitShape(mold: ShapedMold): BaitShape {
  const solid = baitSolid(mold);
  const { trunk, limbs, grooves, eyes, lengthMm } = solid;
  const stations = drawnStations(trunk);
  const first = trunk.stations[trunk.thinFrom];
  const thinFrom = first === undefined ? stations.length : stations.indexOf(first);
  const reach = reachOf(solid);
  return {
    lengthMm,
    body: ribbonOf(stations.slice(0, thinFrom + 1)),
    thin: [
      ...(thinFrom < stations.length - 1 ? [ribbonOf(stations.slice(thinFrom))] : []),
      ...limbs.map((limb) => ribbonOf(drawnStations(limb))),
    ],
    lines: [
      ...trunk.rings.map(({ alongMm }) => ringLine(trunk, alongMm)),
      ...grooves.map(({ points }) => smoothPath(points, false)),
      ...eyes.map(eyeLine),
    ],
    reachMm: Math.max(reach.up, reach.down),
  };
}

const ribbonOf = (stations: readonly Station[]): Ribbon => ({
  middle: stations.map(({ x, y }) => [x, y]),
  up: stations.map(({ up }) => up),
  down: stations.map(({ down }) => down),
});

/** Of the way to a rounded end: there the outline is half as far out as before it, as on a circle. */
const NEAR_END = 0.25;

/** The stations of a ribbon, with one more near each rounded end: curves through points alone would make that a spike. */
function drawnStations({ stations, roundStart, roundEnd }: SolidRibbon): readonly Station[] {
  const near = (end: Station, inner: Station): Station => ({
    ...between(end, inner, NEAR_END),
    up: inner.up * Math.sqrt(NEAR_END),
    down: inner.down * Math.sqrt(NEAR_END),
  });
  const [first, second] = [stations[0]!, stations[1]!];
  const [beforeLast, last] = [stations.at(-2)!, stations.at(-1)!];
  return [
    first,
    ...(roundStart ? [near(first, second)] : []),
    ...stations.slice(1, -1),
    ...(roundEnd ? [near(last, beforeLast)] : []),
    last,
  ];
}

function between(from: Station, to: Station, part: number): Station {
  const mixed = (name: 'x' | 'y' | 'up' | 'down'): number => from[name] + (to[name] - from[name]) * part;
  return { ...from, x: mixed('x'), y: mixed('y'), up: mixed('up'), down: mixed('down') };
}

/** The line of a ring at a place along a ribbon. */
function ringLine({ stations }: SolidRibbon, alongMm: number): string {
  let before = 0;
  for (let at = 0; at + 1 < stations.length; at++) {
    const [from, to] = [stations[at]!, stations[at + 1]!];
    const long = Math.hypot(to.x - from.x, to.y - from.y);
    if (before + long >= alongMm) {
      return across(ribbonOf([from, between(from, to, (alongMm - before) / long), to]), 0.5);
    }
    before += long;
  }
  throw new RangeError('a ring lies beyond the end of its ribbon; draw it on the body');
}

function eyeLine({ x, y, radiusMm }: Eye): string {
  const r = round(radiusMm);
  const left: Point = [round(x - radiusMm), round(y)];
  return `M${left[0]} ${left[1]}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0`;
}
