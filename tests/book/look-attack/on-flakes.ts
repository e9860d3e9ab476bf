import { GAUSS_NODES, GAUSS_WEIGHTS } from '../../../src/optics/gauss-legendre.ts';
import { layerSlopes } from '../../../src/optics/layer-slopes.ts';

// As in `optics/layer-slopes.ts`: within ΔE00 0.05 of the finer rule of the book.
const PANEL = 4;
const NOTHING_LEFT = 12;

/** A flake in a cup. */
export interface HeldFlake {
  readonly column: number;
  readonly cup: number;
  readonly perMm: number;
  readonly perDose: number;
  readonly reflectance: Float64Array;
  /** What is seen of it by a flake per mm: scratch of `onFlakes`. */
  seen: number;
}

const SLOPES = new Float64Array(4);
/** What is seen on flake; its slopes with K and with S; and the same weighted by depth. */
export const ON_FLAKE = new Float64Array(4);

/** The integral over depth of what is seen on the flake of a cup, into `ON_FLAKE`. */
export function onFlakes(
  K: number,
  S: number,
  thickness: number,
  flakes: readonly HeldFlake[],
  cup: number,
  mu: number,
  band: number,
): void {
  ON_FLAKE.fill(0);
  for (const flake of flakes) flake.seen = 0;
  const deepest = mu > 0 ? Math.min(thickness, NOTHING_LEFT / mu) : thickness;
  let from = 0;
  let width = PANEL / (mu + 2 * (K + S));
  while (from < deepest) {
    const to = Math.min(deepest, from + width);
    for (let node = 0; node < GAUSS_NODES.length; node++) {
      const z = from + ((to - from) * (1 + GAUSS_NODES[node]!)) / 2;
      const weight = ((to - from) / 2) * GAUSS_WEIGHTS[node]! * Math.exp(-mu * z);
      for (const flake of flakes) {
        if (flake.cup !== cup) continue;
        layerSlopes(K, S, z, flake.reflectance[band]!, SLOPES);
        const R = weight * SLOPES[0]!;
        flake.seen += R;
        ON_FLAKE[0]! += flake.perMm * R;
        ON_FLAKE[1]! += weight * flake.perMm * SLOPES[1]!;
        ON_FLAKE[2]! += weight * flake.perMm * SLOPES[2]!;
        ON_FLAKE[3]! += z * flake.perMm * R;
      }
    }
    from = to;
    width *= PANEL;
  }
}
