import { families } from '../../lineage/order-by-parents.ts';
import { required } from '../../values/required.ts';
import type { Family } from '../model/recipe.ts';

/** What a recipe says of where it comes from. */
export interface Descendant {
  readonly id: string;
  readonly title: string;
  readonly parent?: string;
  readonly cups: readonly {
    readonly name: string;
    readonly from?: { readonly recipe: string; readonly cup: string };
  }[];
  readonly changes: readonly { readonly change: { readonly words: readonly string[] } }[];
}

/** The families of a book: recipes that are tied by derivation or by cups, each named after its first ancestor. */
export function compileFamilies(recipes: readonly Descendant[]): readonly Family[] {
  const byId = new Map(recipes.map((recipe) => [recipe.id, recipe]));
  const parentsOf = (recipe: Descendant): readonly string[] => [
    ...new Set([
      ...(recipe.parent === undefined ? [] : [recipe.parent]),
      ...recipe.cups.flatMap(({ from }) => from?.recipe ?? []),
    ]),
  ];
  const nodes = recipes.map((recipe) => ({
    id: recipe.id,
    parents: parentsOf(recipe).filter((id) => id !== recipe.id && byId.has(id)),
  }));
  const nodeOf = new Map(nodes.map((node) => [node.id, node]));
  const children = new Map(nodes.map(({ id }) => [id, [] as string[]]));
  for (const { id, parents } of nodes) for (const parent of parents) children.get(parent)?.push(id);
  return families(nodes).map((members) => {
    const inside = members.map((id) => required(nodeOf, id));
    const roots = inside.filter(({ parents }) => parents.length === 0).map(({ id }) => id);
    // The root with the most descendants gives the family its name; the graph has no ring, so there is one.
    const sizes = new Map(roots.map((id) => [id, roots.length === 1 ? members.length : below(id, children)]));
    const eldest = roots.reduce((best, id) => (required(sizes, id) > required(sizes, best) ? id : best), roots[0]!);
    return {
      id: eldest,
      title: required(byId, eldest).title,
      members,
      edges: inside.flatMap(({ id, parents }) =>
        parents.map((from) => {
          const recipe = required(byId, id);
          const whole = recipe.parent === from;
          const cups = recipe.cups.filter((cup) => cup.from?.recipe === from).map(({ name }) => name);
          const words = recipe.changes[0]?.change.words ?? [];
          return {
            from,
            to: id,
            kind: whole ? ('recipe' as const) : ('cup' as const),
            label: whole ? words.slice(0, 2).join(', ') : cups.join(', '),
          };
        }),
      ),
    };
  });
}

/** How many come from a recipe, it among them. */
function below(root: string, children: ReadonlyMap<string, readonly string[]>): number {
  const found = new Set([root]);
  for (const id of found) for (const child of children.get(id) ?? []) found.add(child);
  return found.size;
}
