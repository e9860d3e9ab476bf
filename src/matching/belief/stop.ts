/**
 * When a cup is left as it is: what is believed of it decides, and what the best step promises.
 *
 * @packageDocumentation
 */
import { defined } from '../../values/defined.ts';
import { type Expectation, isLikelyRight } from './expectation.ts';

/** What would tell more, where what is left is within the doubts: looks at the target, or at the cup. */
export type TellsMore = 'target' | 'cup';

/** Why a cup is left as it is. */
export type Left =
  /** It is within tolerance by all that is believed of it. */
  | { readonly because: 'likely-right' }
  /** What is left is no more than the doubts of the target and of the cup. */
  | {
      readonly because: 'as-near-as-looks-tell';
      readonly tells: TellsMore;
      /** As of `Reach`, where the target is what would tell more. */
      readonly ofThree?: number;
    }
  /** No step gains what it costs; it, or a new cup, may be within tolerance. */
  | { readonly because: 'no-step-helps' };

/** Why nothing more is done to a cup. */
export type Stop =
  | Left
  /** No step gains what it costs, and nothing on the shelf is within tolerance for sure. */
  | { readonly because: 'out-of-reach' };

/** A cup as it is believed to be. */
export interface CupBelieved extends Reach {
  readonly now: Expectation;
}

/** How far a colour is believed to be from its target, beside the doubts of both. */
export interface Reach {
  /** Doubts, ΔE00, one standard deviation along an axis: of the target, and of the cup in its vaguer view. */
  readonly targetSd: number;
  readonly cupSd: number;
  /** The doubt to write for the mean of three photos of the target: see `doubtOfThree`. */
  readonly ofThree?: number;
  /** Whether, in every view, what is left is no more than one standard deviation of those doubts. */
  readonly isAsNear: boolean;
  /** Whether, in every view, what is left is no more than nine in ten of those doubts. */
  readonly isWithinDoubt: boolean;
  /** Whether the doubts allow it to be within tolerance, in every view. */
  readonly mayBeRight: boolean;
}

/** Whether something is right already; undefined where it is not, and a step is to be looked for. */
export function rightAlready({ now }: Pick<CupBelieved, 'now'>): Left | undefined {
  return isLikelyRight(now) ? { because: 'likely-right' } : undefined;
}

/** What nobody sees between two looks, ΔE00: half of what is just noticeable. Convention of this book. */
const SAME_LOOK = 0.5;

/**
 * Whether a cup that was looked at is to be left as it is, whatever could be added; undefined where a step is to be looked for.
 *
 * @param apart how far its look is from that at the target, ΔE00, in every view that the target has; undefined where one was not seen
 */
export function leftAsSeen(cup: CupBelieved, apart?: number): Left | undefined {
  const looksTheSame = apart !== undefined && apart < SAME_LOOK;
  return rightAlready(cup) ?? (cup.isAsNear || looksTheSame ? asNear(cup) : undefined);
}

function asNear({ targetSd, cupSd, ofThree }: Reach): Left {
  const because = 'as-near-as-looks-tell';
  return targetSd >= cupSd ? { because, tells: 'target', ...defined({ ofThree }) } : { because, tells: 'cup' };
}

/** Why a cup is left as it is where no step gains what it costs. */
export function stopWithoutStep(reach: Reach): Stop {
  if (reach.isWithinDoubt) return asNear(reach);
  return { because: reach.mayBeRight ? 'no-step-helps' : 'out-of-reach' };
}

/** A step must lower the expected ΔE00 by this, or it is not worth lighting the stove for. Convention of this book. */
export const LEAST_STEP = 0.25;

/** What one more heat costs the flake in a cup, which dulls and bleeds with each: as much as this ΔE00 of its colour. Convention of this book. */
export const FLAKE_HEAT = 0.5;

/** What a step must lower the expected ΔE00 by. */
export function leastGain(step: { readonly heatsFlake: boolean }): number {
  return step.heatsFlake ? Math.max(LEAST_STEP, FLAKE_HEAT) : LEAST_STEP;
}
