import { nearestFix } from '../../diagnostics/nearest-name.ts';
import type { FieldPath } from '../../recipe/field-path.ts';
import type { Thing } from '../../recipe/read-thing.ts';
import { defined } from '../../values/defined.ts';
import { checkSeen } from '../cups/check-seen.ts';
import type { FilledCup } from '../cups/fill-cup.ts';
import type { BaitLook } from '../model/looks.ts';
import type { Finding, Report } from '../report.ts';
import { compileLook } from './compile-look.ts';

type Cups = readonly { readonly name: string; readonly rounds: number }[];

/** The looks at a recipe's finished bait. Cups and rounds that it does not have are reported. */
export function baitLooks(
  recipe: Thing<'recipe'>,
  filled: readonly FilledCup[],
  report: Report,
): readonly BaitLook[] | undefined {
  const cups = filled.map(({ spec, rounds }) => ({ name: spec.name, rounds: rounds.length }));
  return recipe.fields.seen?.map((fields, index): BaitLook => {
    const { side, rounds } = fields;
    const at = ['seen', index];
    checkSeen(fields, recipe, at, report);
    if (side !== undefined) checkCup(side, [...at, 'side'], 'value', cups, recipe, report);
    for (const [cup, round] of Object.entries(rounds ?? {})) {
      const found = checkCup(cup, [...at, 'rounds', cup], 'key', cups, recipe, report);
      if (found && round > found.rounds) {
        report.add('seen/unknown-round', recipe, [...at, 'rounds', cup], noSuchRound(found, round));
      }
    }
    return {
      ...compileLook(fields),
      ...defined({ side, rounds: rounds && Object.entries(rounds).map(([cup, number]) => ({ cup, number })) }),
    };
  });
}

/** The cup of a name; undefined, and reported, where there is none. */
function checkCup(
  name: string,
  path: FieldPath,
  part: 'key' | 'value',
  cups: Cups,
  recipe: Thing,
  report: Report,
): Cups[number] | undefined {
  const found = cups.find((cup) => cup.name === name);
  if (found) return found;
  const names = cups.map((cup) => cup.name);
  const finding = {
    found: `cup \`${name}\``,
    expected: `${names.length > 1 ? 'one of ' : ''}${names.map((each) => `\`${each}\``).join(', ')}`,
    why: 'a look at a bait names the cups of its recipe',
    ...(nearestFix(name, names) ?? { fix: `write ${names.map((each) => `\`${each}\``).join(' or ')}, or remove it` }),
  };
  report.add('seen/unknown-cup', recipe, path, finding, part);
  return undefined;
}

function noSuchRound({ name, rounds }: Cups[number], round: number): Finding {
  const found = `round ${round} of \`${name}\``;
  if (rounds === 0) {
    const why = `\`${name}\` has no log, and so no rounds`;
    return { found, expected: 'a cup with a log', why, fix: `remove \`${name}\`, or write its \`log\`` };
  }
  return {
    found,
    expected: `a round from 1 to ${rounds}`,
    why: `the log of \`${name}\` has ${rounds === 1 ? 'one round' : `${rounds} rounds`}`,
    fix: `write \`${rounds}\`, or add what is missing to the log`,
  };
}
