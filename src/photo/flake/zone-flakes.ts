/**
 * The flake of one zone.
 *
 * @packageDocumentation
 */
import type { Body } from '../bait/body-colour.ts';
import type { Patch } from '../bait/rectify.ts';
import { kindsOf } from './kinds.ts';
import { besideBody } from './local-body.ts';
import { type Spot, spotsOf } from './spots.ts';

/** One kind of flake in a zone. */
export interface ZoneFlake {
  readonly sizeMm: number;
  readonly coverage: number;
  readonly coverageSd: number;
  readonly count: number;
  /** The middle of its cores: light as a part of paper's, the same in OKLab, and how far it stands out from the body. */
  readonly light: readonly [number, number, number];
  readonly core: readonly [number, number, number];
  readonly peak: number;
  /** How much lighter than the body it is, OKLab. */
  readonly lighter: number;
}

/** What a zone shows besides its body. */
export interface ZoneFlakes {
  readonly kinds: readonly ZoneFlake[];
  /** Share of the zone that is a highlight. */
  readonly glare: number;
  /** So much of it that flake may hide there. */
  readonly hidden: boolean;
  /** Something is there that is too few pixels across, or too faint, to be counted or measured; or the body's own pixels are of many colours. */
  readonly tooFine: boolean;
  /** Share of the zone that is neither body nor flake of a kind that is told. */
  readonly unclear: number;
  /** One standard deviation of the body's pixels along an axis, OKLab. */
  readonly noise: number;
}

/** A flake must be so many pixels across; fewer than this many flakes may be pieces of a highlight. */
const LEAST_ACROSS = 5.5;
const LEAST_COUNT = 4;

/** Two flakes that touch are twice as long as wide. */
const ROUND = 1.4;

/** Less of a spot is a grain of noise, pixels. */
const LEAST_PIXELS = 3;

/** Something light that is larger than any flake, or long and slender, is a highlight. */
const LARGEST_FLAKE_MM2 = 7;
const LONGEST_FLAKE_MM = 4;
const SLENDER = 2.2;

/** So slender is no row of flakes that touch, but the rim of a highlight or of the bait. */
const LINE = 4;

/** And it has the light's own colour: OKLab. */
const HIGHLIGHT_L = 0.8;
const HIGHLIGHT_CHROMA = 0.07;

/** Ribs mirror a lamp in many small streaks: spots of one kind that are light, and slender most of them. */
const STREAKS = 1.8;
const LONG_STREAKS = 2.5;

/** Of flake so many spots lie whole in the zone; what only reaches into it from its sides is the highlight of a rim. */
const LEAST_WHOLE = 0.25;

/** What stands out less than this, OKLab, is too faint to be counted. */
const CLEAR = 0.06;

/**
 * Flakes differ in lightness with how they lie, by about a third of their light: of those that stand out from the body by little else than
 * this, some are just as light as it and go unseen, unless they are so much lighter or darker, OKLab.
 */
const CLEAR_LIGHTNESS = 0.105;
const BY_LIGHTNESS = 0.7;

/** Where a body's own pixels spread more than this along an axis, OKLab, flake has run into it: what stands out are clumps. */
const TEXTURE = 0.015;

/** Where highlights lie on more than this share of a zone, flake hides in them. */
const MOST_GLARE = 0.1;

/** Specks below this share of a zone are nothing. */
const LEAST_COVERAGE = 0.002;

/** The flake of a zone, by kinds. */
export function zoneFlakes(patch: Patch, body: Body): ZoneFlakes {
  const zone = besideBody(patch, body);
  const spots = spotsOf(zone).filter(({ pixels }) => pixels >= LEAST_PIXELS);
  const groups = kindsOf(spots.filter((spot) => !isHighlight(spot)));
  const flakes = groups.filter((group) => !areStreaks(group));
  const glareMm2 = areaOf(spots) - areaOf(flakes.flat());
  const zoneMm2 = (patch.columns * patch.rows) / patch.perMm ** 2;
  const room = Math.max(zoneMm2 - glareMm2, 1 / patch.perMm ** 2);
  const kinds = flakes.map((kind) => ({ flake: flakeOf(kind, room), areaMm2: areaOf(kind) }));
  const many = kinds.filter(({ flake }) => flake.count >= LEAST_COUNT);
  const isFine = (flake: ZoneFlake): boolean => flake.sizeMm * patch.perMm < LEAST_ACROSS;
  const fine = coverageOf(many.filter(({ flake }) => isFine(flake)));
  // Beside more that is too fine, what seems larger is clumps of it.
  const hidden = glareMm2 > MOST_GLARE * zoneMm2;
  const isSeen = zone.noise <= TEXTURE && !hidden;
  const told = many.filter(({ flake }) => isSeen && !isFine(flake) && isClear(flake) && flake.coverage > fine);
  const untold = coverageOf(many) - coverageOf(told);
  return {
    kinds: told.map(({ flake }) => flake).sort((one, other) => other.coverage - one.coverage),
    glare: glareMm2 / zoneMm2,
    hidden,
    tooFine: untold > LEAST_COVERAGE,
    unclear: (areaOf(spots) - told.reduce((sum, { areaMm2 }) => sum + areaMm2, 0)) / zoneMm2,
    noise: zone.noise,
  };
}

