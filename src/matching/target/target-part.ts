import { type Lab, tristimulusFromLab } from '../../optics/cielab.ts';
import type { TwoViews } from '../../optics/cup-body.ts';
import type { SpreadFlake } from '../../optics/flake.ts';
import type { LookMeans } from '../../optics/look-doubt.ts';
import type { MixtureConstants } from '../../optics/mixture.ts';
import { defined } from '../../values/defined.ts';
import type { CupContents } from '../belief/cup-contents.ts';
import type { MatchFault } from '../match-fault.ts';

/** A colour to be matched: one part of a target. */
export interface TargetPart {
  readonly name: string;
  /** CIELAB under D65, over the book's white and over its black. */
  readonly overWhite: Lab;
  readonly overBlack?: Lab;
  /** What was measured of it band by band (36 bands, 0..1, beside the gloss): its colour under any light. */
  readonly reflectance?: { readonly overWhite?: ArrayLike<number>; readonly overBlack?: ArrayLike<number> };
  /** How far it may be from what was there, ΔE00: one standard deviation along each of three axes (see `LookDoubt`); unset: it is what it is. */
  readonly axisSd?: number;
  /** The camera that it was seen with, by the name that its looks have: what that always does to colours is in these, and no part of `axisSd`. */
  readonly camera?: string;
  /** How it was seen; unset: by an instrument. */
  readonly means?: LookMeans;
  /** Thickness at which it was seen, mm: of a side of a laminate, that of the whole bait. */
  readonly thicknessMm: number;
  /** As of `SeenViews`. */
  readonly evened?: true;
  /** The other cup of the bait, where the part is a side of a finished laminate and is seen through this side's own cup. */
  readonly behind?: LayerBehind;
}

/** The far side of a laminate. */
export interface LayerBehind {
  /** What is in it. */
  readonly contents: CupContents;
  /** K and S per mm. */
  readonly mix: MixtureConstants;
  readonly flakes: readonly SpreadFlake[];
  /** Its part of the bait's thickness, above 0 and below 1. */
  readonly share: number;
}

/** A colour as it was seen or is predicted, as far as it is known. */
export interface SeenViews {
  readonly overWhite?: Lab;
  readonly overBlack?: Lab;
  /** It was lighter over black by no more than looking errs, and counts as opaque (see `settledViews`). */
  readonly evened?: true;
}

/** Of a colour what its target was seen in: over black only where the target was. */
export function shownOf({ overWhite, overBlack }: TwoViews, target: Pick<TargetPart, 'overBlack'>): SeenViews {
  return target.overBlack ? { overWhite, overBlack } : { overWhite };
}

/** Luminance of a colour, Y of white = 1. */
export function luminance(lab: Lab): number {
  return Math.max(0, tristimulusFromLab(lab).Y);
}

/** Contrast ratio, Y over black by Y over white, 0 to 1; undefined where one of the two is not known. */
export function contrastOfViews({ overWhite, overBlack }: SeenViews): number | undefined {
  if (overWhite === undefined || overBlack === undefined) return undefined;
  const white = luminance(overWhite);
  return white > 0 ? Math.min(1, luminance(overBlack) / white) : 1;
}

/** By the error of looking alone an opaque thing can come out this much lighter over black, ΔL. Common practice, no source. */
export const LOOKING_ERROR = 3;

/** As much as rounding makes of two colours that are predicted to be one, ΔL: not worth a word. */
const UNSEEN = 0.01;

/** L of nothing that is seen: what glows is lighter than white, and adapted to daylight lighter still. */
const LIGHTEST = 150;

/**
 * What a pair of views means. A black card adds no light, so a thing that is lighter over it by looking's own error is opaque: as light
 * over black as over white. One that is lighter by more stays as it is, and is a fault (see `viewsFault`).
 */
export function settledViews<Views extends SeenViews>(views: Views): Views {
  const { overWhite, overBlack } = views;
  if (!overWhite || !overBlack || overBlack.L <= overWhite.L || isReversed(views)) return views;
  const even = { ...views, overBlack: { ...overBlack, L: overWhite.L } };
  return overBlack.L - overWhite.L > UNSEEN ? { ...even, evened: true } : even;
}

/** What was seen of a round, as matching takes it; undefined where no colour was noted. */
export function viewsOfLabs(overWhite: Lab | undefined, overBlack: Lab | undefined): SeenViews | undefined {
  return overWhite === undefined && overBlack === undefined
    ? undefined
    : settledViews(defined({ overWhite, overBlack }));
}

/** Whether it is lighter over black than over white by more than looking errs, which no plastic is. */
export function isReversed({ overWhite, overBlack }: SeenViews): boolean {
  return overWhite !== undefined && overBlack !== undefined && overBlack.L > overWhite.L + LOOKING_ERROR;
}

/** What is wrong with the colours of a target or a look; undefined where nothing is. */
export function viewsFault(views: SeenViews): MatchFault | undefined {
  for (const [over, lab] of [
    ['white', views.overWhite],
    ['black', views.overBlack],
  ] as const) {
    if (lab === undefined) continue;
    const { L, a, b } = lab;
    if (!(Number.isFinite(L) && Number.isFinite(a) && Number.isFinite(b) && L >= 0 && L <= LIGHTEST))
      return { kind: 'no-colour', over };
  }
  return isReversed(views) ? { kind: 'reversed' } : undefined;
}

/** What is wrong with a part of a target; undefined where nothing is. */
export function partFault(part: TargetPart): MatchFault | undefined {
  return part.thicknessMm > 0 && part.thicknessMm <= 1000 ? viewsFault(part) : { kind: 'no-thickness' };
}
