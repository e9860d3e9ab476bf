/** Kubelka and Munk's forms for a single band, by the same arithmetic as those of whole spectra. */
import { effectiveDepth, layerOver } from '../../src/optics/kubelka-munk.ts';

/** Reflectance of a layer thick enough to hide its backing; KS is the ratio K/S. */
export function reflectanceInfinite(KS: number): number {
  return 1 / (1 + KS + Math.sqrt(KS) * Math.sqrt(KS + 2));
}

/** Reflectance of a layer over a backing in optical contact. */
export function layerReflectance(K: number, S: number, thickness: number, Rg: number): number {
  return layerOver(K, S, effectiveDepth(K, S, thickness), Rg);
}

/** Share of diffuse light that a layer lets through, without backing: T = b / (a sinh bSX + b cosh bSX). */
export function layerTransmittance(K: number, S: number, thickness: number): number {
  const attenuation = Math.exp(-Math.sqrt(K * (K + 2 * S)) * thickness);
  const cosh2 = 1 + attenuation * attenuation;
  return (2 * attenuation) / (cosh2 * (1 + (K + S) * effectiveDepth(K, S, thickness)));
}
