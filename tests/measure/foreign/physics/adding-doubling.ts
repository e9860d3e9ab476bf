/**
 * Light in a layer that scatters and absorbs, by adding and doubling: a layer so shallow that light is scattered in it about once is
 * put upon itself until it is as deep as is wanted. Averaged over the azimuth; every direction of the quadrature is followed.
 *
 * Source: van de Hulst, Multiple Light Scattering (1980); Prahl, van Gemert & Welch, Applied Optics 32:559 (1993); the first layer by
 * Wiscombe's "diamond" scheme (1976). All from memory; the tests hold it against closed forms and published values.
 *
 * @packageDocumentation
 */
import { applied, combined, identity, inverse, type Matrix, product } from './matrix.ts';
import { legendre, type Quadrature } from './quadrature.ts';

/** What a layer does to light of each direction: both matrices give intensities out from intensities in. */
export interface SlabMatrices {
  readonly reflection: Matrix;
  readonly transmission: Matrix;
}

/** How light is scattered: Henyey and Greenstein's asymmetry, 0 evenly, 1 straight on. */
export interface Phase {
  /** Scattered into a direction of the same side from each direction, and into one of the other side. */
  readonly onward: Matrix;
  readonly back: Matrix;
  /** Part of what is scattered that goes on so nearly straight that it counts as not scattered (delta-M: Wiscombe 1977). */
  readonly straight: number;
}

// The first layer is this part of what the most grazing direction bears.
const FIRST_LAYER = 1 / 8;

/** Henyey and Greenstein's phase function over a quadrature, cut after as many terms as it has points. */
export function henyeyGreenstein({ cosines, weights }: Quadrature, asymmetry: number): Phase {
  const n = cosines.length;
  const straight = asymmetry === 0 ? 0 : asymmetry ** n;
  const P = Array.from(cosines, (cosine) => legendre(n - 1, cosine));
  const onward = new Float64Array(n * n);
  const back = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      for (let l = 0; l < n; l++) {
        const term = ((2 * l + 1) * (asymmetry ** l - straight) * P[i]![l]! * P[j]![l]!) / (1 - straight);
        onward[i * n + j]! += term;
        back[i * n + j]! += l % 2 === 0 ? term : -term;
      }
    }
  }
  // What is scattered out of a direction must all arrive: the sum of each column is mended on its diagonal.
  for (let j = 0; j < n; j++) {
    let arrives = 0;
    for (let i = 0; i < n; i++) arrives += (weights[i]! * (onward[i * n + j]! + back[i * n + j]!)) / 2;
    onward[j * n + j]! += (2 * (1 - arrives)) / weights[j]!;
  }
  return { onward, back, straight };
}

/**
 * A layer between two others of its own index.
 *
 * @param albedo scattered part of all that light meets, 0 to 1
 * @param depth optical depth: scattering and absorption along the normal, 0 or more
 */
export function slab(quadrature: Quadrature, phase: Phase, albedo: number, depth: number): SlabMatrices {
  const { cosines } = quadrature;
  const n = cosines.length;
  const taken = 1 - albedo * phase.straight;
  const deep = depth * taken;
  const doublings = Math.max(0, Math.ceil(Math.log2(deep / (FIRST_LAYER * Math.min(...cosines)))));
  let layer = firstLayer(quadrature, phase, (albedo * (1 - phase.straight)) / taken, deep / 2 ** doublings);
  for (let step = 0; step < doublings; step++) layer = doubled(layer, n);
  return layer;
}

function firstLayer({ cosines, weights }: Quadrature, phase: Phase, albedo: number, depth: number): SlabMatrices {
  const n = cosines.length;
  const A = new Float64Array(n * n);
  const B = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    const half = depth / (2 * cosines[i]!);
    for (let j = 0; j < n; j++) {
      const scattered = (half * albedo * weights[j]!) / 2;
      A[i * n + j] = (i === j ? half : 0) - scattered * phase.onward[i * n + j]!;
      B[i * n + j] = scattered * phase.back[i * n + j]!;
    }
  }
  const E = identity(n);
  const inner = product(B, inverse(combined(1, E, 1, A), n), n);
  const G = inverse(combined(1, combined(1, E, 1, A), -1, product(inner, B, n)), n);
  return {
    reflection: product(combined(2, G, 0, G), inner, n),
    transmission: combined(2, G, -1, E),
  };
}

function doubled({ reflection: R, transmission: T }: SlabMatrices, n: number): SlabMatrices {
  const between = product(T, inverse(combined(1, identity(n), -1, product(R, R, n)), n), n);
  return {
    reflection: combined(1, R, 1, product(between, product(R, T, n), n)),
    transmission: product(between, T, n),
  };
}

/** Flux of intensities that are even over the azimuth, where 1 in every direction carries 1. */
export function flux({ cosines, weights }: Quadrature, intensities: Float64Array): number {
  return intensities.reduce((sum, each, i) => sum + 2 * cosines[i]! * weights[i]! * each, 0);
}

/** Intensities of a beam of flux 1 along one direction of a quadrature. */
export function beam({ cosines, weights }: Quadrature, direction: number): Float64Array {
  const intensities = new Float64Array(cosines.length);
  intensities[direction] = 1 / (2 * cosines[direction]! * weights[direction]!);
  return intensities;
}

/** Flux that comes back from a layer, and that gets through it, of intensities that fall on it. */
export function fluxes(
  quadrature: Quadrature,
  { reflection, transmission }: SlabMatrices,
  falling: Float64Array,
): { readonly back: number; readonly through: number } {
  const n = falling.length;
  return {
    back: flux(quadrature, applied(reflection, falling, n)),
    through: flux(quadrature, applied(transmission, falling, n)),
  };
}
