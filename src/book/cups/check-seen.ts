import { movedBetween } from '../../matching/rounds/unlogged.ts';
import { isReversed, type SeenViews, settledViews } from '../../matching/target/target-part.ts';
import type { TargetColour } from '../../recipe/colour-fields.ts';
import type { FieldPath } from '../../recipe/front-matter.ts';
import type { Thing } from '../../recipe/read-thing.ts';
import type { Report } from '../report.ts';
import { seenByDaylight } from './seen-colour.ts';

/** Reports colours that no bait has: a black card adds no light to what is seen over it. What is within looking's error is opaque: see `settledViews`. */
export function checkSeen(
  seen: { readonly 'over-white'?: TargetColour; readonly 'over-black'?: TargetColour },
  thing: Thing,
  path: FieldPath,
  report: Report,
): void {
  const { 'over-white': white, 'over-black': black } = seen;
  if (white === undefined || black === undefined) return;
  const [overWhite, overBlack] = [seenByDaylight(white), seenByDaylight(black)];
  if (!isReversed({ overWhite: overWhite.lab, overBlack: overBlack.lab })) return;
  report.add('seen/reversed', thing, [...path, 'over-black'], {
    found: `${overBlack.hex} over black, lighter than ${overWhite.hex} over white`,
    expected: 'a colour over black that is as dark as over white, or darker',
    why: 'a white card throws light back through the bait, a black one none',
    fix: 'change the two over, or look again',
  });
}

type Looked = Parameters<typeof checkSeen>[0];

/** Reports a look that differs from the one before by more than two test pours of a cup can, with nothing between that went in. */
export function checkUnlogged(
  log: readonly { readonly add?: object; readonly plastic?: object; readonly seen?: Looked }[],
  thing: Thing,
  path: FieldPath,
  report: Report,
): void {
  let before: SeenViews | undefined;
  for (const [index, { add, plastic, seen = {} }] of log.entries()) {
    if (add !== undefined || plastic !== undefined) before = undefined;
    const now = looked(seen);
    const move = before && !isReversed(now) && movedBetween(before, now);
    if (move) {
      report.add('seen/unlogged', thing, [...path, index, 'seen'], {
        found: `colour that is ΔE ${move.deltaE.toFixed(1)} from the look before it, and nothing that went in between`,
        expected: 'what went in before this pour, under `add` or `plastic`',
        why: 'two test pours of one cup differ by less, and what is not written down is in no recipe',
        fix: 'write `add: { … }` with what went in before this pour; if nothing did, write `add: {}`',
      });
    }
    // A look may be written down in two steps, one view each; one that cannot be says nothing of the next.
    before = isReversed(now) ? undefined : { ...before, ...now };
  }
}

function looked({ 'over-white': white, 'over-black': black }: Looked): SeenViews {
  return settledViews({
    ...(white === undefined ? {} : { overWhite: seenByDaylight(white).lab }),
    ...(black === undefined ? {} : { overBlack: seenByDaylight(black).lab }),
  });
}
