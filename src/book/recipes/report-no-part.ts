import type { Thing } from '../../recipe/read-thing.ts';
import type { Recipe } from '../model/recipe.ts';
import type { Target } from '../model/target.ts';
import type { Report } from '../report.ts';

/** Says that a recipe's target cannot be compared with any of its cups, and how the target's file names them. */
export function reportNoPart(
  thing: Thing<'recipe'>,
  { cups }: Pick<Recipe, 'cups'>,
  target: Pick<Target, 'id' | 'title' | 'parts'>,
  report: Report,
): void {
  const names = cups.map(({ name }) => name);
  const [only] = target.parts;
  const oneColour = target.parts.length === 1 && only !== undefined;
  const colours = oneColour
    ? `over-white: "${only.overWhite.hex}"${only.overBlack ? `, over-black: "${only.overBlack.hex}"` : ''}`
    : '…';
  const found = oneColour
    ? `target \`${target.id}\` of one colour for ${names.length} cups`
    : `target \`${target.id}\` with parts ${quoted(target.parts.map(({ name }) => name))}`;
  report.add('recipe/no-part', thing, ['for'], {
    found,
    expected: `a target with a part for one of the cups ${quoted(names)}`,
    why: 'each cup is compared with the part that has its name',
    fix: `write in targets/${target.id}.md, in place of its colour, a part for each cup that you know: \`parts: { ${names[0]}: { ${colours} } }\``,
  });
}

/**
 * Says that a part of a target has the name of no cup, where a cup has the name of no part: one of the two is misnamed, and the cup would be
 * passed over without a word.
 */
export function reportStrayPart(
  thing: Thing<'recipe'>,
  { cups }: Pick<Recipe, 'cups'>,
  target: Pick<Target, 'id' | 'parts'>,
  report: Report,
): void {
  const names = cups.map(({ name }) => name);
  const parts = target.parts.map(({ name }) => name);
  const alone = names.filter((name) => !parts.includes(name));
  const stray = parts.filter((name) => !names.includes(name));
  const [part] = stray;
  if (part === undefined || alone.length === 0) return;
  const one = alone.length === 1 && stray.length === 1;
  report.add('recipe/no-part', thing, ['for'], {
    found: `target \`${target.id}\` with ${one ? 'the part' : 'parts'} ${quoted(stray)}, and no cup of that name`,
    expected: `a part for each of the cups ${quoted(alone)}, or none`,
    why: 'each cup is compared with the part that has its name',
    fix: one
      ? `write \`${alone[0]}\` in place of \`${part}\` in targets/${target.id}.md`
      : `give the parts in targets/${target.id}.md the names of the cups`,
  });
}

function quoted(names: readonly string[]): string {
  return names.map((name) => `\`${name}\``).join(', ');
}