function coverageOf(kinds: readonly { readonly flake: ZoneFlake }[]): number {
  return kinds.reduce((sum, { flake }) => sum + flake.coverage, 0);
}

function isClear({ peak, lighter }: ZoneFlake): boolean {
  const byLightness = Math.abs(lighter);
  return peak >= CLEAR && (byLightness >= CLEAR_LIGHTNESS || byLightness < BY_LIGHTNESS * peak);
}

function isHighlight(spot: Spot): boolean {
  const { areaMm2, longMm, elongation } = spot;
  if (longMm > LONGEST_FLAKE_MM && elongation > LINE) return true;
  if (!isOfTheLamp(spot)) return false;
  return areaMm2 > LARGEST_FLAKE_MM2 || (longMm > LONGEST_FLAKE_MM && elongation > SLENDER);
}

function isOfTheLamp({ lighter, core: [L, a, b] }: Spot): boolean {
  return lighter > 0 && L >= HIGHLIGHT_L && Math.hypot(a, b) <= HIGHLIGHT_CHROMA;
}

function areStreaks(spots: readonly Spot[]): boolean {
  const whole = spots.filter(({ cut }) => !cut);
  if (whole.length < LEAST_WHOLE * spots.length) return true;
  const slender = 2 * whole.filter(isOfTheLamp).length > whole.length ? STREAKS : LONG_STREAKS;
  if (median(whole.map(({ elongation }) => elongation)) <= slender) return false;
  // A few flakes that touch are slender too, but most of the area, or most of what the edge cuts, is not.
  const isSlender = 2 * areaOf(whole.filter(({ elongation }) => elongation > slender)) > areaOf(whole);
  return isSlender || median(spots.map(({ elongation }) => elongation)) > LONG_STREAKS;
}

function flakeOf(spots: readonly Spot[], roomMm2: number): ZoneFlake {
  const measured = singleOf(spots);
  const sizeMm = Math.sqrt((4 * medianByArea(measured)) / Math.PI);
  const coverage = Math.min(1, areaOf(spots) / roomMm2);
  // Some spots are several flakes that touch.
  const count = Math.max(spots.length, Math.round(areaOf(spots) / ((Math.PI / 4) * sizeMm ** 2)));
  const middle = (of: (spot: Spot) => readonly [number, number, number]): readonly [number, number, number] => [
    median(measured.map((spot) => of(spot)[0])),
    median(measured.map((spot) => of(spot)[1])),
    median(measured.map((spot) => of(spot)[2])),
  ];
  return {
    sizeMm,
    coverage,
    coverageSd: coverage / Math.sqrt(count),
    count,
    light: middle(({ light }) => light),
    core: middle(({ core }) => core),
    peak: median(measured.map(({ peak }) => peak)),
    lighter: median(measured.map(({ lighter }) => lighter)),
  };
}

/** Spots that tell the size of one flake: not cut by the zone's edge, and about as long as wide; or all, where these are few. */
function singleOf(spots: readonly Spot[]): readonly Spot[] {
  const whole = spots.filter(({ cut }) => !cut);
  const round = whole.filter(({ elongation }) => elongation < ROUND);
  if (round.length >= LEAST_COUNT && 4 * round.length >= whole.length) return round;
  return whole.length >= LEAST_COUNT ? whole : spots;
}

const areaOf = (spots: readonly Spot[]): number => spots.reduce((sum, { areaMm2 }) => sum + areaMm2, 0);

/** The area that half of all area lies above: specks weigh little. */
function medianByArea(spots: readonly Spot[]): number {
  const areas = spots.map(({ areaMm2 }) => areaMm2).sort((one, other) => one - other);
  const half = areaOf(spots) / 2;
  let sum = 0;
  for (const area of areas) {
    sum += area;
    if (sum >= half) return area;
  }
  return areas.at(-1) ?? 0;
}

function median(values: readonly number[]): number {
  return [...values].sort((one, other) => one - other)[Math.floor(values.length / 2)]!;
}
