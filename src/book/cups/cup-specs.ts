import { nearestFileFix, nearestFix, nearestName } from '../../diagnostics/nearest-name.ts';
import { orderByParents } from '../../lineage/order-by-parents.ts';
import { bareName } from '../../recipe/bare-name.ts';
import type { FieldPath } from '../../recipe/field-path.ts';
import type { Thing } from '../../recipe/read-thing.ts';
import { namesThere } from '../../recipe/reference-fix.ts';
import type { FieldsOf } from '../../recipe/schema.ts';
import { slugOf } from '../../recipe/source.ts';
import { required } from '../../values/required.ts';
import { isPartName, misnamedPart } from '../read/part-name.ts';
import type { Things } from '../read/read-things.ts';
import { shareOut } from '../recipes/share-out.ts';
import type { Report } from '../report.ts';

/** The fields of one cup as they stand in a recipe's file. */
export type CupFields = NonNullable<FieldsOf<'recipe'>['cups']>[string];

/** A cup of a recipe and where it comes from, before anything is computed. */
export interface CupSpec {
  readonly recipe: Thing<'recipe'>;
  readonly name: string;
  /** Path of the cup in the recipe's front matter; the whole recipe's for an inherited cup. */
  readonly path: FieldPath;
  /** Empty for a cup that is the parent's, unchanged. */
  readonly fields: CupFields;
  /** Share of the cup of its name in what the recipe is derived from, if one is stated there. */
  readonly inheritedShare?: number;
  readonly from?: { readonly recipe: string; readonly cup: string };
}

/** Key of a cup among all cups of the book. */
export function cupKey(recipe: string, cup: string): string {
  return `${recipe}/${cup}`;
}

/**
 * The cups of every recipe, each with the cup that it comes from, parents before what is derived from them.
 *
 * A recipe that names a parent has the parent's cups, except those that it gives itself. A cup that says neither how much
 * plastic it starts with nor where it comes from is the parent's cup of that name with changes.
 */
export function cupSpecs(
  things: Things,
  report: Report,
): {
  readonly cups: readonly CupSpec[];
  readonly ofRecipe: ReadonlyMap<string, readonly CupSpec[]>;
  /** Cups of files with faults, and cups that come from nowhere, without their origins: to be checked, never to be used. */
  readonly parts: readonly CupSpec[];
} {
  const ofRecipe = new Map<string, readonly CupSpec[]>();
  for (const id of recipesInOrder(things, report)) {
    const recipe = required(things.recipes, id);
    const parent = recipe.fields.from === undefined ? undefined : ofRecipe.get(recipe.fields.from);
    if (recipe.fields.from !== undefined && parent === undefined) continue;
    ofRecipe.set(id, specsOf(recipe, parent ?? []));
    if (required(ofRecipe, id).length === 0) {
      report.add('recipe/no-cups', recipe, [], {
        found: 'recipe without cups',
        expected: '`cups` with at least one cup, or `from` with the recipe that it comes from',
        why: 'a recipe is what is in its cups',
      });
    }
  }

  const specs = new Map(
    [...ofRecipe.values()]
      .flat()
      .map((spec) => [cupKey(spec.recipe.id, spec.name), resolveFrom(spec, ofRecipe, things, report)]),
  );
  const { order, rings } = orderByParents(
    [...specs].flatMap(([id, spec]) =>
      spec ? [{ id, parents: spec.from ? [cupKey(spec.from.recipe, spec.from.cup)] : [] }] : [],
    ),
  );
  for (const ring of rings) {
    const spec = required(specs, ring[0]!);
    report.add('recipe/cycle', spec.recipe, [...spec.path, 'from'], ringFinding(ring));
  }
  const cups = order.map((key) => required(specs, key));
  const sound = new Set(order);
  return {
    cups,
    parts: [
      ...things.faulty.partsOf('recipe').flatMap((recipe) => specsOf(recipe, [])),
      ...[...ofRecipe.values()]
        .flat()
        .filter(({ recipe, name }) => !sound.has(cupKey(recipe.id, name)))
        .map(({ recipe, name, path, fields }): CupSpec => ({ recipe, name, path, fields })),
    ],
    ofRecipe: new Map(
      [...ofRecipe].flatMap(([id, list]) => {
        const kept = list
          .filter((spec) => sound.has(cupKey(id, spec.name)))
          .map((spec) => required(specs, cupKey(id, spec.name)));
        return kept.length === list.length && kept.length > 0 ? [[id, kept] as const] : [];
      }),
    ),
  };
}

