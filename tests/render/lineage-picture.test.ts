import { expect, test } from 'vitest';
import { layoutGraph } from '../../src/lineage/layout.ts';
import { familyGraph, nameLines, relativesLayout } from '../../src/render/lineage-picture.ts';
import { pageOf, SAMPLE_BOOK } from './sample-book.ts';

test('relativesLayout(recipe) sets parents left of it and children right of it, none on another', () => {
  const { nodes, width, height } = relativesLayout({
    id: 'me',
    parent: 'mother',
    cupsFrom: ['aunt'],
    children: ['a', 'b', 'c'],
    cupsIn: ['c'],
  });
  const x = new Map(nodes.map((node) => [node.id, node.x]));
  expect(x.get('mother')).toBe(x.get('aunt'));
  expect(x.get('mother')!).toBeLessThan(x.get('me')!);
  expect(x.get('me')!).toBeLessThan(x.get('a')!);
  expect(new Set(nodes.map((node) => `${node.x},${node.y}`)).size).toBe(6);
  for (const node of nodes) {
    expect(node.x - node.width / 2).toBeGreaterThanOrEqual(0);
    expect(node.x + node.width / 2).toBeLessThanOrEqual(width);
    expect(node.y + node.height / 2).toBeLessThanOrEqual(height);
  }
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
