import { WAVELENGTHS } from './eye.ts';

/** A value at each of `WAVELENGTHS`. */
export type Spectrum = Float64Array;

/** What makes up an absorption: a band, an edge below which all is taken, a slope, or the same everywhere. */
export type Feature =
  | { readonly kind: 'band'; readonly at: number; readonly width: number; readonly height: number }
  | { readonly kind: 'edge'; readonly at: number; readonly width: number; readonly height: number }
  | { readonly kind: 'slope'; readonly reach: number; readonly height: number }
  | { readonly kind: 'floor'; readonly height: number };

/** A spectrum of a formula. */
export function spectrumOf(formula: (nm: number) => number): Spectrum {
  return Float64Array.from(WAVELENGTHS, formula);
}

/** The sum of features: normal curves, S-shaped edges, exponentials from 400 nm on. */
export function absorptionOf(features: readonly Feature[]): Spectrum {
  return spectrumOf((nm) => features.reduce((sum, feature) => sum + heightAt(feature, nm), 0));
}

function heightAt(feature: Feature, nm: number): number {
  switch (feature.kind) {
    case 'band':
      return feature.height * Math.exp(-(((nm - feature.at) / feature.width) ** 2) / 2);
    case 'edge':
      return feature.height / (1 + Math.exp((nm - feature.at) / feature.width));
    case 'slope':
      return feature.height * Math.exp((400 - nm) / feature.reach);
    case 'floor':
      return feature.height;
  }
}

/** Reduced scattering that falls with a power of the wavelength, from its value at 550 nm. */
export function scatteringOf(at550: number, power: number): Spectrum {
  return spectrumOf((nm) => at550 * (550 / nm) ** power);
}
