import type { MatchedRound } from '../../book/model/target.ts';
import type { ChipColours } from '../../render/swatch/chip.ts';
import type { CupAdvice } from './ask.ts';
import type { CupDraft } from './drafts.ts';
import type { Work, WorkCup, WorkSide } from './work.ts';

/** All that is known of a cup. */
export interface CupShown {
  readonly index: number;
  readonly work: Work;
  readonly cup: WorkCup;
  readonly side: WorkSide;
  readonly advice: CupAdvice;
  /** What it looks like now, as the target was seen: seen, or else predicted; absent where it is empty. */
  readonly look?: ChipColours;
  /** What a test pour of it should look like, where that is not how the target was seen. */
  readonly alone?: ChipColours;
  readonly rounds: readonly MatchedRound[];
  readonly draft: CupDraft;
}
