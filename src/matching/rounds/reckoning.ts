import { defined } from '../../values/defined.ts';
import type { SeenViews, TargetPart } from '../target/target-part.ts';
import type { Verdict } from '../target/verdict.ts';
import type { ModelCorrection } from './correct-model.ts';

/** Why what is predicted of a cup is not to be trusted. */
export type Doubt =
  /** The shelf cannot make what was seen last: that is so far from all that the rounds can make of it, ΔE00. */
  | { readonly kind: 'misfit'; readonly deltaE: number }
  /** It was not looked at over one backing, over which the corrected model has it off by so much, ΔE00. */
  | { readonly kind: 'half-seen'; readonly over: 'white' | 'black'; readonly deltaE: number };

/** What a cup is off by as it was seen, and by the corrected model that all proposals are reckoned from, ΔE00. */
export interface SeenAndPredicted {
  readonly seen: number;
  readonly predicted: number;
}

/** How far what is predicted of a cup may be trusted, by what was seen of it. */
export interface Reckoning {
  /** Whether the corrected model makes of the cup what was seen of it, in every view of the target. */
  readonly agrees: boolean;
  /** ΔE00 below which a prediction is surely nearer than the cup is: than it was seen, less what the model missed that by; than it is predicted, where half a look is right. */
  readonly below: number;
  /** Whether it is within tolerance: as it was seen, and by the corrected model where it was looked at over one backing alone. */
  readonly isDone: boolean;
  readonly doubt?: Doubt;
  /** Where the two are so far apart that a reader asks which is meant, and nothing is in doubt. */
  readonly differs?: SeenAndPredicted;
}

/** What a cup is by eye and by the corrected model. */
export interface Reckoned {
  readonly correction: Pick<ModelCorrection, 'miss' | 'checked'>;
  readonly now: Verdict;
  /** ΔE00 that the corrected model gives the cup now. */
  readonly predictedDeltaE: number;
  /** What the cup looks like as it is now; unset: not looked at. */
  readonly seen?: SeenViews | undefined;
  readonly target: TargetPart;
  readonly tolerance: number;
}

// As much as makes a reader ask which of two numbers is meant, ΔE00.
const WORTH_EXPLAINING = 0.5;

/** Sets what the corrected model makes of a cup against what was seen of it. */
export function reckoning({ correction, now, predictedDeltaE, seen, target, tolerance }: Reckoned): Reckoning {
  const misses = correction.miss > tolerance;
  const differs = seen !== undefined && Math.abs(now.deltaE - predictedDeltaE) >= WORTH_EXPLAINING;
  const unseen = seen && (seen.overWhite === undefined ? 'white' : seen.overBlack === undefined ? 'black' : undefined);
  const isLess = predictedDeltaE > now.deltaE && (differs || (now.within && predictedDeltaE > tolerance));
  const isBlind = isLess && unseen !== undefined && target.overBlack !== undefined;
  const asSeen = seen && !(isBlind && now.within) ? now.deltaE - (misses ? correction.miss : 0) : predictedDeltaE;
  const below = Math.min(predictedDeltaE, asSeen);
  const doubt: Doubt | undefined =
    misses && !correction.checked
      ? { kind: 'misfit', deltaE: correction.miss }
      : isBlind
        ? { kind: 'half-seen', over: unseen, deltaE: predictedDeltaE }
        : undefined;
  const isTold = differs && doubt === undefined;
  return {
    agrees: doubt === undefined,
    isDone: now.within && !(isBlind && predictedDeltaE > tolerance),
    below,
    ...defined({ doubt, differs: isTold ? { seen: now.deltaE, predicted: predictedDeltaE } : undefined }),
  };
}
