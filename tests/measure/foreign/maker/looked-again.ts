import type { NextAddition } from '../../../../src/matching/next-addition.ts';
import type { LoggedStep } from '../book/log-text.ts';
import { lookFields } from '../book/look-fields.ts';
import type { SeenPair } from '../physics/eye.ts';
import { noted } from '../world/eye-noise.ts';
import type { Bench } from './course.ts';

/**
 * A step whose test pour its maker has photographed once more, where the book says that this would tell more; undefined where it says no such
 * thing, or it was done.
 *
 * @param at what is really looked at
 */
export function lookedAgain(
  { advice }: Pick<NextAddition, 'advice'>,
  step: LoggedStep,
  at: SeenPair,
  { condition, camera, chance }: Pick<Bench, 'condition' | 'camera' | 'chance'>,
): LoggedStep | undefined {
  const isTold = 'tells' in advice && advice.tells === 'cup';
  if (!condition.morePhotos || !isTold || step.seen.length > 1) return undefined;
  return { ...step, seen: [...step.seen, lookFields(noted(at, camera, chance), condition)] };
}
