/** A graph to be drawn, and the places that a drawing gives it. Lengths are in pixels of the drawing. */

/** A box, by its size. */
export interface GraphNode {
  readonly id: string;
  readonly width: number;
  readonly height: number;
}

/** An arrow from a parent to its child, by their ids. */
export interface GraphEdge {
  readonly from: string;
  readonly to: string;
}

export interface Graph {
  readonly nodes: readonly GraphNode[];
  readonly edges: readonly GraphEdge[];
}

/** The centre of a node. */
export interface PlacedNode extends GraphNode {
  readonly x: number;
  readonly y: number;
}

/** An edge as cubic Bézier curves: a start, then three points a curve. It keeps its place in the graph's list. */
export interface PlacedEdge extends GraphEdge {
  readonly points: readonly { readonly x: number; readonly y: number }[];
}

/** A drawing with its origin at the top left; nodes and edges in the order of the graph. */
export interface GraphLayout {
  readonly width: number;
  readonly height: number;
  readonly nodes: readonly PlacedNode[];
  readonly edges: readonly PlacedEdge[];
}
