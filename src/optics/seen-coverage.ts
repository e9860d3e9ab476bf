/**
 * Flake as it is seen: how much of a bait's face an eye takes for flake. What lies deep in a coloured body is behind its colour.
 *
 * Source: the geometry of `flake.ts`; that a flake counts as much as it stands out from the body is a convention of this book.
 *
 * @packageDocumentation
 */

import { labOf } from './cielab.ts';
import { layersViews, type TwoViews, viewsDifference } from './cup-body.ts';
import type { SpreadFlake } from './flake.ts';
import { GAUSS_NODES, GAUSS_WEIGHTS } from './gauss-legendre.ts';
import { NO_PATH, type OpticalModel } from './optical-model.ts';
import { BAND_COUNT } from './spectrum.ts';
import { alongPath, coverWithLayers, type Layer } from './stack.ts';
import { BESIDE_GLOSS } from './surface.ts';

/** What an eye meets of a kind of flake. */
export interface SeenFlake {
  /** Share of the face that is taken for this flake, 0..1. */
  readonly coverage: number;
  /** ΔE00 between its face, just below the surface, and the body: below `LEAST_CONTRAST` it can hardly be told from the plastic. */
  readonly contrast: number;
}

/** How a kind of flake shows at the depths of a layer, whatever there is of it. */
export interface FlakeSight {
  readonly contrast: number;
  /** Depths in the layer, mm, with what each counts for in an integral over depth, mm, and what a flake there counts for, 0..1. */
  readonly steps: readonly { readonly depth: number; readonly width: number; readonly counts: number }[];
}

/**
 * From this ΔE00 at the face on, a flake there is seen as one, and counts as 1; one that stands out less counts for its part of it.
 * Convention of this book: a small spot is told from its ground at about twice what is told side by side.
 */
export const LEAST_CONTRAST = 2;

/**
 * How a kind of flake shows in a layer of a bait.
 *
 * A flake counts as ΔE00 between the body with it at that depth and the body without flake, by the same at the face, and never for
 * more than 1. Of the body over white and over black the one counts in which that is more (see `viewsDifference`): a flake is there
 * if it can be seen over either. Seen beside the gloss, through all layers in front.
 * Shape: layers with the near one first; their flake is not looked at. `fastest` is the most flakes per mm that are to be asked for.
 * Throws: RangeError if a layer or the flake's reflectance is out of range.
 */
export function flakeSight(
  layers: readonly Layer[],
  at: number,
  reflectance: ArrayLike<number>,
  fastest: number,
  optics: OpticalModel,
): FlakeSight {
  const unflaked = layers.map(({ absorption, scattering, thickness }) => ({ absorption, scattering, thickness }));
  // A flake lies in the light of the whole bait, however little plastic is before it.
  const plain = alongPath(unflaked, optics.path);
  const body = layersViews(plain, { ...optics, path: NO_PATH });
  const contrast = standsOut([], reflectance, body);
  const full = Math.max(contrast, LEAST_CONTRAST);
  const layer = plain[at];
  if (layer === undefined) throw new RangeError(`There is no layer ${at} of ${layers.length}; name one that there is`);
  const front = plain.slice(0, at);
  const steps = depthSteps(layer, fastest).map(({ depth, width }) => ({
    depth,
    width,
    counts: Math.min(1, standsOut([...front, { ...layer, thickness: depth }], reflectance, body) / full),
  }));
  return { contrast, steps };
}

/**
 * Share of the face that is taken for a kind of flake: ∫ μᵢ e^(−μz) w(z) dz over the layer, w what a flake there counts for.
 *
 * Units: perMm of this kind, and of all kinds of the layer together, as from `flakesPerMm`; past is the share of the lines of sight
 * that get to the layer.
 */
export function seenShare({ steps }: Pick<FlakeSight, 'steps'>, perMm: number, together = perMm, past = 1): number {
  let share = 0;
  for (const { depth, width, counts } of steps) share += width * Math.exp(-together * depth) * counts;
  return past * perMm * share;
}

/**
 * What an eye meets of each kind of flake in a bait: of all kinds the first one on a line of sight, weighed by what it counts for.
 *
 * Shape: layers with the near one first, of each flake what a line of sight meets of any transparency (`flakesPerMm`); returns for
 * each layer what is seen of each of its flakes. They add up to what is seen of all together.
 * Right to 1e-3.
 * Throws: RangeError as `flakeSight`.
 */
export function seenCoverage(layers: readonly Layer[], optics: OpticalModel): readonly (readonly SeenFlake[])[] {
  let past = 1;
  return layers.map(({ flakes = [], thickness }, at) => {
    const together = flakes.reduce((sum, { perMm }) => sum + perMm, 0);
    const seen = flakes.map(({ perMm, reflectance }: SpreadFlake): SeenFlake => {
      const sight = flakeSight(layers, at, reflectance, together, optics);
      return { coverage: Math.min(1, seenShare(sight, perMm, together, past)), contrast: sight.contrast };
    });
    past *= Math.exp(-together * thickness);
    return seen;
  });
}

const AT_DEPTH = new Float64Array(BAND_COUNT);

/** ΔE00 between a face of this reflectance behind layers (with K′, see `alongPath`), and the body. */
function standsOut(front: readonly Layer[], reflectance: ArrayLike<number>, body: TwoViews): number {
  AT_DEPTH.set(reflectance);
  coverWithLayers(front, [AT_DEPTH], BESIDE_GLOSS, NO_PATH);
  const seen = labOf(AT_DEPTH);
  return viewsDifference({ overWhite: seen, overBlack: seen }, body);
}

/** Gauss and Legendre's rule on panels that double: both the weight and the colour change ever more slowly with depth. */
function depthSteps(
  { absorption, scattering, thickness }: Layer,
  fastest: number,
): readonly { readonly depth: number; readonly width: number }[] {
  let rate = 0;
  for (let band = 0; band < BAND_COUNT; band++) rate = Math.max(rate, absorption[band]! + scattering[band]!);
  const panels = Math.max(1, Math.ceil(Math.log2(1 + (thickness * (fastest + 2 * rate)) / 2)));
  let half = thickness / (2 ** panels - 1) / 2;
  let from = 0;
  const steps: { depth: number; width: number }[] = [];
  for (let panel = 0; panel < panels; panel++) {
    for (let i = 0; i < GAUSS_NODES.length; i++)
      steps.push({ depth: from + half * (1 + GAUSS_NODES[i]!), width: half * GAUSS_WEIGHTS[i]! });
    from += 2 * half;
    half *= 2;
  }
  return steps;
}
