import type { CupFields } from '../cups/cup-specs.ts';
import type { Things } from '../read/read-things.ts';

/** Materials on the shelf that no recipe and no chip names: one of them may be what a name that is not there is called now. */
export function unusedMaterials({ materials, cuts, recipes, chips, faulty }: Things): ReadonlySet<string> {
  const named = new Set([
    ...[...recipes.values(), ...faulty.partsOf('recipe')].flatMap(({ fields }) =>
      Object.values(fields.cups ?? {}).flatMap(namesInCup),
    ),
    ...[...chips.values(), ...faulty.partsOf('chip')].flatMap(({ fields }) => namesInCup(fields)),
    ...[...cuts.values()].flatMap(({ fields: { cut } }) => [cut.of, cut.with]),
  ]);
  return new Set(
    [...materials.values(), ...cuts.values()].flatMap(({ id, kind }) =>
      kind === 'plastic' || named.has(id) ? [] : [id],
    ),
  );
}

type NamingFields = Omit<CupFields, 'share'>;

/** Names of all materials in a cup, but for its plastic. What was read of a file never changes. */
export function namesInCup(fields: NamingFields): readonly string[] {
  const known = named.get(fields);
  if (known) return known;
  const { add = {}, set = {}, without = [], log = [] } = fields;
  const names = [...[add, set, ...log.map((step) => step.add ?? {})].flatMap(Object.keys), ...without];
  named.set(fields, names);
  return names;
}

const named = new WeakMap<NamingFields, readonly string[]>();
