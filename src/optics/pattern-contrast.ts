/**
 * Whether two cups make a pattern: how they differ as they would be seen in it.
 */
import { LAMINATE_SHINES_THROUGH, STREAK_THICKNESS, SWIRL_SHOWS } from '../tables/patterns.ts';
import { type AppearanceOptions, appearance, type ComputedAppearance } from './appearance.ts';
import { deltaE00 } from './delta-e00.ts';
import type { Body, Layer } from './stack.ts';

/** Two cups against each other. All ΔE00, the lesser of over white and over black. */
export interface PatternContrast {
  /** Each cup by itself, at the bait's thickness. */
  readonly apart: number;
  /** A streak of each in the other. */
  readonly swirl: number;
  /** The two sides of a laminate of equal halves, each seen through the other. */
  readonly laminate: number;
  /** How far the two sides of that laminate are from their cups alone: why a side changes hue. */
  readonly shift: readonly [number, number];
  /** What the two suit: common practice, by the limits in `tables/patterns.ts`. */
  readonly suits: { readonly swirl: boolean; readonly laminate: boolean };
}

/** How the pattern is looked at. */
export interface PatternOptions extends AppearanceOptions {
  /** mm; unset: 2 (common practice, no source). Thinner than the bait. */
  readonly streak?: number;
}

/**
 * How two cups differ in a swirl and in a laminate.
 *
 * Throws: RangeError if the streak is not between 0 and the bait's thickness, or as `appearance`.
 */
export function patternContrast(one: Body, other: Body, options: PatternOptions): PatternContrast {
  const { thickness, streak = Math.min(STREAK_THICKNESS, thickness / 2) } = options;
  if (!(streak > 0 && streak < thickness)) {
    throw new RangeError(`Streak is ${streak} mm in a bait of ${thickness} mm; give a thickness between the two`);
  }
  const over = (near: Body, far: Body, depth: number): ComputedAppearance => {
    const layers: Layer[] = [
      { ...near, thickness: depth },
      { ...far, thickness: thickness - depth },
    ];
    return appearance(layers, options);
  };
  const alone = [appearance(one, options), appearance(other, options)] as const;
  const sides = [over(one, other, thickness / 2), over(other, one, thickness / 2)] as const;
  const swirl = difference(over(one, other, streak), over(other, one, streak));
  const half = { ...options, thickness: thickness / 2 };
  const thin = [one, other].some((cup) => appearance(cup, half).contrastRatio <= LAMINATE_SHINES_THROUGH);
  return {
    apart: difference(...alone),
    swirl,
    laminate: difference(...sides),
    shift: [difference(alone[0], sides[0]), difference(alone[1], sides[1])],
    suits: { swirl: swirl >= SWIRL_SHOWS, laminate: thin },
  };
}

function difference(x: ComputedAppearance, y: ComputedAppearance): number {
  return Math.min(deltaE00(x.overWhite.lab, y.overWhite.lab), deltaE00(x.overBlack.lab, y.overBlack.lab));
}