function ringFinding(ring: readonly string[]): Parameters<Report['add']>[3] {
  return {
    found: `ring: ${[...ring, ring[0]].map((id) => `\`${id}\``).join(' comes from ')}`,
    expected: 'one of them to come from no other',
    why: 'a recipe that comes from itself can’t be worked out',
    fix: 'remove `from` in one of them',
  };
}

/** Recipes in an order in which parents come first; unknown parents and rings are reported. */
function recipesInOrder(things: Things, report: Report): readonly string[] {
  const nodes = [...things.recipes.values()].map(({ id, fields }) => ({
    id,
    parents: fields.from === undefined ? [] : [fields.from],
  }));
  for (const recipe of things.recipes.values()) {
    const { from } = recipe.fields;
    if (from !== undefined) knownRecipe(from, recipe, ['from'], things, report);
  }
  const { order, rings } = orderByParents(nodes);
  for (const ring of rings) report.add('recipe/cycle', required(things.recipes, ring[0]!), ['from'], ringFinding(ring));
  return order;
}

/**
 * Whether a recipe has a file, sound or not; reports one that has none.
 *
 * @param from as it is written: `recipe`, or `recipe/cup`
 */
export function knownRecipe(
  from: string,
  thing: Thing<'recipe'>,
  path: FieldPath,
  things: Things,
  report: Report,
): boolean {
  const name = bareName(from);
  const id = name.replace(/\/.*/s, '');
  if (name !== from && (things.recipes.has(id) || things.faulty.has('recipe', id))) {
    report.add('recipe/unknown-recipe', thing, path, {
      found: `\`${from}\``,
      expected: 'the name of a recipe, without its folder and `.md`',
      fix: `write \`${name}\``,
    });
    return false;
  }
  if (things.recipes.has(id)) return true;
  if (things.faulty.has('recipe', id)) return false;
  const known = [...things.recipes.keys(), ...things.faulty.namesOf((kind) => kind === 'recipe')];
  const others = known.filter((other) => !comesFrom(other, thing.id, things));
  const slug = slugOf(id);
  const otherwise = slug === '' ? 'remove `from`' : `create colours/${slug}.md, or remove \`from\``;
  const near = nearestFileFix(id, others, otherwise);
  report.add('recipe/unknown-recipe', thing, path, {
    found: `recipe \`${id}\``,
    expected: `the name of a file in colours/${namesThere(others)}`,
    ...(near.nearest === undefined ? near : namedCup(near.nearest, name.slice(id.length), path, things)),
  });
  return false;
}

/** Whether a recipe is another one, or is derived from it: what is derived from such a one would come from itself. */
function comesFrom(id: string, ancestor: string, { recipes }: Things): boolean {
  const seen = new Set<string>();
  for (let at: string | undefined = id; at !== undefined && !seen.has(at); at = recipes.get(at)?.fields.from) {
    if (at === ancestor) return true;
    seen.add(at);
  }
  return false;
}

