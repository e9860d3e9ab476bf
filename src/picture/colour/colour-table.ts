/**
 * The colour of a stack of cups by its thickness, looked up rather than computed for each pixel.
 *
 * @packageDocumentation
 */
import { BAND_COUNT, type Spectrum } from '../../optics/spectrum.ts';
import { type Layer, stackReflectances } from '../../optics/stack.ts';
import { BESIDE_GLOSS } from '../../optics/surface.ts';
import type { Run } from '../../patterns/place.ts';
import type { PicturedBait, TaughtFactors } from '../pictured-bait.ts';
import { writeLinear } from './linear-weights.ts';

/** Thicknesses in a table: with fewer than 48 thin dark dyes are off by more than ΔE00 0.15. */
const NODES = 48;

/** Linear sRGB over white, then over black. */
export const COLOUR = 6;

const LAST = NODES - 1;

/** ⌊√n⌋: between which nodes a thickness lies, without a root. */
const CELLS = Uint8Array.from({ length: LAST * LAST + 1 }, (_, square) =>
  Math.min(LAST - 1, Math.floor(Math.sqrt(square))),
);

/** What a table needs of a bait. */
export type Plastics = Pick<PicturedBait, 'cups' | 'optics'>;

/** A stack of cups at thicknesses from nothing to the most. Thickness goes with the square of a node's place: colours change fast where it is thin. */
export class ColourTable {
  private readonly colours = new Float64Array(NODES * COLOUR);
  private readonly squares: number;

  /** @param runs the near cup first; @param mostMm above 0; thicker is taken for that */
  constructor(bait: Plastics, runs: readonly Run[], taught: readonly TaughtFactors[], mostMm: number) {
    this.squares = (LAST * LAST) / mostMm;
    for (let node = 0; node < NODES; node++)
      writeStack(bait, runs, taught, mostMm * (node / LAST) ** 2, this.colours, node * COLOUR);
  }

  /** Adds so much of the colour at a thickness in mm to six numbers. */
  add(mm: number, weight: number, sums: Float64Array): void {
    const square = Math.min(LAST * LAST, mm * this.squares);
    const cell = CELLS[square | 0]!;
    const far = ((square - cell * cell) / (2 * cell + 1)) * weight;
    const near = weight - far;
    const at = cell * COLOUR;
    for (let i = 0; i < COLOUR; i++) sums[i]! += near * this.colours[at + i]! + far * this.colours[at + COLOUR + i]!;
  }
}

/** Writes six numbers: the colour of a stack of a thickness in mm, as the optics and what looks have taught of it have it. */
export function writeStack(
  { cups, optics: { backings, path } }: Plastics,
  runs: readonly Run[],
  taught: readonly TaughtFactors[],
  mm: number,
  out: Float64Array,
  at: number,
): void {
  const layers = runs.map(({ cup, part }): Layer => ({ ...cups[cup]!, flakes: [], thickness: part * mm }));
  const [white, black] = stackReflectances(layers, [backings.white, backings.black], BESIDE_GLOSS, path);
  if (taught.length > 0) {
    multiply(white!, taught, 'overWhite', mm);
    multiply(black!, taught, 'overBlack', mm);
  }
  writeLinear(white!, out, at);
  writeLinear(black!, out, at + 3);
}

/** Multiplies a reflectance by what was taught of its thickness: between two by both, thinner than the least by ever less, down to 1. */
function multiply(
  reflectance: Spectrum,
  taught: readonly TaughtFactors[],
  view: 'overWhite' | 'overBlack',
  mm: number,
): void {
  const next = taught.find((factors) => factors.mm >= mm);
  const before = taught.findLast((factors) => factors.mm < mm);
  const from = before?.mm ?? 0;
  const part = next === undefined ? 0 : next.mm > from ? (mm - from) / (next.mm - from) : 1;
  for (let band = 0; band < BAND_COUNT; band++) {
    const low = before?.[view][band] ?? 1;
    const high = next?.[view][band] ?? low;
    reflectance[band]! *= low ** (1 - part) * high ** part;
  }
}
