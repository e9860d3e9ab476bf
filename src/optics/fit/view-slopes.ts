/**
 * How the spectrum and the colour of a film change with the unknowns of its materials.
 *
 * Unknowns here are local to the film: for each of its materials, in order, ln k of each band, ln s of each band, the
 * standard number of ln factor; then those of ln amount of each part.
 */
import type { Surface } from '../surface.ts';
import type { ObserverWeights } from '../tristimulus.ts';
import { type LabSlopes, labSlopes, labSlopesSpace } from './colour-misfit.ts';
import { type FilmNumbers, type FilmState, layerSlopes, type MaterialNumbers } from './film-model.ts';
import type { PartSpreads } from './part-spreads.ts';

/** One view of a film: its spectrum and Lab, and their derivatives. */
export interface ViewSlopes {
  readonly R: Float64Array;
  readonly lab: LabSlopes;
  /** dR/dK and dR/dS, band by band. */
  readonly byK: Float64Array;
  readonly byS: Float64Array;
  /** dR by ln thickness. */
  readonly byThickness: Float64Array;
}

/** Computes a view of a film whose K and S stand in `state`. */
export function viewSlopes(
  state: FilmState,
  thickness: number,
  backing: Float64Array,
  surface: Surface,
  weights: ObserverWeights,
): ViewSlopes {
  const { K, S } = state;
  const bands = K.length;
  const slopes: ViewSlopes = {
    R: new Float64Array(bands),
    lab: labSlopesSpace(bands),
    byK: new Float64Array(bands),
    byS: new Float64Array(bands),
    byThickness: new Float64Array(bands),
  };
  const layer = { R: 0, byK: 0, byS: 0 };
  for (let band = 0; band < bands; band++) {
    layerSlopes(K[band]!, S[band]!, thickness, backing[band]!, surface, layer);
    slopes.R[band] = layer.R;
    slopes.byK[band] = layer.byK;
    slopes.byS[band] = layer.byS;
    slopes.byThickness[band] = layer.byK * K[band]! + layer.byS * S[band]!;
  }
  labSlopes(slopes.R, weights, slopes.lab);
  return slopes;
}

/**
 * Writes the derivative of one band by the film's local unknowns: only those of that band, the factors and the amounts are
 * not zero.
 *
 * Shape: calls `write(position, derivative)` four times a material.
 */
export function bandByUnknowns(
  view: ViewSlopes,
  band: number,
  film: FilmNumbers,
  state: FilmState,
  materials: readonly MaterialNumbers[],
  spreads: PartSpreads,
  write: (position: number, derivative: number) => void,
): void {
  const { K, S, v } = state;
  const bands = K.length;
  const byK = view.byK[band]!;
  const byS = view.byS[band]!;
  for (let i = 0; i < film.materials.length; i++) {
    const { absorption, scattering } = materials[film.materials[i]!]!;
    const at = i * (2 * bands + 1);
    const byLnK = byK * v[i]! * absorption[band]!;
    const byLnS = byS * v[i]! * scattering[band]!;
    write(at + band, byLnK);
    write(at + bands + band, byLnS);
    const byLnAmount = byLnK + byLnS - v[i]! * (byK * K[band]! + byS * S[band]!);
    write(at + 2 * bands, spreads.factors[i]! * byLnAmount);
    write(film.materials.length * (2 * bands + 1) + i, spreads.weighing[i]! * byLnAmount);
  }
}
