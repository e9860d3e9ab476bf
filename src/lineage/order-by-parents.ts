/** A node of a graph of derivation: what it is, and what it comes from. */
import { required } from '../values/required.ts';
export interface Derived {
  readonly id: string;
  readonly parents: readonly string[];
}

/**
 * Nodes in an order in which every parent comes before what is derived from it, and the rings that have no such order.
 *
 * Parents that are not among the nodes are passed over. The order is the given one as far as the parents allow.
 * A ring lists its nodes from the one given first, each coming from the next: `[a, b]` means a from b, b from a.
 * What hangs below a ring is in neither list.
 *
 * @example orderByParents([{ id: 'b', parents: ['a'] }, { id: 'a', parents: [] }]).order // ['a', 'b']
 */
export function orderByParents(nodes: readonly Derived[]): {
  readonly order: readonly string[];
  readonly rings: readonly (readonly string[])[];
} {
  const parentsOf = new Map(nodes.map((node) => [node.id, node.parents]));
  const state = new Map<string, 'open' | 'ordered' | 'broken'>();
  const order: string[] = [];
  const rings: string[][] = [];

  // Not by recursion: a line of recipes may be longer than a stack is deep.
  const visit = (first: string): void => {
    const open: { readonly id: string; readonly parents: readonly string[]; next: number; sound: boolean }[] = [];
    const begin = (id: string): void => {
      state.set(id, 'open');
      open.push({
        id,
        parents: (parentsOf.get(id) ?? []).filter((parent) => parentsOf.has(parent)),
        next: 0,
        sound: true,
      });
    };
    begin(first);
    for (let top = open.at(-1); top !== undefined; top = open.at(-1)) {
      const parent = top.parents[top.next];
      if (parent === undefined) {
        open.pop();
        state.set(top.id, top.sound ? 'ordered' : 'broken');
        if (top.sound) order.push(top.id);
        continue;
      }
      const known = state.get(parent);
      if (known === undefined) {
        begin(parent);
        continue;
      }
      if (known === 'open') rings.push(open.slice(open.findIndex(({ id }) => id === parent)).map(({ id }) => id));
      if (known !== 'ordered') top.sound = false;
      top.next++;
    }
  };
  for (const { id } of nodes) if (!state.has(id)) visit(id);
  return { order, rings };
}

/** Groups of nodes that are tied by parents, in either direction, in the given order. */
export function families(nodes: readonly Derived[]): readonly (readonly string[])[] {
  const neighbours = new Map<string, string[]>(nodes.map(({ id }) => [id, []]));
  for (const { id, parents } of nodes) {
    for (const parent of parents) {
      neighbours.get(parent)?.push(id);
      if (neighbours.has(parent)) required(neighbours, id).push(parent);
    }
  }
  const placeOf = new Map(nodes.map(({ id }, index) => [id, index]));
  const seen = new Set<string>();
  return nodes.flatMap(({ id }) => {
    if (seen.has(id)) return [];
    const family = [id];
    seen.add(id);
    for (const member of family) {
      for (const neighbour of required(neighbours, member)) {
        if (!seen.has(neighbour)) {
          seen.add(neighbour);
          family.push(neighbour);
        }
      }
    }
    return [family.sort((one, other) => required(placeOf, one) - required(placeOf, other))];
  });
}
