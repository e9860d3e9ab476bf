/**
 * A lineage as an SVG of links: each colour a chip with its name, parents on the left of what was made from them.
 *
 * @packageDocumentation
 */
import type { Book, Recipe } from '../book/model.ts';
import type { Graph, GraphLayout, PlacedEdge, PlacedNode } from '../lineage/graph.ts';
import { bookIndex, required } from './book-index.ts';
import { colourEntry } from './colour-entry.ts';
import { type Html, html } from './html.ts';
import { link, paths } from './links.ts';
import type { PageContext } from './page.ts';

/** Size of a box, px. */
const NODE_WIDTH = 172;
const NODE_HEIGHT = 56;
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

/** What a recipe was made from and what was made from it, each in a column beside it. */
export function relativesLayout(
  recipe: Pick<Recipe, 'id' | 'parent' | 'cupsFrom' | 'children' | 'cupsIn'>,
): GraphLayout {
  const before = [...new Set([...(recipe.parent === undefined ? [] : [recipe.parent]), ...recipe.cupsFrom])];
  const after = [...new Set([...recipe.children, ...recipe.cupsIn])];
  const columns = [before, [recipe.id], after].filter((column) => column.length > 0);
  const tallest = Math.max(...columns.map((column) => column.length));
  const [stepX, stepY, margin] = [NODE_WIDTH + 48, NODE_HEIGHT + 16, 6];
  const height = tallest * stepY - 16 + 2 * margin;
  const nodes = columns.flatMap((column, at) =>
    column.map((id, row): PlacedNode => {
      const top = (height - (column.length * stepY - 16)) / 2;
      const y = top + row * stepY + NODE_HEIGHT / 2;
      return { id, width: NODE_WIDTH, height: NODE_HEIGHT, x: margin + at * stepX + NODE_WIDTH / 2, y };
    }),
  );
  const places = new Map(nodes.map((node) => [node.id, node]));
  const edge = (from: string, to: string): PlacedEdge => {
    const [start, end] = [required(places, from), required(places, to)];
    const [x0, x1] = [start.x + NODE_WIDTH / 2, end.x - NODE_WIDTH / 2];
    const bend = (x1 - x0) / 2;
    return {
      from,
      to,
      points: [
        { x: x0, y: start.y },
        { x: x0 + bend, y: start.y },
        { x: x1 - bend, y: end.y },
        { x: x1, y: end.y },
      ],
    };
  };
  return {
    width: columns.length * stepX - 48 + 2 * margin,
    height,
    nodes,
    edges: [...before.map((id) => edge(id, recipe.id)), ...after.map((id) => edge(recipe.id, id))],
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
 */
export function lineagePicture(context: PageContext, layout: GraphLayout, label: string, here?: string): Html {
  const { width, height, edges, nodes } = layout;
  const lines = edges.map((edge) => html`<path class="edge" d="${curve(edge)}"/>`);
  return html`<section class="scroll lineage" aria-label="${label}" tabindex="0"><svg class="lineage-picture" role="group" aria-label="${label}" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}">${lines}${nodes.map((node) => nodeBox(context, node, here))}</svg></section>`;
}
