/**
 * A lineage as an SVG of links: each colour a chip with its name, parents on the left of what was made from them.
 *
 * @packageDocumentation
 */
import type { Book } from '../book/model.ts';
import type { Graph, GraphLayout, PlacedEdge, PlacedNode } from '../lineage/graph.ts';
import { bookIndex, required } from './book-index.ts';
import { colourEntry } from './colour-entry.ts';
import { type Html, html } from './html.ts';
import { link, paths } from './links.ts';
import type { PageContext } from './page.ts';

/** Size of a box, px. */
export const NODE_WIDTH = 172;
export const NODE_HEIGHT = 56;
const CHIP_WIDTH = 44;
const LETTERS_A_LINE = 15;

/** A family's colours and what was made from what, ready to be laid out. */
export function familyGraph(book: Book, family: string): Graph {
  const { members, edges } = required(bookIndex(book).families, family);
  return {
    nodes: members.map((id) => ({ id, width: NODE_WIDTH, height: NODE_HEIGHT })),
    edges: edges.map(({ from, to }) => ({ from, to })),
  };
}

/** A name on at most two lines. */
export function nameLines(title: string, letters: number = LETTERS_A_LINE): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of title.split(/\s+/)) {
    if (line === '') line = word;
    else if (line.length + 1 + word.length <= letters) line += ` ${word}`;
    else {
      lines.push(line);
      line = word;
    }
  }
  lines.push(line);
  const cut = (text: string): string => (text.length > letters + 1 ? `${text.slice(0, letters - 1)}…` : text);
  return lines.length <= 2 ? lines.map(cut) : [cut(lines[0]!), cut(`${lines[1]} ${lines.slice(2).join(' ')}`)];
}

function curve({ points }: PlacedEdge): string {
  const [start, ...rest] = points;
  if (start === undefined) return '';
  return `M${start.x} ${start.y}C${rest.map(({ x, y }) => `${x} ${y}`).join(' ')}`;
}

function nodeBox(context: PageContext, node: PlacedNode, here: string | undefined): Html {
  const entry = colourEntry(context.book, node.id);
  if (entry === undefined) return html``;
  const { title, body } = entry;
  const [x, y] = [node.x - node.width / 2, node.y - node.height / 2];
  const lines = nameLines(title);
  const first = node.height / 2 + 5 - (lines.length - 1) * 9;
  const text = lines.map((line, index) => html`<text x="${CHIP_WIDTH + 10}" y="${first + index * 18}">${line}</text>`);
  const box = html`<rect class="node-box" x="0.5" y="0.5" width="${node.width - 1}" height="${node.height - 1}"/><rect width="${CHIP_WIDTH}" height="${node.height / 2}" fill="${body.overWhite.hex}"/><rect y="${node.height / 2}" width="${CHIP_WIDTH}" height="${node.height / 2}" fill="${body.overBlack.hex}"/>${text}`;
  const place = html`transform="translate(${Math.round(x * 10) / 10} ${Math.round(y * 10) / 10})"`;
  if (node.id === here) return html`<g class="node here" ${place}>${box}</g>`;
  return html`<a class="node" href="${link(context, paths.recipe(node.id))}" ${place} aria-label="${title}">${box}</a>`;
}

/**
 * The picture. Its links can be reached by keyboard; a list beside it says the same to those who don't see it.
 *
 * @param here the colour that the page is about, which is not a link
 * @param when the pages that it is for, where there is a picture for each
 */
export function lineagePicture(
  context: PageContext,
  layout: GraphLayout,
  label: string,
  { here, when = '' }: { readonly here?: string; readonly when?: 'narrow' | 'wide' | '' } = {},
): Html {
  const { width, height, edges, nodes } = layout;
  const lines = edges.map((edge) => html`<path class="edge" d="${curve(edge)}"/>`);
  return html`<section class="scroll lineage${when === '' ? '' : ` only-${when}`}" aria-label="${label}" tabindex="0"><svg class="lineage-picture" role="group" aria-label="${label}" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}">${lines}${nodes.map((node) => nodeBox(context, node, here))}</svg></section>`;
}
