import { describe, expect, test } from 'vitest';
import type { Graph, GraphNode, PlacedNode } from '../../src/lineage/graph.ts';
import { layoutGraph } from '../../src/lineage/layout.ts';
import { familyDown } from '../../src/render/family-down.ts';
import { familyGraph, nameLines } from '../../src/render/lineage-picture.ts';
import { relativesAcross, relativesDown } from '../../src/render/recipe/relatives-layout.ts';
import { allByRole, byRole, wordsIn } from '../page-dom.ts';
import { DEMO_BOOK } from './demo-book.ts';
import { bookOf, pageOf, readPage, SAMPLE_BOOK, SAMPLE_FILES } from './sample-book.ts';

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

test('a target stands among what a recipe comes from, last, and its line leads to the recipe', () => {
  const { nodes, edges } = relativesDown({ ...RELATED, target: 'aim' });
  expect(nodes.map(({ id }) => id)).toEqual(['mother', 'aunt', 'target:aim', 'me', 'a', 'b', 'c']);
  const [parent, , aim] = edges;
  expect(aim).toMatchObject({ from: 'target:aim', to: 'me' });
  expect(aim!.points[0]!.x).not.toBe(parent!.points[0]!.x);
});

describe('the lineage of a recipe', async () => {
  const section = byRole(await readPage('recipe', 'weir-foam'), 'region', { name: 'Family' });
  const { cups } = SAMPLE_BOOK.recipes.find(({ id }) => id === 'weir-foam')!;

  test('shows the target that it is for, in both pictures and in words', () => {
    const pictures = allByRole(section, 'region', { name: /^Lineage of Weir Foam/ });
    expect(pictures.map((picture) => allByRole(picture, 'link', { name: 'On the rack, target' }).length)).toEqual([
      1, 1,
    ]);
    expect([...section.querySelectorAll('.edge-word')].filter((word) => wordsIn(word) === 'for')).toHaveLength(2);
    const words = allByRole(section, 'listitem').find((item) => wordsIn(item) === 'Made to match On the rack.')!;
    expect(byRole(words, 'link', { name: 'On the rack' }).getAttribute('href')).toBe('../../targets/rack/');
  });

  test('shows its rounds one after the other, with the difference between each two', () => {
    const chain = section.querySelector('.chain-rounds')!;
    for (const { number, look } of cups[0]!.rounds) {
      const round = allByRole(chain, 'listitem').find((item) => wordsIn(item).endsWith(`Round ${number}`))!;
      expect(round.querySelector(`[fill="${look.overWhite.hex}"]`)).not.toBeNull();
    }
    const { deltaE } = cups[0]!.rounds[1]!.change!;
    const steps = [...chain.querySelectorAll('.chain-step')].map(wordsIn);
    expect(steps).toEqual([`ΔE ${deltaE >= 10 ? Math.round(deltaE) : deltaE.toFixed(1)}`]);
    expect(steps).toHaveLength(cups[0]!.rounds.length - 1);
  });

  test('tells nothing of targets where none is published', async () => {
    const hidden = bookOf({
      ...SAMPLE_FILES,
      'targets/rack.md': SAMPLE_FILES['targets/rack.md']!.replace('mold:', 'publish: no\nmold:'),
    });
    expect(await pageOf('recipe', 'weir-foam', hidden)).not.toMatch(/Made for|target:|On the rack/);
  });
});

test('a family’s page shows the targets that its colours are for, and says so in the list', async () => {
  const family = SAMPLE_BOOK.families.find(({ members }) => members.includes('weir-foam'))!;
  const page = await readPage('family', family.id);
  expect(allByRole(page, 'link', { name: 'On the rack, target' })).not.toEqual([]);
  const told = allByRole(page, 'listitem').find((item) => wordsIn(item).includes('for On the rack'))!;
  expect(byRole(told, 'link', { name: 'On the rack' }).getAttribute('href')).toBe('../../targets/rack/');
});

