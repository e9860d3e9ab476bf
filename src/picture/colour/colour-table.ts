import type { Run } from '../../patterns/place.ts';
import type { TaughtFactors } from '../pictured-bait.ts';
import type { ComputedColour } from './computed-colour.ts';
import { COLOUR, type Plastics, writeStackColour } from './stack-colour.ts';

/** Thicknesses in a table: with fewer thin dark dyes are off by more than ΔE00 0.15. */
const NODES = 56;

const LAST = NODES - 1;

/** ⌊√n⌋: between which nodes a thickness lies, without a root. */
const CELLS = Uint8Array.from({ length: LAST * LAST + 1 }, (_, square) =>
  Math.min(LAST - 1, Math.floor(Math.sqrt(square))),
);

/**
 * The colour of a stack of cups by its thickness, looked up rather than computed for each pixel.
 *
 * Its thicknesses go with the squares of whole numbers: where plastic is thin its colour changes fast. Between two it runs straight. Each is
 * computed when it is first asked for: many a stack is thick wherever it is.
 */
export class ColourTable {
  private readonly bait: Plastics;
  private readonly runs: readonly Run[];
  private readonly taught: readonly TaughtFactors[];
  private readonly mostMm: number;
  private readonly colours = new Float64Array(NODES * COLOUR).fill(Number.NaN);
  private readonly squares: number;

  /** @param runs the near cup first; @param mostMm above 0; thicker is taken for that */
  constructor(bait: Plastics, runs: readonly Run[], taught: readonly TaughtFactors[], mostMm: number) {
    this.bait = bait;
    this.runs = runs;
    this.taught = taught;
    this.mostMm = mostMm;
    this.squares = (LAST * LAST) / mostMm;
  }

  /** Where the numbers of a node begin, before those of the next. */
  private nodesAt(cell: number): number {
    const at = cell * COLOUR;
    if (Number.isNaN(this.colours[at])) this.compute(cell);
    if (Number.isNaN(this.colours[at + COLOUR])) this.compute(cell + 1);
    return at;
  }

  private compute(node: number): void {
    const { bait, runs, taught, mostMm, colours } = this;
    writeStackColour(bait, runs, taught, mostMm * (node / LAST) ** 2, colours, node * COLOUR);
  }

  /** Writes the colour at a thickness in mm. */
  write(mm: number, { white, black }: ComputedColour, at: number): void {
    const { colours } = this;
    const square = Math.min(LAST * LAST, mm * this.squares);
    const cell = CELLS[square | 0]!;
    const far = (square - cell * cell) / (2 * cell + 1);
    const near = 1 - far;
    const from = this.nodesAt(cell);
    white[at] = near * colours[from]! + far * colours[from + 6]!;
    white[at + 1] = near * colours[from + 1]! + far * colours[from + 7]!;
    white[at + 2] = near * colours[from + 2]! + far * colours[from + 8]!;
    black[at] = near * colours[from + 3]! + far * colours[from + 9]!;
    black[at + 1] = near * colours[from + 4]! + far * colours[from + 10]!;
    black[at + 2] = near * colours[from + 5]! + far * colours[from + 11]!;
  }

  /** Writes what lies between this table's colour at a thickness in mm and another's of the same bait: so much, 0 to 1, of the other. */
  writeBetween(other: ColourTable, part: number, mm: number, { white, black }: ComputedColour, at: number): void {
    const [one, two] = [this.colours, other.colours];
    const square = Math.min(LAST * LAST, mm * this.squares);
    const cell = CELLS[square | 0]!;
    const far = (square - cell * cell) / (2 * cell + 1);
    const from = this.nodesAt(cell);
    other.nodesAt(cell);
    const [a, b, c, d] = [(1 - part) * (1 - far), (1 - part) * far, part * (1 - far), part * far];
    for (let channel = 0; channel < 3; channel++) {
      const [w, k] = [from + channel, from + 3 + channel];
      white[at + channel] = a * one[w]! + b * one[w + COLOUR]! + c * two[w]! + d * two[w + COLOUR]!;
      black[at + channel] = a * one[k]! + b * one[k + COLOUR]! + c * two[k]! + d * two[k + COLOUR]!;
    }
  }

  /** Adds so much of the colour at a thickness in mm. */
  add(mm: number, weight: number, { white, black }: ComputedColour, at: number): void {
    const { colours } = this;
    const square = Math.min(LAST * LAST, mm * this.squares);
    const cell = CELLS[square | 0]!;
    const far = ((square - cell * cell) / (2 * cell + 1)) * weight;
    const near = weight - far;
    const from = this.nodesAt(cell);
    white[at]! += near * colours[from]! + far * colours[from + 6]!;
    white[at + 1]! += near * colours[from + 1]! + far * colours[from + 7]!;
    white[at + 2]! += near * colours[from + 2]! + far * colours[from + 8]!;
    black[at]! += near * colours[from + 3]! + far * colours[from + 9]!;
    black[at + 1]! += near * colours[from + 4]! + far * colours[from + 10]!;
    black[at + 2]! += near * colours[from + 5]! + far * colours[from + 11]!;
  }
}

/** Writes nothing at all into a pixel, to be added to. */
export function clearPixel({ white, black }: ComputedColour, at: number): void {
  white[at] = 0;
  white[at + 1] = 0;
  white[at + 2] = 0;
  black[at] = 0;
  black[at + 1] = 0;
  black[at + 2] = 0;
}
