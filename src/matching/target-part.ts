import { type Lab, tristimulusFromLab } from '../optics/cielab.ts';
import type { SpreadFlake } from '../optics/flake.ts';
import type { MixtureConstants } from '../optics/mixture.ts';

/** A colour to be matched: one part of a target. */
export interface TargetPart {
  readonly name: string;
  /** CIELAB under D65, over the book's white and over its black. */
  readonly overWhite: Lab;
  readonly overBlack?: Lab;
  /** What was measured of it band by band (36 bands, 0..1, beside the gloss): its colour under any light. */
  readonly reflectance?: { readonly overWhite?: ArrayLike<number>; readonly overBlack?: ArrayLike<number> };
  /** Thickness at which it was seen, mm: of a side of a laminate, that of the whole bait. */
  readonly thicknessMm: number;
  /** The other cup of the bait, where the part is a side of a finished laminate and is seen through this side's own cup. */
  readonly behind?: LayerBehind;
}

/** The far side of a laminate. */
export interface LayerBehind {
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
}

/** Luminance of a colour, Y of white = 1. */
export function luminance(lab: Lab): number {
  return Math.max(0, tristimulusFromLab(lab).Y);
}

/** Contrast ratio, Y over black by Y over white; undefined where one of the two is not known. */
export function contrastOfViews({ overWhite, overBlack }: SeenViews): number | undefined {
  if (overWhite === undefined || overBlack === undefined) return undefined;
  const white = luminance(overWhite);
  return white > 0 ? luminance(overBlack) / white : 1;
}

/** By the error of looking alone an opaque thing can come out this much lighter over black, ΔL. Common practice, no source. */
export const LOOKING_ERROR = 3;

/** What is wrong with the colours of a target or a look, as a sentence for the maker; undefined where nothing is. */
export function viewsFault(views: SeenViews): string | undefined {
  for (const [view, lab] of [
    ['white', views.overWhite],
    ['black', views.overBlack],
  ] as const) {
    if (lab === undefined) continue;
    const { L, a, b } = lab;
    if (!(Number.isFinite(L) && Number.isFinite(a) && Number.isFinite(b) && L >= 0 && L <= 100.5)) {
      return `The colour over ${view} is no colour. Give it as # and six hexadecimal digits, such as #8a5a2b.`;
    }
  }
  if (views.overWhite && views.overBlack && views.overBlack.L > views.overWhite.L + LOOKING_ERROR) {
    return 'The colour over black is lighter than the one over white, which no plastic shows. If the two were mixed up, exchange them; otherwise take both again under the same light.';
  }
  return undefined;
}

/** What is wrong with a part of a target, as a sentence for the maker; undefined where nothing is. */
export function partFault(part: TargetPart): string | undefined {
  if (!(part.thicknessMm > 0 && part.thicknessMm <= 1000)) {
    return 'The target has no thickness. Give the thickness at which its colour was seen, in millimetres.';
  }
  return viewsFault(part);
}
