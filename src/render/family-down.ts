import type { Graph, GraphEdge, GraphLayout, PlacedEdge, PlacedNode } from '../lineage/graph.ts';
import { required } from '../values/required.ts';
import { isTargetNode, NODE_HEIGHT, NODE_WIDTH } from './lineage-picture.ts';

const MARGIN = 6;
const STEP = NODE_HEIGHT + 16;
/** Widest picture, px, that a small phone shows whole between its margins. */
const WIDEST = 320;
const INSET = { most: 28, least: 8 };
/** Where a line begins to turn, px. */
const CORNER = 12;
/** Lines at the right: their distance, how many there are before they lie on one another, and room for a word. */
const LANE = { apart: 8, most: 3, word: 16 };

/**
 * A family as an outline, for a narrow page: each colour below the first that it was made from and set in from it, a target above the
 * first colour that it is for. Other ties run at the right.
 */
export function familyDown({ nodes, edges }: Graph): GraphLayout {
  const rows = outline({ nodes, edges });
  const rowOf = new Map(rows.map(({ id }, row) => [id, row]));
  const isAbove = ({ from, to }: GraphEdge): boolean => required(rowOf, to) - required(rowOf, from) === 1;
  const ofTree = new Set(treeEdges(edges));
  const aside = edges.filter((edge) => !ofTree.has(edge) && !(isTargetNode(edge.from) && isAbove(edge)));
  const lanes = Math.min(LANE.most, aside.length);
  const right = lanes === 0 ? 0 : lanes * LANE.apart + (aside.some(({ from }) => isTargetNode(from)) ? LANE.word : 0);
  const deepest = Math.max(1, ...rows.map(({ depth }) => depth));
  const room = Math.floor((WIDEST - NODE_WIDTH - 2 * MARGIN - right) / deepest);
  const inset = Math.max(INSET.least, Math.min(INSET.most, room));
  const placed = rows.map(
    ({ id, depth }, row): PlacedNode => ({
      id,
      width: NODE_WIDTH,
      height: NODE_HEIGHT,
      x: MARGIN + depth * inset + NODE_WIDTH / 2,
      y: MARGIN + row * STEP + NODE_HEIGHT / 2,
    }),
  );
  const places = new Map(placed.map((node) => [node.id, node]));
  const farthest = Math.max(...placed.map(({ x }) => x)) + NODE_WIDTH / 2;
  const width = farthest + right + MARGIN;
  const line = (edge: GraphEdge): PlacedEdge => {
    const [start, end] = [required(places, edge.from), required(places, edge.to)];
    const lane = aside.indexOf(edge);
    const points =
      lane >= 0
        ? alongRight(start, end, width - MARGIN - (lane % LANE.most) * LANE.apart)
        : alongLeft(start, end, inset / 2);
    return { ...edge, points };
  };
  return {
    width,
    height: rows.length * STEP - (STEP - NODE_HEIGHT) + 2 * MARGIN,
    nodes: placed,
    edges: edges.map(line),
  };
}

/** Of each colour the first line that leads to it from another colour. */
function treeEdges(edges: readonly GraphEdge[]): readonly GraphEdge[] {
  const first = new Map<string, GraphEdge>();
  for (const edge of edges) if (!isTargetNode(edge.from) && !first.has(edge.to)) first.set(edge.to, edge);
  return [...first.values()];
}

/** The rows from top to bottom, with the generations above each. */
function outline({ nodes, edges }: Graph): readonly { readonly id: string; readonly depth: number }[] {
  const children = new Map<string, string[]>();
  const parented = new Set<string>();
  for (const { from, to } of treeEdges(edges)) {
    children.set(from, [...(children.get(from) ?? []), to]);
    parented.add(to);
  }
  const aims = new Map<string, string[]>();
  for (const { from, to } of edges) if (isTargetNode(from)) aims.set(to, [...(aims.get(to) ?? []), from]);

  const rows = new Map<string, number>();
  const roots = nodes.filter(({ id }) => !isTargetNode(id) && !parented.has(id));
  const stack = roots.map(({ id }) => ({ id, depth: 0 })).reverse();
  for (let next = stack.pop(); next !== undefined; next = stack.pop()) {
    const { id, depth } = next;
    for (const target of aims.get(id) ?? []) if (!rows.has(target)) rows.set(target, depth);
    rows.set(id, depth);
    stack.push(...[...(children.get(id) ?? [])].reverse().map((child) => ({ id: child, depth: depth + 1 })));
  }
  return [...rows].map(([id, depth]) => ({ id, depth }));
}

/** Down from a box's left, then to the next: only what is set in further lies between the two. */
function alongLeft(start: PlacedNode, end: PlacedNode, gutter: number): PlacedEdge['points'] {
  const x = start.x - start.width / 2 + gutter;
  const from = { x, y: start.y + start.height / 2 };
  // A target stands as far in as the colour below it.
  if (start.x === end.x) return straight(from, { x, y: end.y - end.height / 2 });
  const corner = { x, y: end.y };
  return [...straight(from, { x, y: end.y - CORNER }), corner, corner, { x: end.x - end.width / 2, y: end.y }];
}

/** Out at the right, down or up beside all boxes, and in again. */
function alongRight(start: PlacedNode, end: PlacedNode, x: number): PlacedEdge['points'] {
  const [from, to] = [start, end].map((node) => ({ x: node.x + node.width / 2, y: node.y })) as [Point, Point];
  const corners: readonly [Point, Point] = [
    { x, y: from.y },
    { x, y: to.y },
  ];
  return [...straight(from, corners[0]), ...straight(...corners).slice(1), ...straight(corners[1], to).slice(1)];
}

type Point = PlacedEdge['points'][number];

function straight(from: Point, to: Point): readonly Point[] {
  return [from, from, to, to];
}
