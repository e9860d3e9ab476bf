/**
 * A layer's reflectance and how it changes with K, S and the backing: the derivatives of the one closed form that
 * `optics/kubelka-munk.ts` is written in, R = [S t + Rg (1 − (K + S) t)] / [1 + (K + S) t − Rg S t].
 *
 * @packageDocumentation
 */

import type { SpreadFlake } from './flake.ts';
import { GAUSS_NODES, GAUSS_WEIGHTS } from './gauss-legendre.ts';
import { effectiveDepth } from './kubelka-munk.ts';

/** R, ∂R/∂K, ∂R/∂S, ∂R/∂Rg; K and S per mm. */
export type Slopes = Float64Array;

/**
 * Writes a layer's reflectance over Rg and its slopes into `out`. Unchecked: for inner loops.
 *
 * Units: K and S per mm, >= 0; thickness in mm.
 */
export function layerSlopes(K: number, S: number, thickness: number, Rg: number, out: Slopes): void {
  depthSlopes(K, S, thickness, depth, 0);
  slopesOver(K, S, depth, 0, Rg, out);
}

const depth = new Float64Array(3);

/** Writes a layer's effective depth t, ∂t/∂K and ∂t/∂S from `at` on, which no backing changes. Unchecked, as all here. */
export function depthSlopes(K: number, S: number, thickness: number, out: Float64Array, at: number): void {
  const t = effectiveDepth(K, S, thickness);
  const square = K * (K + 2 * S);
  const x2 = square * thickness * thickness;
  // dt/d(γ²) = [X (1 − γ²t²) − t] / (2γ²), and its series where that would be 0/0.
  const byGamma =
    x2 < 0.01
      ? thickness ** 3 * (-1 / 3 + x2 * (4 / 15 - x2 * (17 / 105 - x2 * (248 / 2835))))
      : (thickness * (1 - square * t * t) - t) / (2 * square);
  out[at] = t;
  out[at + 1] = byGamma * 2 * (K + S);
  out[at + 2] = byGamma * 2 * K;
}

/** The same as `layerSlopes`, of a layer of which `depths` has from `at` on what `depthSlopes` writes. */
export function slopesOver(K: number, S: number, depths: Float64Array, at: number, Rg: number, out: Slopes): void {
  const t = depths[at]!;
  const tK = depths[at + 1]!;
  const tS = depths[at + 2]!;
  const A = K + S;
  const N = S * t + Rg * (1 - A * t);
  const D = 1 + A * t - Rg * S * t;
  const R = Math.max(0, N / D);
  const nt = S - Rg * A;
  const dt = A - Rg * S;
  out[0] = R;
  out[1] = (nt * tK - Rg * t - R * (t + dt * tK)) / D;
  out[2] = (t + nt * tS - Rg * t - R * (t + dt * tS - Rg * t)) / D;
  out[3] = (1 - A * t + R * S * t) / D;
}

const held = new Float64Array(4);

// First panel, in depths at which the plastic changes what is seen of a flake; the next ones are as many times as wide.
const PANEL = 4;
// Beyond 12/μ a sight line in 160 000 goes on.
const NOTHING_LEFT = 12;

/**
 * `layerSlopes` with flake in the layer: the mean over lines of sight that end at the first flake or at the backing.
 *
 * The depth integral of `optics/flake.ts` on fewer and wider panels: within ΔE00 0.05 of it, and four times as fast.
 */
export function flakedSlopes(
  K: number,
  S: number,
  thickness: number,
  flakes: readonly SpreadFlake[],
  band: number,
  Rg: number,
  out: Slopes,
): void {
  let mu = 0;
  for (const flake of flakes) mu += flake.perMm;
  layerSlopes(K, S, thickness, Rg, out);
  if (mu === 0) return;
  const through = Math.exp(-mu * thickness);
  for (let i = 0; i < 4; i++) out[i]! *= through;
  const deepest = Math.min(thickness, NOTHING_LEFT / mu);
  let from = 0;
  let width = PANEL / (mu + 2 * (K + S));
  while (from < deepest) {
    const to = Math.min(deepest, from + width);
    for (let node = 0; node < GAUSS_NODES.length; node++) {
      const z = from + ((to - from) * (1 + GAUSS_NODES[node]!)) / 2;
      const weight = ((to - from) / 2) * GAUSS_WEIGHTS[node]! * Math.exp(-mu * z);
      for (const flake of flakes) {
        layerSlopes(K, S, z, flake.reflectance[band]!, held);
        for (let i = 0; i < 3; i++) out[i]! += weight * flake.perMm * held[i]!;
      }
    }
    from = to;
    width *= PANEL;
  }
}
