/** A node of a graph of derivation: what it is, and what it comes from. */
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
  const path: string[] = [];

  // Depth is at most the number of generations of a book, so that recursion is safe after the check below.
  const visit = (id: string): 'ordered' | 'broken' => {
    const known = state.get(id);
    if (known === 'open') {
      rings.push(path.slice(path.indexOf(id)));
      return 'broken';
    }
    if (known !== undefined) return known;
    state.set(id, 'open');
    path.push(id);
    let sound = true;
    for (const parent of parentsOf.get(id) ?? []) {
      if (parentsOf.has(parent) && visit(parent) === 'broken') sound = false;
    }
    path.pop();
    const result = sound ? 'ordered' : 'broken';
    state.set(id, result);
    if (sound) order.push(id);
    return result;
  };
  for (const { id } of nodes) visit(id);
  return { order, rings };
}

/** Groups of nodes that are tied by parents, in either direction, in the given order. */
export function families(nodes: readonly Derived[]): readonly (readonly string[])[] {
  const neighbours = new Map<string, string[]>(nodes.map(({ id }) => [id, []]));
  for (const { id, parents } of nodes) {
    for (const parent of parents) {
      neighbours.get(parent)?.push(id);
      if (neighbours.has(parent)) neighbours.get(id)!.push(parent);
    }
  }
  const seen = new Set<string>();
  return nodes.flatMap(({ id }) => {
    if (seen.has(id)) return [];
    const family = [id];
    seen.add(id);
    for (const member of family) {
      for (const neighbour of neighbours.get(member)!) {
        if (!seen.has(neighbour)) {
          seen.add(neighbour);
          family.push(neighbour);
        }
      }
    }
    return [nodes.filter((node) => family.includes(node.id)).map((node) => node.id)];
  });
}
