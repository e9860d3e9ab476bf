/**
 * The flake of a bait, from the zones of both halves.
 *
 * @packageDocumentation
 */
import { labFromLinear } from '../../optics/display.ts';
import { oklabDistance } from '../bait/oklab.ts';
import type { NoFlake, PhotoFlake } from '../photo-measured.ts';
import type { LinearRgb } from '../pixels.ts';
import type { ZoneFlake, ZoneFlakes } from './zone-flakes.ts';

/** What a zone shows, and how large it is. */
export interface FlakedZone {
  readonly found: ZoneFlakes;
  /** The body's colour, OKLab. */
  readonly body: ArrayLike<number>;
  readonly areaMm2: number;
}

/** What is said of flake; `fine`: something is there that is too fine to be told one from another. */
export interface FlakeFound {
  readonly flakes?: readonly PhotoFlake[];
  readonly noFlake?: NoFlake;
  readonly fine: boolean;
}

/** How a photo shows flake. */
export interface FlakeSight {
  readonly pixelsPerMm: number;
  /** mm as printed for each mm as designed. */
  readonly scale: number;
  /** From a part of paper's light to what is thrown back. */
  bend(signal: LinearRgb): LinearRgb;
}

/** Flake of .015 in, 0.38 mm, is 4 pixels across from here on: of a coarser photo nobody can say that there is none. */
const LEAST_PER_MM = 10;

/** Kinds on both halves are one if their cores are nearer than this, OKLab, where lightness, which hangs on how flakes lie, counts half. */
const ONE_KIND = 0.15;
const LIGHTNESS = 0.5;

/** A half on which a kind stands out less than this part of what it does on the other misses some of it. */
const AS_CLEAR = 0.6;

/**
 * Kinds of flake, the one that covers most first. Each is read where it stands out best, and on both halves where both show it: more flakes
 * tell more.
 */
export function photoFlakes(zones: readonly FlakedZone[], { pixelsPerMm, scale, bend }: FlakeSight): FlakeFound {
  const fine = zones.some(({ found }) => found.tooFine);
  const groups = grouped(zones);
  if (groups.length === 0) return { noFlake: noFlakeOf(zones, pixelsPerMm, fine), fine };
  const flakes = groups.map((group): PhotoFlake => {
    const unseen = missedBy(group, zones).reduce((sum, { areaMm2 }) => sum + areaMm2, 0);
    const clear = group.filter(
      ({ flake }) => flake.peak >= AS_CLEAR * Math.max(...group.map((each) => each.flake.peak)),
    );
    const area = clear.reduce((sum, { zone }) => sum + zone.areaMm2, unseen);
    const count = clear.reduce((sum, { flake }) => sum + flake.count, 0);
    const mean = (of: (flake: ZoneFlake) => number): number =>
      clear.reduce((sum, { flake }) => sum + of(flake) * flake.count, 0) / count;
    const coverage = clear.reduce((sum, { flake, zone }) => sum + flake.coverage * zone.areaMm2, 0) / area;
    const light = {
      r: mean(({ light: [r] }) => r),
      g: mean(({ light: [, g] }) => g),
      b: mean(({ light: [, , b] }) => b),
    };
    return {
      sizeMm: scale * mean(({ sizeMm }) => sizeMm),
      coverage,
      coverageSd: coverage / Math.sqrt(count),
      lab: labFromLinear(bend(light)),
      count,
    };
  });
  return { flakes: flakes.sort((one, other) => other.coverage - one.coverage), fine };
}

function noFlakeOf(zones: readonly FlakedZone[], pixelsPerMm: number, fine: boolean): NoFlake {
  if (pixelsPerMm < LEAST_PER_MM) return 'too-few-pixels';
  if (zones.every(({ found }) => found.hidden)) return 'glare';
  return fine ? 'too-few-pixels' : 'none-seen';
}

interface OnZone {
  readonly flake: ZoneFlake;
  readonly zone: FlakedZone;
}

/** Flake may be in what of a zone is not clear: one with less of that than this part of what a kind covers on the other has none of it. */
const MOST_UNCLEAR = 0.5;

/** Zones that don't show a kind although it would stand out from their body. */
function missedBy(group: readonly OnZone[], zones: readonly FlakedZone[]): readonly FlakedZone[] {
  const { flake } = group.reduce((best, each) => (each.flake.peak > best.flake.peak ? each : best));
  const others = zones.filter((zone) => !group.some((each) => each.zone === zone));
  return others.filter(
    ({ body, found }) =>
      oklabDistance(flake.core, 0, body, 0) >= AS_CLEAR * flake.peak && found.unclear < MOST_UNCLEAR * flake.coverage,
  );
}

/** Kinds of all zones, those that are one kind together. */
function grouped(zones: readonly FlakedZone[]): readonly (readonly OnZone[])[] {
  const groups: OnZone[][] = [];
  for (const zone of zones) {
    const free = [...groups];
    for (const flake of zone.found.kinds) {
      const near = free
        .map((group) => ({ group, off: apart(group[0]!.flake.core, flake.core) }))
        .filter(({ off }) => off < ONE_KIND)
        .sort((one, other) => one.off - other.off)[0];
      if (near) free.splice(free.indexOf(near.group), 1);
      if (near) near.group.push({ flake, zone });
      else groups.push([{ flake, zone }]);
    }
  }
  return groups;
}

function apart(one: ZoneFlake['core'], other: ZoneFlake['core']): number {
  return Math.hypot(LIGHTNESS * (one[0] - other[0]), one[1] - other[1], one[2] - other[2]);
}
