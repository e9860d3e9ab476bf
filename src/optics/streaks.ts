/**
 * What lies behind a streak: cups that are poured together run in streaks, which end in the depth of a bait as they do across.
 *
 * A line of sight is taken in two halves. Each half is of a cup as often as is the cup's share; both are of one because one streak goes through
 * both, e^(−thickness/width) of the time, and else whatever each happens to be of. A convention of this book: a thin tail shows its cups side by
 * side, and in a deep body one shines through the other.
 *
 * @packageDocumentation
 */
import { STREAK_THICKNESS } from '../tables/patterns.ts';

/** What an eye looks through at a part of a bait in streaks. */
export interface StreakColumn {
  /** Cups by their places, the near one first, and their parts of the thickness. */
  readonly runs: readonly { readonly cup: number; readonly part: number }[];
  /** Part of the face, above 0; 1 together. */
  readonly share: number;
}

/**
 * How often both halves of the thickness are of one cup because one streak goes through both.
 *
 * Units: mm; width of a streak unset: 2.
 *
 * @example sameCupBehind(0, 2) // 1
 */
export function sameCupBehind(thicknessMm: number, streakMm: number = STREAK_THICKNESS): number {
  return Math.exp(-thicknessMm / streakMm);
}

/**
 * All that an eye looks through in a bait of cups in streaks: each cup alone, and each over each other.
 *
 * Shape: shares of the cups, 1 together. Units: mm; width of a streak unset: 2.
 *
 * @example streakColumns([0.5, 0.5], 0).map(({ share }) => share) // [0.5, 0.5]
 */
export function streakColumns(
  shares: readonly number[],
  thicknessMm: number,
  streakMm?: number,
): readonly StreakColumn[] {
  const same = sameCupBehind(thicknessMm, streakMm);
  return shares
    .flatMap((share, cup) =>
      shares.map(
        (other, behind): StreakColumn =>
          cup === behind
            ? { runs: [{ cup, part: 1 }], share: share * (same + (1 - same) * share) }
            : {
                runs: [
                  { cup, part: 0.5 },
                  { cup: behind, part: 0.5 },
                ],
                share: (1 - same) * share * other,
              },
      ),
    )
    .filter(({ share }) => share > 0);
}
