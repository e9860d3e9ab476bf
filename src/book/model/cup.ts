import type { HeatLimit } from '../../cup/heat-limit.ts';
import type { CupHeats } from '../../cup/heats.ts';
import type { CupState } from '../../cup/ledger.ts';
import type { LogRound } from '../../cup/log-round.ts';
import type { Tier } from '../../optics/material-constants.ts';
import type { Appearance } from './colours.ts';
import type { Known } from './known.ts';
import type { CupLook, Look } from './looks.ts';
import type { Assumption, FlakeProperties } from './shelf.ts';

/** What flake does in a cup at a thickness. */
export interface FlakeLook {
  readonly material: string;
  readonly hex: string;
  /** Size across flats, mm. */
  readonly sizeMm: number;
  readonly outline: FlakeProperties['outline'];
  /** Length of a strip, mm. */
  readonly longMm?: number;
  readonly finish: string;
  readonly flakesPerMl: number;
  /** Flakes of the cup in one bait of the recipe's mold: in its share of the cavity. */
  readonly perBait: number;
  /** Mean distance between neighbours, mm. */
  readonly spacingMm: number;
  /** Chance that a line of sight through the body meets one, however deep it lies. */
  readonly coverage: number;
  /** Share of the face that an eye takes for it, and ΔE00 between its face and the body: see `SeenFlake`. */
  readonly seen: number;
  readonly contrast: number;
}

/** One material in a cup. */
export interface Content {
  readonly material: string;
  /** g per ml of plastic. */
  readonly gramsPerMl: number;
  /** A liquid that its maker measures by volume, and doesn't count in drops. */
  readonly spooned?: true;
}

/** One plastic in a cup, as a share of the plastic's volume. */
export interface PlasticShare {
  readonly material: string;
  readonly fraction: number;
}

/** One trial of a cup, as its log has it; and what the model makes of it. */
export interface Round extends Omit<LogRound<Look>, 'first' | 'looked' | 'pouredAway' | 'seen'> {
  /** It is the first of a new cup: with how much plastic that was begun, and what was left of the one before. */
  readonly newCup?: { readonly plasticMl: number; readonly pouredAway: CupState; readonly pouredAwayMl: number };
  /** It was heated again. */
  readonly reheated: boolean;
  /** How it was seen, the look that it is judged by first; see `judgedFirst`. */
  readonly seen: readonly CupLook[];
  /** It was heated until vinyl breaks down. */
  readonly burnt?: true;
  /** Of all that is in it, before the pour and after. */
  readonly volumeMl: number;
  readonly leftMl: number;
  /** Predicted, at the thickness of the body. */
  readonly look: Appearance;
  /** Change from the round before: ΔE00 over white, and in words. */
  readonly change?: Change;
}

/** What changed between two cups, rounds or recipes. */
export interface Change {
  readonly deltaE: number;
  readonly deltaL: number;
  readonly deltaC: number;
  readonly deltaH: number;
  /** Change of contrast ratio; above zero it hides more. */
  readonly deltaContrast: number;
  /** "darker, browner, denser" */
  readonly words: readonly string[];
  /** Exact change of every dose, g per 100 ml of plastic. */
  readonly doses: readonly { readonly material: string; readonly from: number; readonly to: number }[];
}

/** What is really in a cup, how it came about, and how it looks by itself and in the bait. */
export interface Cup {
  readonly name: string;
  /** Share of the bait. */
  readonly share: number;
  readonly from?: { readonly recipe: string; readonly cup: string };
  /** Repeatable recipe: what is really in the cup. */
  readonly contents: readonly Content[];
  readonly plastics: readonly PlasticShare[];
  /** Plastic that its file begins with, ml. */
  readonly startMl: number;
  /** The cup whose file states `startMl`, where this one's does not. */
  readonly startOf?: { readonly recipe: string; readonly cup: string };
  /** Mixed volume of one ml of plastic with everything in it, ml. */
  readonly volumePerPlastic: number;
  /** The amounts as the maker wrote them, if the cup has no log. */
  readonly written: readonly { readonly material: string; readonly dose: string }[];
  readonly rounds: readonly Round[];
  /** Only with a log: what the notes add up to, and how far that is from the cup. */
  readonly naive?: {
    readonly contents: readonly Content[];
    readonly deltaE: number;
    readonly words: readonly string[];
  };
  /** Volume that the log leaves, ml. */
  readonly leftMl?: number;
  readonly highestReached?: number;
  readonly reheats: number;
  /** How many heats it has had: since its log began, or it was begun anew; made from the recipe it has its first before it. */
  readonly heats: CupHeats;
  /** How hot it may get, as `heatLimit` says. */
  readonly limit?: HeatLimit;
  /** Materials of the cup whose highest temperature is not on the shelf. */
  readonly limitUnknown: readonly string[];
  /** Pouring range that all its plastics share. */
  readonly working?: { readonly from: number; readonly to: number };
  /** Alone, at the thickness of the body and of the thin part. */
  readonly body: Appearance;
  readonly thin: Appearance;
  /** The plastic's colour without its flake. */
  readonly between: Appearance;
  /** Thickness at which the contrast ratio reaches 0.98, mm; absent where none does. */
  readonly hidingMm?: number;
  readonly flakes: readonly FlakeLook[];
  readonly tier: Tier;
  /** How its colour by itself is known. */
  readonly known: Known;
  /** What the numbers assume, of which material. */
  readonly assumptions: readonly { readonly title: string; readonly assumed: Assumption }[];
}
