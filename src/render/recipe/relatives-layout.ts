/**
 * Places for a recipe among those that it was made from, the target that it is for, and those that were made from it.
 *
 * @packageDocumentation
 */
import type { Recipe } from '../../book/model/recipe.ts';
import type { GraphLayout, PlacedEdge, PlacedNode } from '../../lineage/graph.ts';
import { required } from '../../values/required.ts';
import { isTargetNode, NODE_HEIGHT, NODE_WIDTH, targetNode } from '../lineage-picture.ts';

type Related = Pick<Recipe, 'id' | 'parent' | 'target' | 'cupsFrom' | 'children' | 'cupsIn'>;

const MARGIN = 6;

/** Beside one another: parents, the recipe, children, each in a column. */
export function relativesAcross(recipe: Related): GraphLayout {
  const columns = generations(recipe);
  const tallest = Math.max(...columns.map((column) => column.length));
  const [stepX, stepY] = [NODE_WIDTH + 48, NODE_HEIGHT + 16];
  const height = tallest * stepY - 16 + 2 * MARGIN;
  const nodes = columns.flatMap((column, at) =>
    column.map((id, row): PlacedNode => {
      const top = (height - (column.length * stepY - 16)) / 2;
      const y = top + row * stepY + NODE_HEIGHT / 2;
      return { id, width: NODE_WIDTH, height: NODE_HEIGHT, x: MARGIN + at * stepX + NODE_WIDTH / 2, y };
    }),
  );
  const edge = edgesOf(nodes, (start, end) => {
    const [x0, x1] = [start.x + NODE_WIDTH / 2, end.x - NODE_WIDTH / 2];
    const middle = (x0 + x1) / 2;
    return [
      { x: x0, y: start.y },
      { x: middle, y: start.y },
      { x: middle, y: end.y },
      { x: x1, y: end.y },
    ];
  });
  return { width: columns.length * stepX - 48 + 2 * MARGIN, height, nodes, edges: edge(recipe) };
}

/** Below one another, for a narrow page: each generation set in a little, with its lines at the left. */
export function relativesDown(recipe: Related): GraphLayout {
  const columns = generations(recipe);
  const [inset, stepY] = [36, NODE_HEIGHT + 12];
  const rows = columns.flatMap((column, at) => column.map((id) => ({ id, at })));
  const nodes = rows.map(
    ({ id, at }, row): PlacedNode => ({
      id,
      width: NODE_WIDTH,
      height: NODE_HEIGHT,
      x: MARGIN + at * inset + NODE_WIDTH / 2,
      y: MARGIN + row * stepY + NODE_HEIGHT / 2,
    }),
  );
  const edge = edgesOf(nodes, (start, end) => {
    // Beside the lines of the parents, which come down behind it.
    const aside = isTargetNode(start.id) ? 8 : 0;
    const x = start.x - NODE_WIDTH / 2 + inset / 2 + aside;
    const y = end.y - aside;
    return [
      { x, y: start.y + NODE_HEIGHT / 2 },
      { x, y },
      { x, y },
      { x: end.x - NODE_WIDTH / 2, y },
    ];
  });
  return {
    width: (columns.length - 1) * inset + NODE_WIDTH + 2 * MARGIN,
    height: rows.length * stepY - 12 + 2 * MARGIN,
    nodes,
    edges: edge(recipe),
  };
}

function generations({ id, ...related }: Related): readonly (readonly string[])[] {
  return [before(related), [id], after(related)].filter((column) => column.length > 0);
}

function before({ parent, cupsFrom, target }: Omit<Related, 'id'>): readonly string[] {
  const made = new Set([...(parent === undefined ? [] : [parent]), ...cupsFrom]);
  // The target comes last, so that in a narrow picture its line runs by no other.
  return [...made, ...(target === undefined ? [] : [targetNode(target)])];
}

function after({ children, cupsIn }: Omit<Related, 'id'>): readonly string[] {
  return [...new Set([...children, ...cupsIn])];
}

function edgesOf(
  nodes: readonly PlacedNode[],
  points: (start: PlacedNode, end: PlacedNode) => PlacedEdge['points'],
): (recipe: Related) => readonly PlacedEdge[] {
  const places = new Map(nodes.map((node) => [node.id, node]));
  const edge = (from: string, to: string): PlacedEdge => ({
    from,
    to,
    points: points(required(places, from), required(places, to)),
  });
  return (recipe) => [
    ...before(recipe).map((id) => edge(id, recipe.id)),
    ...after(recipe).map((id) => edge(recipe.id, id)),
  ];
}
