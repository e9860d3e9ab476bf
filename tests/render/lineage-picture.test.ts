import { describe, expect, test } from 'vitest';
import type { PlacedNode } from '../../src/lineage/graph.ts';
import { layoutGraph } from '../../src/lineage/layout.ts';
import { familyGraph, nameLines } from '../../src/render/lineage-picture.ts';
import { relativesAcross, relativesDown } from '../../src/render/recipe/relatives-layout.ts';
import { pageOf, SAMPLE_BOOK } from './sample-book.ts';

const RELATED = { id: 'me', parent: 'mother', cupsFrom: ['aunt'], children: ['a', 'b', 'c'], cupsIn: ['c'] };

describe.each([
  ['relativesAcross', relativesAcross],
  ['relativesDown', relativesDown],
])('%s(recipe)', (_, layout) => {
  const { nodes, edges, width, height } = layout(RELATED);
  const at = (id: string): PlacedNode => nodes.find((node) => node.id === id)!;

  test('sets each generation further right, none on another, all within the picture', () => {
    expect(at('mother').x).toBe(at('aunt').x);
    expect(at('mother').x).toBeLessThan(at('me').x);
    expect(at('me').x).toBeLessThan(at('a').x);
    for (const [index, node] of nodes.entries()) {
      expect(node.x - node.width / 2).toBeGreaterThanOrEqual(0);
      expect(node.x + node.width / 2).toBeLessThanOrEqual(width);
      expect(node.y + node.height / 2).toBeLessThanOrEqual(height);
      for (const other of nodes.slice(index + 1)) {
        expect(Math.abs(node.x - other.x) >= node.width || Math.abs(node.y - other.y) >= node.height).toBe(true);
      }
    }
  });

  test('ties every relative to the recipe, once', () => {
    expect(edges.map(({ from, to }) => `${from}-${to}`)).toEqual(['mother-me', 'aunt-me', 'me-a', 'me-b', 'me-c']);
  });
});

test('relativesDown(recipe) fits a phone', () => {
  expect(relativesDown(RELATED).width).toBeLessThan(320);
});

test('a family’s page shows every member as a link, in the picture and in the list', async () => {
  const family = SAMPLE_BOOK.families.find(({ members }) => members.length > 2)!;
  const page = await pageOf('family', family.id);
  for (const member of family.members) {
    expect(page.split(`href="../../colours/${member}/"`).length - 1, member).toBe(2);
  }
});

test('layoutGraph(familyGraph(book, id)) is the same every time', async () => {
  const family = SAMPLE_BOOK.families.find(({ members }) => members.length > 2)!;
  const graph = familyGraph(SAMPLE_BOOK, family.id);
  expect(await layoutGraph(graph)).toEqual(await layoutGraph(graph));
});

test('nameLines(title) takes at most two lines and cuts what is longer', () => {
  expect(nameLines('Alder Smoke')).toEqual(['Alder Smoke']);
  expect(nameLines('Thunder over Chapel')).toEqual(['Thunder over', 'Chapel']);
  const [first, second, ...more] = nameLines('An exceedingly verbose and interminable title');
  expect(more).toEqual([]);
  expect(Math.max(first!.length, second!.length)).toBeLessThanOrEqual(16);
});
