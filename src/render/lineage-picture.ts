/**
 * A lineage as an SVG of links: each colour a chip with its name, parents on the left of what was made from them.
 *
 * @packageDocumentation
 */
import type { Book } from '../book/model.ts';
import type { Graph, GraphLayout, PlacedEdge, PlacedNode } from '../lineage/graph.ts';
import { required } from '../values/required.ts';
import { baitPicture, picturedMold } from './bait-picture.ts';
import { bookIndex } from './book-index.ts';
import { type ColourEntry, colourEntry } from './colour-entry.ts';
import { type Html, html, joined } from './html.ts';
import { link, paths } from './links.ts';
import type { PageContext } from './page.ts';
import { pictureSize } from './picture-files.ts';
import { type ChipColours, chipColours } from './swatch/chip.ts';

/** Size of a box, px. */
export const NODE_WIDTH = 172;
export const NODE_HEIGHT = 56;
const CHIP_WIDTH = 44;
const LETTERS_A_LINE = 15;

/** Size of a box with the picture of its bait, px, and how much of its height the picture has. */
const PICTURED = { width: 208, height: 116, picture: 82 } as const;
const PICTURED_LETTERS = 25;

/** A family's colours with room for their pictures, what was made from what, and the targets that they are for, ready to be laid out. */
export function familyGraph(book: Book, family: string): Graph {
  const { families, recipes } = bookIndex(book);
  const { members, edges } = required(families, family);
  const aims = members.flatMap((id) => {
    const target = recipes.get(id)?.target;
    return target === undefined ? [] : [{ from: targetNode(target), to: id }];
  });
  const ids = [...members, ...new Set(aims.map(({ from }) => from))];
  return {
    nodes: ids.map((id) => ({
      id,
      width: isTargetNode(id) ? NODE_WIDTH : PICTURED.width,
      height: isTargetNode(id) ? NODE_HEIGHT : PICTURED.height,
    })),
    edges: [...edges.map(({ from, to }) => ({ from, to })), ...aims],
  };
}

const TARGET = 'target:';

/** Id of a target among the nodes of a lineage: no colour's, since those are slugs. */
export function targetNode(target: string): string {
  return TARGET + target;
}

/** Whether a node of a lineage is a target. */
export function isTargetNode(id: string): boolean {
  return id.startsWith(TARGET);
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
  const [x, y] = [node.x - node.width / 2, node.y - node.height / 2];
  const place = html`transform="translate(${tenth(x)} ${tenth(y)})"`;
  if (isTargetNode(node.id)) return targetBox(context, node, place);
  const entry = colourEntry(context.book, node.id);
  if (entry === undefined) return html``;
  const { title, body } = entry;
  if (node.height === PICTURED.height) return picturedBox(context, entry, place);
  const lines = nameLines(title);
  const first = node.height / 2 + 5 - (lines.length - 1) * 9;
  const box = boxOf(node, [chipColours(body)], lines, first, 18);
  if (node.id === here) return html`<g class="node here" ${place}>${box}</g>`;
  return html`<a class="node" href="${link(context, paths.recipe(node.id))}" ${place} aria-label="${title}">${box}</a>`;
}

/** A colour with its bait above its name. */
function picturedBox(context: PageContext, { id, title, pictured }: ColourEntry, place: Html): Html {
  const { width, height, picture } = PICTURED;
  const size = pictureSize(picturedMold(context.book, pictured), 'tile');
  const scale = Math.min((width - 2) / size.width, picture / size.height);
  const [wide, high] = [size.width * scale, size.height * scale];
  const at = html`x="${tenth((width - wide) / 2)}" y="${tenth(1 + (picture - high) / 2)}" width="${tenth(wide)}" height="${tenth(high)}"`;
  const [name] = nameLines(title, PICTURED_LETTERS);
  return html`<a class="node pictured" href="${link(context, paths.recipe(id))}" ${place} aria-label="${title}"><rect class="node-box" x="0.5" y="0.5" width="${width - 1}" height="${height - 1}"/><rect class="node-card" x="1" y="1" width="${width - 2}" height="${picture}"/><foreignObject ${at}>${baitPicture(context, pictured, 'tile', { alt: '' })}</foreignObject><text x="12" y="${picture + 22}">${name}</text></a>`;
}

/** A target: its parts as chips, and above its name what it is. */
function targetBox(context: PageContext, node: PlacedNode, place: Html): Html {
  const id = node.id.slice(TARGET.length);
  const target = bookIndex(context.book).targets.get(id);
  if (target === undefined) return html``;
  const { title, parts } = target;
  const lines = nameLines(title);
  const first = lines.length === 1 ? 40 : 32;
  const chips = parts.map(({ overWhite, overBlack }) => ({
    overWhite: overWhite.hex,
    ...(overBlack && { overBlack: overBlack.hex }),
  }));
  const word = html`<text class="node-kind" x="${CHIP_WIDTH + 10}" y="${first - 17}">target</text>`;
  return html`<a class="node target" href="${link(context, paths.target(id))}" ${place} aria-label="${title}, target">${boxOf(node, chips, lines, first, 16)} ${word}</a>`;
}

/** A box with chips at its left, over white above and over black below, and a name. */
function boxOf(
  node: PlacedNode,
  chips: readonly ChipColours[],
  lines: readonly string[],
  first: number,
  apart: number,
): Html {
  const [wide, half] = [CHIP_WIDTH / chips.length, node.height / 2];
  const colours = chips.map(({ overWhite, overBlack }, at) =>
    [overWhite, overBlack].map((fill, row) =>
      fill === undefined
        ? html``
        : html`<rect${at === 0 ? '' : html` x="${tenth(at * wide)}"`}${row === 0 ? '' : html` y="${half}"`} width="${tenth(wide)}" height="${half}" fill="${fill}"/>`,
    ),
  );
  const text = joined(
    lines.map((line, index) => html`<text x="${CHIP_WIDTH + 10}" y="${first + index * apart}">${line}</text>`),
    ' ',
  );
  return html`<rect class="node-box" x="0.5" y="0.5" width="${node.width - 1}" height="${node.height - 1}"/>${colours}${text}`;
}

function tenth(number: number): number {
  return Math.round(number * 10) / 10;
}

/** A line from what something was made from; from a target, which it is for, broken and with that word at its start. */
function edgeLine(edge: PlacedEdge): Html {
  const path = curve(edge);
  const [start] = edge.points;
  if (!isTargetNode(edge.from) || start === undefined) return html`<path class="edge" d="${path}"/>`;
  // On the side from which the line turns away: beside one that begins downwards, under one that rises.
  const down = edge.points[1]!.x === start.x;
  const y = start.y + (down ? 9 : edge.points.at(-1)!.y < start.y - 1 ? 12 : -5);
  const x = start.x + (down ? 6 : 4);
  return html`<path class="edge for" d="${path}"/><text class="edge-word" x="${tenth(x)}" y="${tenth(y)}">for</text>`;
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
  const lines = edges.map(edgeLine);
  return html`<section class="scroll lineage${when === '' ? '' : ` only-${when}`}" aria-label="${label}" tabindex="0"><svg class="lineage-picture" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}">${lines}${nodes.map((node) => nodeBox(context, node, here))}</svg></section>`;
}
