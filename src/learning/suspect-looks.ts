import type { GroupTest } from './group-tests.ts';
import type { HeldLooks } from './held-looks.ts';

/** What is as unlike the rest as this is told: from our own study on simulated benches, where one true look in a hundred was. */
export const CANNOT_BE = 1e-6;

/** Looks at one cup that do not fit: places in its block, rising. */
export interface SuspectLooks {
  readonly items: readonly number[];
  readonly p: number;
}

// A look that is not at what was logged is off by this, ΔE00 along each axis: about what two cups of a bench differ by.
const ELSEWHERE_SD = 12;

// Looks at one cup with a false log are off by nearly the same: this part of the variance they have in common.
const IN_COMMON = 0.9;

// A second fault in one cup has to make its looks so many times as likely.
const ANOTHER = Math.log(1e6);

/**
 * Which looks of a cup are false: single ones, or all from some round on.
 *
 * Every test that fails would do. Chosen are those that make the looks of the cup together the likeliest, one after the other, if what they
 * are about is thought to be elsewhere among colours.
 *
 * @param tests those of the cup
 */
export function suspectLooks(held: HeldLooks, tests: readonly GroupTest[]): readonly SuspectLooks[] {
  const looks = held.block.looks;
  const failed = tests.flatMap((test): SuspectLooks[] => {
    if (test.p >= CANNOT_BE) return [];
    const items = looks.flatMap(({ key, round }, i) =>
      (test.kind === 'look' && test.key === key) || (test.kind === 'cup' && test.round <= round) ? i : [],
    );
    return items.some((i) => looks[i]!.checked) ? [] : [{ items, p: test.p }];
  });
  const chosen: SuspectLooks[] = [];
  let before = Number.NEGATIVE_INFINITY;
  while (true) {
    const left = failed.filter(({ items }) => !chosen.some((other) => other.items.some((i) => items.includes(i))));
    let best: SuspectLooks | undefined;
    let likeliest = before + (chosen.length > 0 ? ANOTHER : 0);
    for (const each of left) {
      const density = held.logDensity(elsewhere([...chosen, each]));
      if (density <= likeliest) continue;
      likeliest = density;
      best = each;
    }
    if (!best) break;
    chosen.push(best);
    before = likeliest;
  }
  return chosen.sort((one, other) => one.items[0]! - other.items[0]!);
}

/** What is added to the covariance of two looks along each axis. */
function elsewhere(suspects: readonly SuspectLooks[]): (one: number, other: number) => number {
  return (one, other) => {
    if (!suspects.some(({ items }) => items.includes(one) && items.includes(other))) return 0;
    return ELSEWHERE_SD * ELSEWHERE_SD * (one === other ? 1 : IN_COMMON);
  };
}

/** One look of a cup is at something else. */
export function lookedElsewhere(item: number): (one: number, other: number) => number {
  return elsewhere([{ items: [item], p: 0 }]);
}