test('a family’s page shows every member as a link, in the picture and in the list', async () => {
  const family = SAMPLE_BOOK.families.find(({ members }) => members.length > 2)!;
  const page = await readPage('family', family.id);
  for (const member of family.members)
    expect(page.querySelectorAll(`a[href="../../colours/${member}/"]`).length, member).toBe(3);
});

describe('familyDown(graph)', () => {
  const node = (id: string): GraphNode => ({ id, width: 172, height: 56 });
  const graph: Graph = {
    nodes: ['mother', 'child', 'grandchild', 'second', 'stranger', 'target:aim', 'target:other'].map(node),
    edges: [
      { from: 'mother', to: 'child' },
      { from: 'mother', to: 'second' },
      { from: 'child', to: 'grandchild' },
      { from: 'stranger', to: 'second' },
      { from: 'target:aim', to: 'child' },
      { from: 'target:aim', to: 'second' },
      { from: 'target:other', to: 'stranger' },
    ],
  };
  const layout = familyDown(graph);

  test('sets children below their first parent and in from it, a target above what it is for', () => {
    expect(layout.nodes.map(({ id }) => id)).toEqual([
      'mother',
      'target:aim',
      'child',
      'grandchild',
      'second',
      'target:other',
      'stranger',
    ]);
    const x = Object.fromEntries(layout.nodes.map(({ id, x: place }) => [id, place]));
    expect(x.mother).toBeLessThan(x.child!);
    expect(x.child).toBeLessThan(x.grandchild!);
    expect(x.second).toBe(x.child);
    expect(x['target:aim']).toBe(x.child);
  });

  test('draws every tie, none through a box, and fits a phone', () => {
    expect(layout.edges.map(({ from, to }) => ({ from, to }))).toEqual(graph.edges);
    expect(layout.width).toBeLessThanOrEqual(320);
    for (const { from, to, points } of layout.edges) {
      expect((points.length - 1) % 3).toBe(0);
      // All are of straight lines, or corners drawn to a point, so that a box on the way would hold a point between two.
      for (let at = 1; at < points.length; at++) {
        for (let step = 0; step <= 20; step++) {
          const [one, two] = [points[at - 1]!, points[at]!];
          const [px, py] = [one.x + ((two.x - one.x) * step) / 20, one.y + ((two.y - one.y) * step) / 20];
          const hit = layout.nodes.find(
            ({ x, y, width, height }) => Math.abs(px - x) < width / 2 && Math.abs(py - y) < height / 2,
          );
          expect(hit?.id, `${from} to ${to}`).toBeUndefined();
        }
      }
    }
  });

  test('fits a phone for every family of the demo book', () => {
    for (const { id } of DEMO_BOOK.families)
      expect(familyDown(familyGraph(DEMO_BOOK, id)).width).toBeLessThanOrEqual(320);
  });
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

test('the wide picture of a family has the bait of each of its colours, within its box', async () => {
  const family = DEMO_BOOK.families.find(({ members }) => members.length > 3)!;
  const page = await readPage('family', family.id, DEMO_BOOK);
  const nodes = [...page.querySelectorAll('.only-wide a.pictured')];
  expect(nodes.map((node) => node.getAttribute('aria-label')).sort()).toEqual(
    family.members.map((id) => [...DEMO_BOOK.recipes, ...DEMO_BOOK.looks].find((each) => each.id === id)!.title).sort(),
  );
  for (const node of nodes) {
    const [box, frame] = ['.node-box', 'foreignObject'].map((part) => node.querySelector(part)!);
    const of = (element: Element, name: string): number => Number(element.getAttribute(name));
    expect(of(frame!, 'x') + of(frame!, 'width')).toBeLessThanOrEqual(of(box!, 'width'));
    expect(of(frame!, 'y') + of(frame!, 'height')).toBeLessThan(of(box!, 'height'));
    expect(frame!.querySelector('img')!.getAttribute('src')).toMatch(/tile\.webp/);
  }
});
