import { nearestFileFix } from '../../diagnostics/nearest-name.ts';
import type { FieldPath } from '../../recipe/field-path.ts';
import type { Thing } from '../../recipe/read-thing.ts';
import { namesThere } from '../../recipe/reference-fix.ts';
import type { Things } from '../read/read-things.ts';
import type { Report } from '../report.ts';

/** Reports names of molds, targets and targets' plastics that have no file. */
export function checkReferences(things: Things, report: Report): void {
  const check = (
    thing: Thing,
    field: string,
    id: string | undefined,
    kind: 'mold' | 'target',
    known: ReadonlyMap<string, unknown>,
  ): void => {
    if (id === undefined || known.has(id) || things.faulty.has(kind, id)) return;
    const folder = `${kind}s`;
    report.add(kind === 'mold' ? 'recipe/unknown-mold' : 'recipe/unknown-target', thing, [field], {
      found: `${kind} \`${id}\``,
      expected: `the name of a file in ${folder}/${namesThere([...known.keys()])}`,
      ...nearestFileFix(
        id,
        [...known.keys(), ...things.faulty.namesOf((other) => other === kind)],
        `create ${folder}/${id}.md`,
      ),
    });
  };
  for (const recipe of [...things.recipes.values(), ...things.faulty.partsOf('recipe')]) {
    check(recipe, 'mold', recipe.fields.mold, 'mold', things.molds);
    check(recipe, 'for', recipe.fields.for, 'target', things.targets);
  }
  for (const target of [...things.targets.values(), ...things.faulty.partsOf('target')]) {
    check(target, 'mold', target.fields.mold, 'mold', things.molds);
    for (const { path, id } of plasticsOfTarget(target)) checkPlastic(target, path, id, things, report);
  }
}

/** The plastics that a target names, and where. */
export function plasticsOfTarget({
  fields: { plastic, parts = {} },
}: Thing<'target'>): readonly { readonly path: FieldPath; readonly id: string }[] {
  const named = Object.entries(parts).map(([name, part]) => ({ path: ['parts', name, 'plastic'], id: part?.plastic }));
  return [{ path: ['plastic'], id: plastic }, ...named].flatMap(({ path, id }) =>
    id === undefined ? [] : [{ path, id }],
  );
}

function checkPlastic(target: Thing, path: FieldPath, id: string, { materials, faulty }: Things, report: Report): void {
  if (materials.get(id)?.kind === 'plastic' || faulty.has('plastic', id)) return;
  const plastics = [...materials.values()].filter(({ kind }) => kind === 'plastic').map((each) => each.id);
  report.add('target/unknown-plastic', target, path, {
    found: `plastic \`${id}\``,
    expected: `the name of a file in shelf/plastics/${namesThere(plastics)}`,
    ...nearestFileFix(
      id,
      [...plastics, ...faulty.namesOf((kind) => kind === 'plastic')],
      `create shelf/plastics/${id}.md`,
    ),
  });
}
