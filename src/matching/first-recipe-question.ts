import type { FlakeWay } from '../cup/flake-passage.ts';
import type { Amounts } from '../cup/ledger.ts';
import type { OpticalModel } from '../optics/optical-model.ts';
import type { Beliefs } from './belief/beliefs.ts';
import type { MatchBench } from './shelf/match-bench.ts';
import type { MatchMaterial } from './shelf/match-material.ts';
import type { AdditionLimits } from './shelf/usable-materials.ts';
import type { WantedFlake } from './substitutes/flake-match.ts';
import type { TargetPart } from './target/target-part.ts';

/** A part of a target, and what its cup is to be made of. */
export interface PartAsked extends TargetPart {
  /** Flake that is to be seen in it. */
  readonly flakes?: readonly WantedFlake[];
  /** Plastic of its cup, and how much, ml; unset: that of the question. */
  readonly plastic?: string;
  readonly plasticMl?: number;
}

/** What a cup is begun with. */
export interface CupBegun {
  readonly plastic: string;
  readonly plasticMl: number;
}

/** What the cup of each part is begun with. */
export function cupsBegun({
  parts,
  ...usual
}: Pick<FirstRecipeQuestion, 'parts' | keyof CupBegun>): readonly CupBegun[] {
  return parts.map(({ plastic = usual.plastic, plasticMl = usual.plasticMl }) => ({ plastic, plasticMl }));
}

/** A target that is to be made from plain plastic. */
export interface FirstRecipeQuestion {
  /**
   * One: a solid bait, or one side of a laminate the other side of which there is already (`behind`). Two: the sides of a laminate
   * as they are seen in the finished bait, each with the other behind it, and each through half of its thickness.
   */
  readonly parts: readonly PartAsked[];
  /** The mold that it is poured in, as far as flake has to get through it. */
  readonly mold?: FlakeWay;
  /** What goes in besides and is not to be changed, such as flake and salt: g per ml of plastic, in every cup. */
  readonly keep?: Amounts;
  /** Plastic of a cup whose part says nothing else, and how much of it, ml. */
  readonly plastic: string;
  readonly plasticMl: number;
  readonly shelf: readonly MatchMaterial[];
  readonly optics: OpticalModel;
  readonly bench: MatchBench;
  readonly tolerance: number;
  readonly limits?: Pick<AdditionLimits, 'inStock' | 'stockShare' | 'effects' | 'without' | 'roomMl'>;
  /** What looks have taught. */
  readonly belief: Beliefs;
  /** Most materials in a cup, flake apart; unset: 4. */
  readonly most?: number;
  /** A match that is under way is to be finished with it, and no bottle tried. */
  readonly finishes?: true;
  /** Proposals wanted; unset: 3. */
  readonly proposals?: number;
}
