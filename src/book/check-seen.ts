import { isReversed } from '../matching/target-part.ts';
import type { TargetColour } from '../recipe/colour-fields.ts';
import type { FieldPath } from '../recipe/front-matter.ts';
import type { Thing } from '../recipe/read-thing.ts';
import type { Report } from './report.ts';
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
