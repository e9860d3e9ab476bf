import { cupKey } from '../cups/cup-specs.ts';
import type { FilledCup } from '../cups/fill-cup.ts';
import type { Report } from '../report.ts';

/** A cup with less than this part of the parent's materials was most likely meant to change it. Convention of this book. */
const KEPT = 0.5;

/**
 * Reports a cup that has the name of one in the recipe that its own comes from, states its own plastic, and so holds little of what
 * is in that one. A cup with a log tells its own story, and is left alone; so is one beside a cup that states its own `from`: whoever wrote
 * that knows how a cup comes from another.
 */
export function checkKept({ spec, contents }: FilledCup, filled: ReadonlyMap<string, FilledCup>, report: Report): void {
  const { recipe, name, path, fields } = spec;
  const { from } = recipe.fields;
  if (from === undefined || spec.from || fields.log) return;
  if (Object.values(recipe.fields.cups ?? {}).some((cup) => cup.from !== undefined)) return;
  const parent = filled.get(cupKey(from, name));
  const before = Object.keys(parent?.contents ?? {});
  const lost = before.filter((material) => !Object.hasOwn(contents, material));
  if (lost.length <= before.length * (1 - KEPT)) return;
  const other = [...filled.values()].find((cup) => cup.spec.recipe.id === from && cup.spec.name !== name)?.spec.name;
  const onPurpose =
    other === undefined
      ? "remove the recipe's `from` if nothing comes from there"
      : `say of another that it does: \`${other}: { from: ${from}/${other} }\``;
  report.add(
    'recipe/begun-anew',
    recipe,
    [...path, 'plastic'],
    {
      found: `cup \`${name}\` without ${lost.map((material) => `\`${material}\``).join(', ')} of ${from}/${name}`,
      expected: `\`from: ${from}/${name}\` beside \`plastic\`, if it comes from that cup`,
      why: 'a cup with plastic of its own starts afresh, and holds only what it lists',
      fix: `add \`from: ${from}/${name}\` to the cup, or ${onPurpose}`,
    },
    'key',
  );
}
