import type { HowLooked } from '../../cup/how-looked.ts';
import type { Effect } from '../../kinds/effects.ts';
import type { NextAddition } from '../../matching/next-addition.ts';
import type { WantedFlake } from '../../matching/substitutes/flake-match.ts';
import type { UnlikeSides } from '../../matching/target/unlike-sides.ts';
import type { Verdict } from '../../matching/target/verdict.ts';
import type { LookDoubt } from '../../optics/look-doubt.ts';
import type { Colour, MeasuredBands } from './colours.ts';
import type { Photo } from './photo.ts';
import type { Publish } from './publish.ts';

/** A colour to be matched. */
export interface Target {
  readonly id: string;
  readonly title: string;
  readonly notes: string;
  readonly publish: Publish;
  /** Whether its own file says what is published of it; else it is shared only where a recipe that is published in full is for it. */
  readonly publishSaid: boolean;
  readonly photo?: Photo;
  readonly mold?: string;
  readonly tolerance: number;
  /** One part named `body`, or the parts by the names of the cups. */
  readonly parts: readonly {
    readonly name: string;
    readonly overWhite: Colour;
    readonly overBlack?: Colour;
    readonly reflectance?: MeasuredBands;
    readonly thicknessMm: number;
    /** How far its colours may be off. */
    readonly doubt: LookDoubt;
    /** The same of its contrast ratio: nine in ten are within it; unset: nobody knows. */
    readonly contrastDoubt?: number;
    readonly after?: HowLooked['after'];
    /** What took the photo; only in the maker's edition. */
    readonly camera?: string;
    /** The same as what was learned names it; unset: it has made none of the looks that are learned from. */
    readonly cameraNumber?: string;
    readonly wet?: true;
    readonly flakes: readonly WantedFlake[];
    /** The plastic that its cup is to be begun with; unset: whichever a match begins with. */
    readonly plastic?: string;
  }[];
  /**
   * Its parts were seen each by itself; else two parts are the sides of a finished bait, each seen with the other behind it. Unset where
   * its file says nothing.
   */
  readonly apart?: boolean;
  /** Its two parts, of which nobody has said how they were seen, cannot be the sides of one bait. */
  readonly unlikeSides?: UnlikeSides;
  /** Of all its parts, part by part. */
  readonly flakes: readonly WantedFlake[];
  /** What it does beside being of a colour. */
  readonly effect?: Effect;
  readonly recipes: readonly string[];
  /** What readers have of it; only in the maker's edition. */
  readonly shared?: Publish;
  readonly source: { readonly path: string; readonly text: string };
}

/** A recipe's cups beside the parts of its target. */
export interface RecipeMatch {
  readonly target: string;
  /** ΔE00 within which they are the same colour. */
  readonly tolerance: number;
  readonly cups: readonly CupMatch[];
}

/** A cup beside its part of the target. */
export interface CupMatch {
  readonly cup: string;
  readonly part: string;
  /** The rounds of its log; of a cup without a log, the cup itself. */
  readonly rounds: readonly MatchedRound[];
  /** How far the cup, as it was last, and the target are apart under other lights than daylight; absent without a round. */
  readonly lights?: CupLights;
  /** What to do with what is left in the cup; absent where the last round is within tolerance or nothing is left. */
  readonly next?: Omit<NextAddition, 'leftOut'>;
}

/** A cup beside its target under other lights. */
export interface CupLights {
  /** Whether the target's reflectance was measured; else the smoothest one of its colour stands for it, and the real one may differ. */
  readonly basis: 'measured' | 'estimated';
  /** ΔE00 under each light, the larger of those over white and over black. */
  readonly views: readonly { readonly light: string; readonly name: string; readonly deltaE: number }[];
}

/** A round beside the target. */
export interface MatchedRound {
  readonly number: number;
  /** Whether the colours are those noted, or the model's where none were. */
  readonly basis: 'seen' | 'predicted';
  /** Seen at another thickness than the target, or without the other side of the bait behind it, and moved to that by the model. */
  readonly moved?: 'thickness' | 'laminate';
  readonly overWhite?: Colour;
  readonly overBlack?: Colour;
  readonly verdict: Verdict;
}
