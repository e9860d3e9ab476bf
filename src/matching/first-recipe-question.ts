import type { FlakeWay } from '../cup/flake-passage.ts';
import type { Amounts } from '../cup/ledger.ts';
import type { ModelCorrection } from './rounds/correct-model.ts';
import type { MatchBench } from './shelf/match-bench.ts';
import type { MatchMaterial } from './shelf/match-material.ts';
import type { AdditionLimits } from './shelf/usable-materials.ts';
import type { WantedFlake } from './substitutes/flake-match.ts';
import type { TargetPart } from './target/target-part.ts';

/** A target that is to be made from plain plastic. */
export interface FirstRecipeQuestion {
  /**
   * One: a solid bait, or one side of a laminate the other side of which there is already (`behind`). Two: the sides of a laminate
   * as they are seen in the finished bait, each with the other behind it, and each through half of its thickness.
   */
  readonly parts: readonly TargetPart[];
  readonly flakes?: readonly WantedFlake[];
  /** The mold that it is poured in, as far as flake has to get through it. */
  readonly mold?: FlakeWay;
  /** What goes in besides and is not to be changed, such as flake and salt: g per ml of plastic, in every cup. */
  readonly keep?: Amounts;
  /** Plastic of the cups, and how much of it in each, ml. */
  readonly plastic: string;
  readonly plasticMl: number;
  readonly shelf: readonly MatchMaterial[];
  readonly bench: MatchBench;
  readonly tolerance: number;
  readonly limits?: Pick<AdditionLimits, 'inStock' | 'stockShare' | 'without' | 'roomMl'>;
  /** What rounds of the same colour have taught. */
  readonly correction?: ModelCorrection;
  /** Most materials in a cup, flake apart; unset: 4. */
  readonly most?: number;
  /** Proposals wanted; unset: 3. */
  readonly proposals?: number;
}
