import { LIKELY_RIGHT } from '../conventions.ts';

/** What is to be expected of a colour beside its target, with all that is in doubt of both, in the view that is further off. */
export interface Expectation {
  /** Mean ΔE00. */
  readonly expected: number;
  /** Nine in ten come out within this ΔE00. */
  readonly bound90: number;
  /** Belief that it is within tolerance, 0 to 1. */
  readonly likely: number;
}

/** Whether a colour is right by all that is believed of it. */
export function isLikelyRight({ likely }: Pick<Expectation, 'likely'>): boolean {
  return likely >= LIKELY_RIGHT;
}

/** Of something that has an expectation that alone. */
export function expectationIn({ expected, bound90, likely }: Expectation): Expectation {
  return { expected, bound90, likely };
}
