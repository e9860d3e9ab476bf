import { deltaE00 } from '../optics/delta-e00.ts';
import { beliefParts } from './belief-parts.ts';
import { type GroupTest, lookTests } from './group-tests.ts';
import { type HeldAgainst, HeldLooks } from './held-looks.ts';
import type { LearnedShelf } from './learned-shelf.ts';
import { likelySlips } from './likely-slips.ts';
import type { LogFault } from './log-fault.ts';
import { sharedVariance } from './look-covariance.ts';
import { type CupBlock, shelfProblem } from './shelf-problem.ts';
import { CANNOT_BE, suspectLooks } from './suspect-looks.ts';
import { withoutCup } from './without-cup.ts';

/**
 * Logs that cannot be right, by cup and round, and what may have gone wrong in each: the cup is left out of all that is learned, and its
 * looks are held against the rest as they are logged, and as they would be after every slip that is thought of.
 *
 * A look that was checked is never at fault, nor the log up to there.
 *
 * @param only the cup that is asked about; unset: all
 */
export function logFaults(shelf: LearnedShelf, only?: string): readonly LogFault[] {
  const testsOf = new Map<string, GroupTest[]>();
  const cupOf = new Map(shelf.data.looks.map(({ key, cup }) => [key, cup]));
  for (const test of lookTests(shelf)) {
    if (test.kind === 'label') continue;
    const cup = test.kind === 'cup' ? test.cup : cupOf.get(test.key)!;
    if (only !== undefined && cup !== only) continue;
    testsOf.set(cup, [...(testsOf.get(cup) ?? []), test]);
  }
  const failed = new Map([...testsOf].filter(([, tests]) => tests.some(({ p }) => p < CANNOT_BE)));
  if (failed.size === 0) return [];
  const parts = beliefParts(shelf);
  return shelfProblem(shelf.data).cups.flatMap((block) => {
    const tests = failed.get(block.cup);
    return tests
      ? faultsOfCup(
          shelf,
          block,
          tests,
          withoutCup(parts, block.cup, (one, other) => sharedVariance(one.errors, other.errors)),
        )
      : [];
  });
}

function faultsOfCup(
  shelf: LearnedShelf,
  block: CupBlock,
  tests: readonly GroupTest[],
  { state, looker, doubt }: ReturnType<typeof withoutCup>,
): readonly LogFault[] {
  const against: HeldAgainst = { state, looker, doubt: doubt() };
  const held = new HeldLooks(block, against);
  return suspectLooks(held, tests).map(({ items, p }): LogFault => {
    const first = items[0]!;
    const { cup, round } = block.looks[first]!;
    const since = block.looks.findLast((look) => look.round < round)?.round;
    return {
      cup,
      round,
      ...(since === undefined ? {} : { since }),
      looks: items.map((item) => block.looks[item]!.key),
      p: Number(p.toPrecision(2)),
      deltaE: awayFromLog(block, first, against),
      weight: shelf.weights.looks[block.places[first]!]!,
      slips: likelySlips(held, first, against, shelf.data.materials),
    };
  });
}

/** ΔE00, the larger of the views. */
function awayFromLog({ items }: CupBlock, item: number, { state, looker }: HeldAgainst): number {
  const { composition, white, black } = items[item]!;
  const made = looker.views(composition, state, { white: white !== undefined, black: black !== undefined });
  const away = [white && deltaE00(white.lab, made.white!.lab), black && deltaE00(black.lab, made.black!.lab)];
  return Number(Math.max(...away.map((each) => each ?? 0)).toFixed(2));
}
