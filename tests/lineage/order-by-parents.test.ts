import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { families, orderByParents } from '../../src/lineage/order-by-parents.ts';

//   a   e
//  / \ /
// b   c     d
const SMALL = [
  { id: 'c', parents: ['a', 'e'] },
  { id: 'b', parents: ['a'] },
  { id: 'a', parents: [] },
  { id: 'd', parents: [] },
  { id: 'e', parents: [] },
];

describe('orderByParents', () => {
  test('orderByParents puts parents first and keeps the given order otherwise', () => {
    expect(orderByParents(SMALL)).toEqual({ order: ['a', 'e', 'c', 'b', 'd'], rings: [] });
  });
  test('orderByParents names each ring once, and leaves out what hangs below it', () => {
    const { order, rings } = orderByParents([
      { id: 'x', parents: ['y'] },
      { id: 'y', parents: ['z'] },
      { id: 'z', parents: ['x'] },
      { id: 'below', parents: ['x'] },
      { id: 'self', parents: ['self'] },
      { id: 'free', parents: ['unknown'] },
    ]);
    expect(rings).toEqual([['x', 'y', 'z'], ['self']]);
    expect(order).toEqual(['free']);
  });
  test('orderByParents(graph without rings) has every node once, after its parents', () => {
    const graph = fc.integer({ min: 1, max: 30 }).chain((size) =>
      fc.array(fc.array(fc.nat(), { maxLength: 3 }), { minLength: size, maxLength: size }).map((picks) =>
        picks.map((list, index) => ({
          id: `n${index}`,
          parents: index === 0 ? [] : [...new Set(list.map((pick) => `n${pick % index}`))],
        })),
      ),
    );
    fc.assert(
      fc.property(graph, (nodes) => {
        const { order, rings } = orderByParents(nodes.toReversed());
        expect(rings).toEqual([]);
        expect(new Set(order).size).toBe(nodes.length);
        for (const { id, parents } of nodes)
          for (const parent of parents) expect(order.indexOf(parent)).toBeLessThan(order.indexOf(id));
      }),
    );
  });
});

test('families(nodes) are the nodes that are tied in either direction', () => {
  expect(families(SMALL)).toEqual([['c', 'b', 'a', 'e'], ['d']]);
});

test('a line of 100,000 and a family of as many children take their time once', () => {
  const line = Array.from({ length: 100_000 }, (_, at) => ({ id: `n${at}`, parents: at === 0 ? [] : [`n${at - 1}`] }));
  const { order, rings } = orderByParents(line.toReversed());
  expect([order.length, order[0], rings]).toEqual([100_000, 'n0', []]);
  expect(families(line)).toEqual([line.map(({ id }) => id)]);
  const star = line.map(({ id }, at) => ({ id, parents: at === 0 ? [] : ['n0'] }));
  expect(families(star)).toHaveLength(1);
});
