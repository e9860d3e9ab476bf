/**
 * All that a book can learn from: what its files say of materials, and every look at something that was poured.
 *
 * Plain values that survive JSON. Units: doses and contents in g of material per ml of plastic, plastics as shares of the
 * plastic's volume, thickness in mm, colours in CIELAB (D65).
 *
 * @packageDocumentation
 */
import type { Lab } from '../optics/cielab.ts';
import type { Flake } from '../optics/flake.ts';
import type { LookMeans } from '../optics/look-doubt.ts';
import type { ConstantsDoubt } from '../tables/constants-doubt.ts';

/** Kinds of which a prior is known: see `MATERIAL_PRIORS`. */
export type PriorKind = 'dye' | 'pigment' | 'pearl' | 'twoViewPearl' | 'white';

/** K and S: of a plastic per mm, of anything else per mm per g/ml. 36 numbers each. */
export interface Constants {
  readonly absorption: readonly number[];
  readonly scattering: readonly number[];
}

/** A material as it is known before any look at a pour. */
export interface TaughtMaterial {
  readonly id: string;
  readonly prior: /** `unknown`: chips without a kind. The typical dose in g/ml is what the kind's prior is of. */
    | { readonly kind: PriorKind | 'unknown'; readonly typical: number }
    /** From measured films: level, slope and bend of ln K and ln S are in doubt. */
    | { readonly kind: 'known'; readonly constants: Constants; readonly doubt: ConstantsDoubt }
    | { readonly kind: 'plastic'; readonly constants: Constants }
    /** Nothing of it is learned. */
    | { readonly kind: 'flake'; readonly flake: Flake };
  readonly labels: readonly Label[];
}

/** What a file says of how a material looks alone in clear plastic: of the product as it is sold, not of the maker's own bottle. */
export interface Label {
  readonly dose: number;
  readonly thicknessMm: number;
  readonly overWhite?: Lab;
  readonly overBlack?: Lab;
  /** Standard deviation, ΔE00, along each of three axes of each view. */
  readonly axisSd: number;
  /** Of a photo: labels and looks with one camera share a bias, and both views err together in part. */
  readonly camera?: string;
}

/** A cup as a layer of what was looked at. */
export interface LookedLayer {
  /** Materials with their shares. */
  readonly plastics: readonly (readonly [string, number])[];
  /** Materials with their g/ml. */
  readonly contents: readonly (readonly [string, number])[];
  readonly thicknessMm: number;
}

/** A look at a test pour or at a finished bait. */
export interface TaughtLook {
  /** Unlike that of every other look: `recipe/cup/round/n`. The order of everything is by it. */
  readonly key: string;
  /** Looks of one cup share what is false in its log, and the errors of its doses. */
  readonly cup: string;
  readonly round: number;
  /** The near one first; of a test pour there is one. With `streaks` the cups that run in them, each as thick as the bait. */
  readonly layers: readonly LookedLayer[];
  /** Shares of cups that run in streaks, in the order of `layers`. */
  readonly streaks?: readonly number[];
  /** Width of a streak, mm; unset: the usual. */
  readonly streakMm?: number;
  readonly overWhite?: Lab;
  readonly overBlack?: Lab;
  /** Standard deviation, ΔE00, along each of three axes of each view: `LookDoubt.axisSd`. */
  readonly axisSd: number;
  /** On a screen (a photo, or by eye) both views err together in part. */
  readonly means: LookMeans;
  /** Looks with one camera share a bias. */
  readonly camera?: string;
  /** The maker has looked again, and it was so: never doubted. */
  readonly checked?: true;
}

/** See the top of the file. */
export interface LearningData {
  readonly materials: readonly TaughtMaterial[];
  readonly looks: readonly TaughtLook[];
}
