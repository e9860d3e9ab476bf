/**
 * A material of a cup that there is none of, and what can stand for it.
 *
 * @packageDocumentation
 */
import type { Bench } from '../../cup/bench.ts';
import type { FlakeWay } from '../../cup/flake-passage.ts';
import type { CupState } from '../../cup/ledger.ts';
import type { OpticalModel } from '../../optics/optical-model.ts';
import type { Beliefs } from '../belief/beliefs.ts';
import type { Expectation } from '../belief/expectation.ts';
import type { MatchFault } from '../match-fault.ts';
import type { PromisedByTools } from '../measure/best-tools.ts';
import type { Weight } from '../measure/weigh-doses.ts';
import type { PredictedColour } from '../proposals/proposal.ts';
import type { MatchMaterial } from '../shelf/match-material.ts';
import type { AdditionLimits, LeftOut } from '../shelf/usable-materials.ts';
import type { Verdict } from '../target/verdict.ts';
import type { FlakeChoice } from './flake-match.ts';

/** A cup in which one material is to be replaced. */
export interface SubstituteQuestion {
  readonly cup: CupState;
  /** Thickness at which the colours are compared, mm. */
  readonly thicknessMm: number;
  /** The mold that it is poured in, as far as flake has to get through it. */
  readonly mold?: FlakeWay;
  /** The material that there is none of. */
  readonly material: string;
  readonly shelf: readonly MatchMaterial[];
  readonly optics: OpticalModel;
  readonly bench: Bench;
  readonly tolerance: number;
  /** What looks have taught; those at the cup too. */
  readonly belief: Beliefs;
  /** Name of the cup among the looks; unset: there are none of it. */
  readonly key?: string;
  readonly limits?: Pick<AdditionLimits, 'inStock'>;
  /** Most of each list; unset: 5. */
  readonly count?: number;
}

/** An amount of a substitute. */
export interface SubstituteAmount {
  readonly material: string;
  readonly title: string;
  readonly grams: number;
  readonly text: string;
  /** What to weigh instead; absent where there is no scale, or it is weighed already. */
  readonly weighed?: Weight;
}

/** A cup without the material that comes near to the one with it. */
export interface Substitute extends PromisedByTools {
  /** What goes in instead: one material, or everything that colours the cup. */
  readonly amounts: readonly SubstituteAmount[];
  readonly overWhite: PredictedColour;
  readonly overBlack: PredictedColour;
  /** Against the cup with it. */
  readonly left: Verdict;
  /** ΔE00 against it where everything is weighed instead. */
  readonly weighedDeltaE?: number;
}

/** A flake instead of another, with what is seen of that much of it and how many are in a ml of the cup. */
export interface FlakeSubstitute extends FlakeChoice, SubstituteAmount {
  readonly seen: number;
  readonly contrast: number;
  readonly perMl: number;
}

/** What to do without a material. */
export type SubstitutionAdvice =
  /** Nobody misses it, with what is to be expected of the cup without it. */
  | ({ readonly kind: 'leave-out' } & Expectation)
  /** Another, best the first of the swaps, or of the flakes. */
  | { readonly kind: 'swap' }
  /** All that colours the cup, best the first of the recipes. */
  | { readonly kind: 're-solve' }
  /** Nothing is within tolerance; the nearest is the first of the swaps, or of the recipes. */
  | { readonly kind: 'cannot'; readonly because: 'not-near'; readonly nearest: 'swap' | 're-solve' }
  /** Nothing comes near at all, or there is nothing else. */
  | { readonly kind: 'cannot'; readonly because: 'another-colour'; readonly nearest?: Substitute }
  | { readonly kind: 'cannot'; readonly because: 'no-other-flake' }
  | { readonly kind: 'fault'; readonly fault: MatchFault };

/** What can stand for a material in a cup. */
export interface Substitution {
  readonly advice: SubstitutionAdvice;
  /** Title of the material that there is none of. */
  readonly lost: string;
  /** One material for one, everything else as it is, nearest by effect first. */
  readonly swaps: readonly Substitute[];
  /** The cup's colour worked out anew without it. */
  readonly recipes: readonly Substitute[];
  readonly flakes: readonly FlakeSubstitute[];
  /** What the best by drops and spoons promises, where what is advised is by the scale alone instead. */
  readonly byHand?: Expectation;
  /** What could colour and is left out, and why; unset: nothing. */
  readonly leftOut?: readonly LeftOut[];
}