/** The edit that names a recipe, with one of its cups where it has several and a cup is asked for. */
function namedCup(
  recipe: string,
  cup: string,
  path: FieldPath,
  things: Things,
): { readonly fix: string; readonly nearest: string } {
  const cups = path.length === 1 ? [] : cupsOf(recipe, things);
  const known = cup === '' ? undefined : nearestName(cup.slice(1), cups);
  const isClear =
    cups.length === 0 || known !== undefined || (cup === '' && (cups.length < 2 || cups.includes(String(path[1]))));
  const written = isClear
    ? [known === undefined ? `${recipe}${cup}` : `${recipe}/${known}`]
    : cups.map((name) => `${recipe}/${name}`);
  return { fix: `write ${written.map((each) => `\`${each}\``).join(' or ')}`, nearest: written[0]! };
}

/** Names of the cups of a recipe, with those that it has from its parent. */
function cupsOf(id: string, things: Things, depth = 0): readonly string[] {
  const fields = things.recipes.get(id)?.fields;
  // A ring of parents has no end.
  const inherited =
    fields?.from === undefined || depth > things.recipes.size ? [] : cupsOf(fields.from, things, depth + 1);
  return [...new Set([...inherited, ...Object.keys(fields?.cups ?? {})])];
}

function specsOf(recipe: Thing<'recipe'>, parent: readonly CupSpec[]): readonly CupSpec[] {
  const own = Object.entries(recipe.fields.cups ?? {}).map(([name, fields]): CupSpec => {
    const path = ['cups', name];
    const inherits =
      fields.from === undefined && fields.plastic === undefined && parent.some((spec) => spec.name === name);
    return { recipe, name, path, fields, ...(inherits ? { from: { recipe: recipe.fields.from!, cup: name } } : {}) };
  });
  const given = new Set(own.map((spec) => spec.name));
  const { shares } = shareOut(parent);
  const inherited = (index: number): Pick<CupSpec, 'inheritedShare'> => {
    const { fields, inheritedShare } = parent[index]!;
    const share = shares?.[index];
    return share === undefined || (fields.share ?? inheritedShare) === undefined ? {} : { inheritedShare: share };
  };
  const kept = parent.map((spec, index): CupSpec => {
    const changed = own.find((cup) => cup.name === spec.name);
    if (!changed) {
      const from = { recipe: recipe.fields.from!, cup: spec.name };
      return { recipe, name: spec.name, path: ['from'], fields: {}, ...inherited(index), from };
    }
    return { ...changed, ...inherited(index) };
  });
  const names = new Set(parent.map((spec) => spec.name));
  return [...kept, ...own.filter((spec) => given.has(spec.name) && !names.has(spec.name))];
}

/** Whether a cup of a derived recipe neither begins with plastic nor has the name of a cup of the parent; reports it. */
function isNowhere(spec: CupSpec, ofRecipe: ReadonlyMap<string, readonly CupSpec[]>, report: Report): boolean {
  const { recipe, path, name, fields } = spec;
  const parent = recipe.fields.from;
  if (parent === undefined || spec.from || fields.plastic !== undefined) return false;
  const own = Object.keys(recipe.fields.cups ?? {});
  const names = (ofRecipe.get(parent) ?? []).map((cup) => cup.name);
  // A cup of the parent that is to be called so is told of there.
  if (names.some((other) => !isPartName(other) && slugOf(other) === name)) return true;
  const open = names.filter((other) => !own.includes(other));
  report.add(
    'recipe/unknown-cup',
    recipe,
    path,
    {
      found: `cup \`${name}\``,
      expected: `a cup of ${parent} (${names.join(', ')}), or \`plastic\` in a cup of its own`,
      why: 'a cup without plastic is the one of that name in the recipe that this comes from',
      ...(nearestFix(name, open) ?? {
        fix: `write \`${open[0] ?? names[0]}\`, or add \`plastic: 120 ml …\` to make it a cup of its own`,
      }),
    },
    'key',
  );
  return true;
}

/** A cup with the cup that its `from` means; undefined, and reported, where there is none. */
function resolveFrom(
  spec: CupSpec,
  ofRecipe: ReadonlyMap<string, readonly CupSpec[]>,
  things: Things,
  report: Report,
): CupSpec | undefined {
  const { recipe, path, name, fields } = spec;
  if (!isPartName(name)) {
    // A cup that comes from the parent was told of there.
    if (path[0] === 'cups')
      report.add('file/name', recipe, path, misnamedPart('cup', name, 'the name of a cup is an id'), 'key');
    return undefined;
  }
  if (fields.from === undefined) return isNowhere(spec, ofRecipe, report) ? undefined : spec;
  const [fromRecipe = '', fromCup, ...rest] = fields.from.split('/');
  const at = [...path, 'from'];
  if (!knownRecipe(fields.from, recipe, at, things, report)) return undefined;
  const cups = ofRecipe.get(fromRecipe);
  if (cups === undefined) return undefined;
  const names = cups.map((cup) => cup.name);
  const wanted = fromCup ?? (names.includes(name) ? name : names.length === 1 ? names[0] : undefined);
  if (wanted !== undefined && names.includes(wanted) && rest.length === 0) {
    return { ...spec, from: { recipe: fromRecipe, cup: wanted } };
  }
  const nearest = wanted === undefined ? undefined : nearestName(wanted, names);
  report.add('recipe/unknown-cup', recipe, at, {
    found: `\`${fields.from}\``,
    expected: `one of ${names.map((cup) => `\`${fromRecipe}/${cup}\``).join(', ')}`,
    why: wanted === undefined ? 'that recipe has several cups' : 'that recipe has no such cup',
    ...(nearest === undefined
      ? { fix: `write ${names.map((cup) => `\`${fromRecipe}/${cup}\``).join(' or ')}` }
      : { fix: `write \`${fromRecipe}/${nearest}\``, nearest: `${fromRecipe}/${nearest}` }),
  });
  return undefined;
}
