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

// What is the fault of one look is not to be that of several, ln: where little is known, all of a cup may as well be elsewhere.
const MORE_THAN_ONE = 4;

// A second fault in one cup has to make its looks so many times as likely.
const ANOTHER = Math.log(1e6);

// Where something of a cup cannot be, what is as unlike as this may be what is false: two looks that contradict each other fail together.
const MAY_BE = 1e-3;

/**
 * Which looks of a cup are false, where at least one test of it fails: single ones, or all from some round on.
 *
 * Chosen are those that make the looks of the cup together the likeliest, one after the other, if what is false is thought to be elsewhere
 * among colours.
 *
 * @param tests those of the cup
 */
export function suspectLooks(held: HeldLooks, tests: readonly GroupTest[]): readonly SuspectLooks[] {
  const looks = held.block.looks;
  const checked = Math.max(Number.NEGATIVE_INFINITY, ...looks.flatMap(({ checked, round }) => (checked ? round : [])));
  const unlikely = tests.flatMap((test): SuspectLooks[] => {
    if (test.p >= MAY_BE) return [];
    const items = looks.flatMap(({ key, round }, i) =>
      (test.kind === 'look' && test.key === key) || (test.kind === 'cup' && test.round <= round) ? i : [],
    );
    return looks[items[0]!]!.round <= checked ? [] : [{ items, p: test.p }];
  });
  const chosen: SuspectLooks[] = [];
  let before = Number.NEGATIVE_INFINITY;
  while (true) {
    const left = unlikely.filter(
      (each) => !chosen.some((other) => overlap(each, other)) && (chosen.length === 0 || each.p < CANNOT_BE),
    );
    let best: SuspectLooks | undefined;
    let likeliest = before + (chosen.length > 0 ? ANOTHER : 0);
    for (const each of left) {
      const density = held.logDensity(elsewhere([...chosen, each])) - (each.items.length > 1 ? MORE_THAN_ONE : 0);
      if (density <= likeliest) continue;
      likeliest = density;
      best = each;
    }
    if (!best) break;
    chosen.push(best);
    before = likeliest;
  }
  return chosen
    .map(({ items }) => ({
      items,
      p: Math.min(...unlikely.filter((each) => overlap(each, { items })).map(({ p }) => p)),
    }))
    .filter(({ p }) => p < CANNOT_BE)
    .sort((one, other) => one.items[0]! - other.items[0]!);
}

function overlap({ items }: Pick<SuspectLooks, 'items'>, other: Pick<SuspectLooks, 'items'>): boolean {
  return items.some((item) => other.items.includes(item));
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
