import type { Lab } from '../../optics/cielab.ts';
import { deltaE00 } from '../../optics/delta-e00.ts';
import type { LookDoubt } from '../../optics/look-doubt.ts';
import { isReversed, luminance, settledViews } from './target-part.ts';

/** A side of a finished bait as it was looked at. */
export interface SideSeen {
  readonly name: string;
  readonly overWhite: Lab;
  readonly overBlack?: Lab;
  readonly thicknessMm: number;
  readonly doubt: LookDoubt;
}

/** Two sides that no one bait has. */
export interface UnlikeSides {
  /** The side that lets more light through, and the other. */
  readonly more: string;
  readonly less: string;
  /** How many times as much light the one lets through, above 1: to one decimal, from 10 on whole. */
  readonly times: number;
  /** It is at least as many times: the other lets next to nothing through. */
  readonly atLeast?: true;
}

// By how much of the larger the two may differ, and by how many deviations of their doubts. Conventions of this book.
const PART = 0.12;
const DEVIATIONS = 3;
/**
 * By how much Y of the two may differ in flat layers, though as much light passes either way: what comes back through a pale far side is
 * thrown to and fro more often. Of 400 000 random bodies of two layers none came to more than 0.0112 (Kubelka–Munk, cards of 0.9 and 0.03).
 */
const FLAT_LAYERS = 0.0112;
const MOST_TIMES = 20;

/**
 * Two sides that cannot be those of one finished bait; undefined where they can, or where nothing is known of it.
 *
 * Light passes a bait alike from either side, whatever its layers hold and whatever flake lies in which of them. So the difference that
 * the card makes, Y over white less Y over black, is that of both sides, but for what flat layers add. The edges of a round bait leak
 * light, and a side may have been looked at where the bait is thinner: it is a question, never a verdict.
 *
 * @param sides two, of one bait as it was looked at in one piece
 */
export function unlikeSides(sides: readonly SideSeen[]): UnlikeSides | undefined {
  const [one, other, ...more] = sides;
  if (!one || !other || more.length > 0 || Math.abs(one.thicknessMm - other.thicknessMm) > 0.01) return undefined;
  const [first, second] = [shownThrough(one), shownThrough(other)];
  if (!first || !second) return undefined;
  const [clear, solid] = first.Y >= second.Y ? ([first, second] as const) : ([second, first] as const);
  const apart = clear.Y - solid.Y;
  if (apart <= PART * clear.Y || apart <= Math.max(FLAT_LAYERS, DEVIATIONS * Math.hypot(clear.sd, solid.sd)))
    return undefined;
  const named = { more: clear.name, less: solid.name };
  if (clear.Y >= MOST_TIMES * solid.Y) return { ...named, times: MOST_TIMES, atLeast: true };
  const times = clear.Y / solid.Y;
  return { ...named, times: Number(times.toFixed(times < 10 ? 1 : 0)) };
}

/** How much of the card shows through a side, as a difference of Y, and its standard deviation; undefined where it was not seen over both cards. */
function shownThrough(side: SideSeen): { readonly name: string; readonly Y: number; readonly sd: number } | undefined {
  const { overWhite, overBlack } = settledViews(side);
  if (!overBlack || isReversed(side)) return undefined;
  const { axisSd } = side.doubt;
  return {
    name: side.name,
    Y: luminance(overWhite) - luminance(overBlack),
    sd: Math.hypot(luminanceSd(overWhite, axisSd), luminanceSd(overBlack, axisSd)),
  };
}

/** Standard deviation of Y of a colour whose lightness has one of so much ΔE00. */
function luminanceSd(lab: Lab, axisSd: number): number {
  const sdL = axisSd / deltaE00(lab, { ...lab, L: lab.L + 1 });
  return (luminance({ ...lab, L: lab.L + sdL }) - luminance({ ...lab, L: Math.max(0, lab.L - sdL) })) / 2;
}
