import type { SeenViews, TargetPart } from '../target/target-part.ts';
import type { Verdict } from '../target/verdict.ts';
import { differenceText } from '../words.ts';
import type { ModelCorrection } from './correct-model.ts';

/** How far what is predicted of a cup may be trusted, by what was seen of it. */
export interface Reckoning {
  /** Whether the corrected model makes of the cup what was seen of it, in every view of the target. */
  readonly agrees: boolean;
  /** ΔE00 below which a prediction is surely nearer than the cup is: than it was seen, less what the model missed that by; than it is predicted, where half a look is right. */
  readonly below: number;
  /** Whether it is within tolerance: as it was seen, and by the corrected model where it was looked at over one backing alone. */
  readonly isDone: boolean;
  /** For the maker, to stand before all else: what does not agree, and what to do; else nothing. */
  readonly caution: string;
  /** From which ΔE all is reckoned, where that is not what was seen; else nothing. */
  readonly words: string;
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
  const by = `ΔE ${differenceText(correction.miss)}`;
  const caution =
    misses && !correction.checked
      ? `What was seen last does not agree with the shelf: it is ${by} from all that the rounds can make of it. Look at a test pour again, by daylight, and note the round anew; see that the log says what went in. What is predicted may be off by as much. `
      : isBlind
        ? `What it looks like over ${unseen} was not noted, and is ΔE ${differenceText(predictedDeltaE)} off by the corrected model: look, and note it. `
        : '';
  const words =
    differs && caution === ''
      ? ` As seen, the cup is ΔE ${differenceText(now.deltaE)} off; the corrected model has it at ΔE ${differenceText(predictedDeltaE)}, and what is left is reckoned from that.`
      : '';
  const isDone = now.within && !(isBlind && predictedDeltaE > tolerance);
  return { agrees: caution === '', isDone, below, caution, words };
}
