import { describe, expect, test } from 'vitest';
import type { PlacedNode } from '../../src/lineage/graph.ts';
import { layoutGraph } from '../../src/lineage/layout.ts';
import { familyGraph, nameLines } from '../../src/render/lineage-picture.ts';
import { relativesAcross, relativesDown } from '../../src/render/recipe/relatives-layout.ts';
import { bookOf, pageOf, SAMPLE_BOOK, SAMPLE_FILES } from './sample-book.ts';

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
  const page = await pageOf('recipe', 'weir-foam');
  const section = page.slice(page.indexOf('<h2 id="lineage">'), page.indexOf('<h2 id="costs">'));
  const { cups } = SAMPLE_BOOK.recipes.find(({ id }) => id === 'weir-foam')!;

  test('shows the target that it is for, in both pictures and in words', () => {
    expect(section.split('aria-label="Target: On the rack"').length - 1).toBe(2);
    expect(section.match(/class="edge-word"[^>]*>for</g)).toHaveLength(2);
    expect(section).toContain('Made for <a href="../../targets/rack/">On the rack</a>.');
  });

  test('shows its rounds one after the other, with the difference between each two', () => {
    const chain = section.slice(section.indexOf('chain-rounds'));
    for (const { number, look } of cups[0]!.rounds) {
      expect(chain).toContain(`Round ${number}<`);
      expect(chain).toContain(`fill="${look.overWhite.hex}"`);
    }
    const { deltaE } = cups[0]!.rounds[1]!.change!;
    expect(chain).toContain(`ΔE ${deltaE >= 10 ? Math.round(deltaE) : deltaE.toFixed(1)}<`);
    expect(chain.match(/chain-step/g)).toHaveLength(cups[0]!.rounds.length - 1);
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
  const page = await pageOf('family', family.id);
  expect(page).toContain('aria-label="Target: On the rack"');
  expect(page).toContain(', for <a href="../../targets/rack/">On the rack</a>');
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
