import { effectiveDepth, layerOver } from '../../optics/kubelka-munk.ts';
import { pathFactor } from '../../optics/optical-model.ts';
import { BAND_COUNT } from '../../optics/spectrum.ts';
import { BESIDE_GLOSS, surfaceOutward } from '../../optics/surface.ts';
import type { Run } from '../../patterns/place.ts';
import type { PicturedBait, TaughtFactors } from '../pictured-bait.ts';
import { writeLinear } from './linear-weights.ts';

/** Numbers of a colour: linear sRGB over white, then over black. */
export const COLOUR = 6;

/** What a colour needs of a bait. */
export type Plastics = Pick<PicturedBait, 'cups' | 'optics'>;

// A bait has thousands of stacks: nothing is made for one.
const WHITE = new Float64Array(BAND_COUNT);
const BLACK = new Float64Array(BAND_COUNT);

/**
 * Writes the colour of a stack of cups that is so thick, mm, as `stackReflectances` has it beside the gloss, times what looks have taught.
 *
 * @param runs the near cup first
 * @param at place of the first of six numbers
 */
export function writeStackColour(
  { cups, optics: { backings, path } }: Plastics,
  runs: readonly Run[],
  taught: readonly TaughtFactors[],
  mm: number,
  out: Float64Array,
  at: number,
): void {
  for (let band = 0; band < BAND_COUNT; band++) {
    let scattered = 0;
    for (let run = 0; run < runs.length; run++)
      scattered += cups[runs[run]!.cup]!.scattering[band]! * runs[run]!.part * mm;
    const factor = pathFactor(path, scattered);
    let white = typeof backings.white === 'number' ? backings.white : backings.white[band]!;
    let black = typeof backings.black === 'number' ? backings.black : backings.black[band]!;
    for (let run = runs.length - 1; run >= 0; run--) {
      const { cup, part } = runs[run]!;
      const K = cups[cup]!.absorption[band]! * factor;
      const S = cups[cup]!.scattering[band]! * factor;
      const depth = effectiveDepth(K, S, part * mm);
      white = layerOver(K, S, depth, white);
      black = layerOver(K, S, depth, black);
    }
    WHITE[band] = surfaceOutward(white, BESIDE_GLOSS);
    BLACK[band] = surfaceOutward(black, BESIDE_GLOSS);
  }
  if (taught.length > 0) {
    multiply(WHITE, taught, 'overWhite', mm);
    multiply(BLACK, taught, 'overBlack', mm);
  }
  writeLinear(WHITE, out, at);
  writeLinear(BLACK, out, at + 3);
}

/** Multiplies a reflectance by what was taught of its thickness: between two by both, thinner than the least by ever less, down to 1. */
function multiply(
  reflectance: Float64Array,
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
