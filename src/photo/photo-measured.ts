/**
 * What a photo of a bait on a measuring card tells, or why it tells nothing.
 *
 * @packageDocumentation
 */
import type { CardKind, Place } from '../measuring-card/measuring-card.ts';
import type { Lab } from '../optics/cielab.ts';

/** What a doubt is made of, ΔE00: see `photoDoubt`. */
export type DoubtTerm = 'tone' | 'paper' | 'camera' | 'field' | 'mixed' | 'own' | 'clip';

/** How far measured colours may be from what is there, ΔE00. */
export interface PhotoDoubt {
  /** Nine in ten are nearer than this: the `doubt` of a look. */
  readonly bound: number;
  readonly largest: DoubtTerm;
  /** Each before it is added to the others in squares; the root of their sum, times a factor, is the bound. */
  readonly terms: Readonly<Record<DoubtTerm, number>>;
}

/** Luminance over black by that over white, of the book's backings: 1 hides all. */
export interface PhotoContrast {
  readonly ratio: number;
  /** Nine in ten are within this of it. */
  readonly bound: number;
}

/** One kind of flake in the zone that was looked at. */
export interface PhotoFlake {
  /** Diameter of a disc of the same area, mm: the middle one of all flakes. */
  readonly sizeMm: number;
  /**
   * Share of the zone, 0..1, and how far that of the whole bait may be from it, since only `count` flakes were seen: one standard deviation.
   *
   * Flake that can be told from the body counts whole, however deep it lies; in `seenCoverage` it counts for as much as it stands out. Of drawn
   * zones it is 1.1 to 1.3 times that in clear plastic and 1.1 to 1.7 times in hazy plastic; of black flake in pearl 2 to 4 times.
   */
  readonly coverage: number;
  readonly coverageSd: number;
  readonly lab: Lab;
  readonly count: number;
}

/** Why nothing is said of flake: it would be too few pixels across, shine hides it, or there is none. */
export type NoFlake = 'too-few-pixels' | 'glare' | 'none-seen';

/** What makes a measurement worse without spoiling it, or hides something from it. */
export type PhotoWarning =
  /** Light of two colours falls on the card. */
  | 'mixed-light'
  /** A shadow lies on the card. */
  | 'shadow'
  /** Something in the plastic is too fine to be told one from another: colour and flake are seen as one. */
  | 'fine-texture'
  /** Only one half was seen: it is as it looks over the card, not over the book's backing. */
  | 'one-half'
  /** Photos of what should be one bait differ by more than their doubt. */
  | 'photos-differ';

/** A bait as one photo shows it, or several. */
export interface PhotoMeasured {
  readonly kind: 'measured';
  readonly card: CardKind;
  /** Over `WHITE_BACKING` and `BLACK_BACKING`; may lie outside sRGB. At least one is there. */
  readonly overWhite?: Lab;
  readonly overBlack?: Lab;
  readonly contrast?: PhotoContrast;
  readonly doubt: PhotoDoubt;
  /** Kinds of flake, the one that covers most first. */
  readonly flakes?: readonly PhotoFlake[];
  readonly noFlake?: NoFlake;
  readonly widthMm?: number;
  /** Where the bait was found, and what of it was looked at: corners in pixels of the photo, once around each. */
  readonly baitPixels: readonly Place[];
  readonly zonePixels: readonly (readonly Place[])[];
  readonly warnings: readonly PhotoWarning[];
}

/** Why a photo is refused. Each has its cure in `src/words/`. */
export type RefusalReason =
  | 'too-few-marks'
  | 'two-kinds'
  | 'not-flat'
  | 'too-bright'
  | 'too-dark'
  | 'glare'
  | 'bait-clipped'
  | 'no-bait'
  /** There is a bait, but none of it lies far enough from its ends and from the seam. */
  | 'too-short';

/** A photo that tells nothing. */
export interface PhotoRefused {
  readonly kind: 'refused';
  readonly reason: RefusalReason;
  /** Of too few marks: how many were found. */
  readonly found?: number;
}
