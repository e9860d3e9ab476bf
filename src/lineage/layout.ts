import { instance, type Viz } from '@viz-js/viz';
import type { Graph, GraphLayout, PlacedEdge, PlacedNode } from './graph.ts';

/** Graphviz counts in points of a 72nd inch and its sizes are in inches; a pixel of ours is a point of its. */
const POINTS_PER_INCH = 72;
/** Room round a drawing, and between its boxes. */
const MARGIN = 12;
const BETWEEN_RANKS = 44;
const BETWEEN_NODES = 22;

// Starting the drawing engine takes a tenth of a second, and it keeps nothing from one graph to the next.
let engine: Promise<Viz> | undefined;

/** What is read of Graphviz's JSON. */
interface Drawn {
  readonly bb: string;
  readonly objects?: readonly { readonly name: string; readonly pos?: string }[];
  readonly edges?: readonly { readonly id: string; readonly pos?: string }[];
}

interface Point {
  readonly x: number;
  readonly y: number;
}

/**
 * Places for the boxes and arrows of a graph, parents on the left of their children.
 *
 * Deterministic: the same graph gives the same drawing. The ids reach the engine as `n0`, `n1`, …, since it gives a meaning
 * to some characters in names.
 * Throws: RangeError if an edge names a node that the graph does not have.
 */
export async function layoutGraph(graph: Graph): Promise<GraphLayout> {
  if (graph.nodes.length === 0) return { width: 0, height: 0, nodes: [], edges: [] };
  const names = new Map(graph.nodes.map((node, index) => [node.id, `n${index}`]));
  const nameOf = (id: string): string => {
    const name = names.get(id);
    if (name === undefined) throw new RangeError(`an edge names ${id}, which is not among the nodes of the graph`);
    return name;
  };
  engine ??= instance();
  const drawn = (await engine).renderJSON({
    graphAttributes: {
      rankdir: 'LR',
      ranksep: BETWEEN_RANKS / POINTS_PER_INCH,
      nodesep: BETWEEN_NODES / POINTS_PER_INCH,
      pad: 0,
    },
    nodeAttributes: { shape: 'box', fixedsize: true, label: '', margin: 0 },
    edgeAttributes: { arrowhead: 'none', headport: 'w', tailport: 'e' },
    nodes: graph.nodes.map(({ id, width, height }) => ({
      name: nameOf(id),
      attributes: { width: width / POINTS_PER_INCH, height: height / POINTS_PER_INCH },
    })),
    edges: graph.edges.map(({ from, to }, index) => ({
      tail: nameOf(from),
      head: nameOf(to),
      attributes: { id: `e${index}` },
    })),
  }) as Drawn;
  const [left, bottom, right, top] = numbers(drawn.bb) as [number, number, number, number];
  const place = (x: number, y: number): Point => ({ x: tenth(x - left + MARGIN), y: tenth(top - y + MARGIN) });
  const positions = new Map((drawn.objects ?? []).map(({ name, pos }) => [name, pos]));
  const curves = new Map((drawn.edges ?? []).map(({ id, pos }) => [id, pos]));
  return {
    width: tenth(right - left + 2 * MARGIN),
    height: tenth(top - bottom + 2 * MARGIN),
    nodes: graph.nodes.map((node): PlacedNode => {
      const [x, y] = numbers(positions.get(nameOf(node.id)) ?? '') as [number, number];
      return { ...node, ...place(x, y) };
    }),
    edges: graph.edges.map(
      (edge, index): PlacedEdge => ({ ...edge, points: curvePoints(curves.get(`e${index}`) ?? '', place) }),
    ),
  };
}

/** Points of a curve as Graphviz writes it; `s,x,y` and `e,x,y` before them are the tips of arrows. */
function curvePoints(text: string, place: (x: number, y: number) => Point): readonly Point[] {
  return text
    .split(/\s+/)
    .filter((part) => part !== '' && !/^[se],/.test(part))
    .map((part) => {
      const [x, y] = numbers(part) as [number, number];
      return place(x, y);
    });
}

function numbers(text: string): readonly number[] {
  return text.split(/[\s,]+/).map(Number);
}

function tenth(number: number): number {
  return Math.round(number * 10) / 10;
}
