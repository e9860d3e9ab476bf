import type { CupHeats } from '../cup/heats.ts';
import type { CupState } from '../cup/ledger.ts';
import type { OpticalModel } from '../optics/optical-model.ts';
import type { Beliefs } from './belief/beliefs.ts';
import type { WhatWentIn } from './rounds/unlogged.ts';
import type { MatchBench } from './shelf/match-bench.ts';
import type { MatchMaterial } from './shelf/match-material.ts';
import type { AdditionLimits } from './shelf/usable-materials.ts';
import type { WantedFlake } from './substitutes/flake-match.ts';
import type { SeenViews, TargetPart } from './target/target-part.ts';

/** What was seen of a cup, and how surely. */
export interface CupSeen extends SeenViews {
  /** One standard deviation along each of three axes, ΔE00 (see `LookDoubt`); unset: that of an instrument. */
  readonly axisSd?: number;
  /** It was looked at again, and stands. */
  readonly checked?: true;
}

/** A cup that is to be brought to a target. */
export interface NextAdditionQuestion {
  /** What is in the cup now, by the ledger. */
  readonly cup: CupState;
  readonly target: TargetPart;
  /** Flake that is to be seen in it. */
  readonly flakes?: readonly WantedFlake[];
  readonly shelf: readonly MatchMaterial[];
  readonly optics: OpticalModel;
  /** What looks have taught; those at this cup too. */
  readonly belief: Beliefs;
  /** Name of the cup among the looks; unset: there are none of it. */
  readonly key?: string;
  readonly bench: MatchBench;
  /** Largest difference that counts as the same colour, ΔE00. */
  readonly tolerance: number;
  /** What the cup looks like as it is now; unset: not poured yet, or not noted. */
  readonly seen?: CupSeen;
  /** How often it was heated; unset: nothing is said of heats. */
  readonly heats?: CupHeats | undefined;
  readonly limits?: AdditionLimits;
  /** What must be answered before anything is added: the cup is judged then, and nothing proposed. */
  readonly asks?: WhatWentIn | undefined;
  /** Plastic that a new cup would be started with, ml; unset: what is in this one. */
  readonly startMl?: number;
  /** Most materials in one addition; unset: 3, and 4 to plain plastic. */
  readonly most?: number;
  /** Most of them that are not in the cup yet; unset: 2, and 4 to plain plastic. */
  readonly newBottles?: number;
  /** Proposals wanted; unset: 3. */
  readonly proposals?: number;
}
