import { expect, test } from 'vitest';
import { layoutGraph } from '../../src/lineage/layout.ts';

const box = (id: string) => ({ id, width: 120, height: 40 });

test('layoutGraph(graph) sets parents left of their children and keeps the order of the graph', async () => {
  const graph = {
    nodes: ['c', 'a', 'b'].map(box),
    edges: [
      { from: 'a', to: 'b' },
      { from: 'b', to: 'c' },
      { from: 'a', to: 'c' },
    ],
  };
  const { nodes, edges, width, height } = await layoutGraph(graph);
  expect(nodes.map(({ id }) => id)).toEqual(['c', 'a', 'b']);
  const x = new Map(nodes.map((node) => [node.id, node.x]));
  expect(x.get('a')!).toBeLessThan(x.get('b')!);
  expect(x.get('b')!).toBeLessThan(x.get('c')!);
  for (const [at, { from, to, points }] of edges.entries()) {
    expect({ from, to }).toEqual(graph.edges[at]);
    // A start and three points for each curve, from the right side of the parent to the left side of the child.
    expect(points.length % 3).toBe(1);
    expect(points.length).toBeGreaterThanOrEqual(4);
    expect(points[0]!.x).toBeCloseTo(x.get(from)! + 60, 0);
    expect(points.at(-1)!.x).toBeCloseTo(x.get(to)! - 60, 0);
  }
  for (const node of nodes) {
    expect(node.x - 60).toBeGreaterThanOrEqual(0);
    expect(node.x + 60).toBeLessThanOrEqual(width);
    expect(node.y - 20).toBeGreaterThanOrEqual(0);
    expect(node.y + 20).toBeLessThanOrEqual(height);
  }
});

test('layoutGraph(graph) takes ids of any letters', async () => {
  const ids = ['"quoted"', '\\N', '<b>&</b>', 'n0'];
  const { nodes } = await layoutGraph({ nodes: ids.map(box), edges: [{ from: 'n0', to: '\\N' }] });
  expect(nodes.map(({ id }) => id)).toEqual(ids);
  expect(nodes.every(({ x, y }) => Number.isFinite(x) && Number.isFinite(y))).toBe(true);
});

test('layoutGraph(graph) lays out nothing as nothing, and refuses an edge to nowhere', async () => {
  expect(await layoutGraph({ nodes: [], edges: [] })).toEqual({ width: 0, height: 0, nodes: [], edges: [] });
  await expect(layoutGraph({ nodes: [box('a')], edges: [{ from: 'a', to: 'z' }] })).rejects.toThrow(RangeError);
});
