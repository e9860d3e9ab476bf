import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { reachOf } from '../../src/matching/belief/expecting.ts';
import {
  FLAKE_HEAT,
  LEAST_STEP,
  leastGain,
  leftAsSeen,
  type Reach,
  rightAlready,
  stopWithoutStep,
} from '../../src/matching/belief/stop.ts';
import { deltaE00 } from '../../src/optics/delta-e00.ts';

const FAR: Reach = { targetSd: 0.3, cupSd: 0.3, isAsNear: false, isWithinDoubt: false, mayBeRight: false };

describe('when a cup is left as it is', () => {
  test('from a belief of 85 % on that it is within tolerance', () => {
    expect(rightAlready({ now: { expected: 1.2, bound90: 2, likely: 0.85 } })).toEqual({ because: 'likely-right' });
    expect(rightAlready({ now: { expected: 1.2, bound90: 2, likely: 0.849 } })).toBeUndefined();
  });

  test('where no step helps, and what is left is within the doubts: what would tell more is of the vaguer of the two', () => {
    const near = { ...FAR, isWithinDoubt: true, mayBeRight: true };
    expect(stopWithoutStep({ ...near, targetSd: 2 })).toEqual({ because: 'as-near-as-looks-tell', tells: 'target' });
    expect(stopWithoutStep({ ...near, cupSd: 2 })).toEqual({ because: 'as-near-as-looks-tell', tells: 'cup' });
  });

  test('where what is left is within one standard deviation of the doubts, whatever a step promises', () => {
    const now = { expected: 3.4, bound90: 5, likely: 0.2 };
    expect(leftAsSeen({ ...FAR, now })).toBeUndefined();
    expect(leftAsSeen({ ...FAR, now, isWithinDoubt: true })).toBeUndefined();
    expect(leftAsSeen({ ...FAR, now, isAsNear: true })).toEqual({ because: 'as-near-as-looks-tell', tells: 'target' });
    expect(leftAsSeen({ ...FAR, now: { ...now, likely: 0.9 } })).toEqual({ because: 'likely-right' });
  });

  test('where nobody sees a difference to its target, whatever is believed', () => {
    const now = { expected: 2.9, bound90: 3.8, likely: 0.1 };
    expect(leftAsSeen({ ...FAR, now }, 0.49)).toEqual({ because: 'as-near-as-looks-tell', tells: 'target' });
    expect(leftAsSeen({ ...FAR, now }, 0.5)).toBeUndefined();
  });

  test('where no step helps: out of reach only where the doubts do not allow it', () => {
    expect(stopWithoutStep(FAR)).toEqual({ because: 'out-of-reach' });
    expect(stopWithoutStep({ ...FAR, mayBeRight: true })).toEqual({ because: 'no-step-helps' });
  });

  test('reachOf(…) is by view: a doubt over black excuses nothing over white', () => {
    const grey = { L: 50, a: 0, b: 0 };
    const target = { name: 'body', overWhite: { ...grey, L: 55 }, overBlack: grey, thicknessMm: 6 };
    const covariance = new Float64Array(36);
    const believed = { overWhite: grey, overBlack: grey, covariance, looks: 0 };
    expect(reachOf(believed, target, 2)).toEqual({ ...FAR, targetSd: 0, cupSd: 0 });
    for (const i of [3, 4, 5]) covariance[7 * i] = 100;
    expect(reachOf(believed, target, 2).mayBeRight).toBe(false);
    for (const i of [0, 1, 2]) covariance[7 * i] = 4;
    expect(reachOf(believed, target, 2)).toMatchObject({ isWithinDoubt: true, mayBeRight: true, cupSd: 10 });
    expect(reachOf({ ...believed, covariance: new Float64Array(36) }, { ...target, axisSd: 2 }, 2).mayBeRight).toBe(
      true,
    );
  });

  test('reachOf(…) where nothing is in doubt is what the tolerance says', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 10, noNaN: true }), (off) => {
        const grey = { L: 50, a: 0, b: 0 };
        const target = { name: 'body', overWhite: { ...grey, L: 50 + off }, thicknessMm: 6 };
        const believed = { overWhite: grey, overBlack: grey, covariance: new Float64Array(36), looks: 0 };
        expect(reachOf(believed, target, 2).mayBeRight).toBe(deltaE00(target.overWhite, grey) <= 2);
      }),
    );
  });

  test('a step into a cup with flake must gain what one more heat costs the flake', () => {
    expect(leastGain({ heatsFlake: false })).toBe(LEAST_STEP);
    expect(leastGain({ heatsFlake: true })).toBe(FLAKE_HEAT);
    expect(FLAKE_HEAT).toBeGreaterThan(LEAST_STEP);
  });
});
