import { isReversed } from '../../matching/target/target-part.ts';
import type { TargetColour } from '../../recipe/colour-fields.ts';
import type { FieldPath } from '../../recipe/field-path.ts';
import type { Thing } from '../../recipe/read-thing.ts';
import type { Report } from '../report.ts';
import type { ChipSpec } from './chip-spec.ts';
import type { CupSpec } from './cup-specs.ts';
import type { FilledCup } from './fill-cup.ts';
import { seenByDaylight } from './seen-colour.ts';
import { unloggedIn } from './unlogged-in.ts';

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
    fix: 'swap the two, or look again',
  });
}

/** Reports a look that differs from the one before by more than two test pours of a cup can, with nothing between that went in. */
export function checkUnlogged(
  cup: Pick<FilledCup<CupSpec | ChipSpec>, 'spec' | 'rounds' | 'places'>,
  report: Report,
): void {
  const { spec, places } = cup;
  for (const { round, move } of unloggedIn(cup)) {
    report.add('seen/unlogged', spec.recipe, [...spec.path, 'log', places[round.looked!]!, 'seen'], {
      found: `colour that is ΔE ${move.deltaE.toFixed(1)} from the look before it, and nothing that went in between`,
      expected: 'what went in before this pour, under `add` or `plastic`',
      why: 'two test pours of one cup differ by less, and what is not written down is in no recipe',
      fix: 'write `add: { … }` with what went in before this pour; if nothing did, write `add: {}`',
    });
  }
}
