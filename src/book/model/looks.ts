import type { HowLooked } from '../../cup/how-looked.ts';
import type { LookDoubt } from '../../optics/look-doubt.ts';
import type { Appearance, Colour, MeasuredBands } from './colours.ts';
import type { Photo } from './photo.ts';

/** What somebody saw: of a cup that was poured by itself, or of a finished bait. */
export interface Look extends HowLooked {
  readonly overWhite?: Colour;
  readonly overBlack?: Colour;
  readonly reflectance?: MeasuredBands;
  /** How far its colours may be off; absent where none is noted. */
  readonly doubt?: LookDoubt;
  /** Nine in ten looks of this kind have their contrast ratio within this; absent where nobody has said. */
  readonly contrastDoubt?: number;
  readonly note?: string;
  readonly photo?: Photo;
  /** What took the photo. */
  readonly camera?: string;
}

/** A look at a cup that was poured by itself. */
export interface CupLook extends Look {
  /** What the model makes of the cup at its thickness; absent where that is the body's, so that the round has it. */
  readonly predicted?: Appearance;
  /** How far the prediction at its thickness was from it, ΔE00. */
  readonly missedBy?: { readonly overWhite?: number; readonly overBlack?: number };
}

/** A look at a finished bait. */
export interface BaitLook extends Look {
  /** The cup that faced the eye; absent: the first. */
  readonly side?: string;
  /** The rounds of the cups that it was poured after; of a cup that is not named, nobody has said. */
  readonly rounds?: readonly { readonly cup: string; readonly number: number }[];
}
