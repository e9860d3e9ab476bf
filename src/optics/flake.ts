/**
 * Flake: how many there are, how much of the bait they cover, and what a body with flake in it looks like.
 *
 * Sources: A. Cauchy (1832/1850): the mean projected area of a convex body is a quarter of its surface, so a thin plate of
 * face area A shows A/2 on average; the rest is Poisson's law along a line of sight.
 */
import { FLAKE_FILM_DENSITY, FLAKE_FILM_THICKNESS } from '../tables/flake-film.ts';
import { GAUSS_NODES, GAUSS_WEIGHTS } from './gauss-legendre.ts';
import { coverWithLayer, effectiveDepth, layerOver } from './kubelka-munk.ts';
import { BAND_COUNT, requireBands, type Spectrum } from './spectrum.ts';

/** Outline of a flake. */
export type FlakeShape = 'hex' | 'square' | 'round';

/** What a flake is cut to. */
export interface FlakeCut {
  readonly shape: FlakeShape;
  /** Across flats, side, or diameter, in mm. */
  readonly sizeMm: number;
  /** Thickness of the film in mm; unset: 0.0254 (common practice, no source). */
  readonly filmMm?: number;
  /** Density of the film in g/ml; unset: 1.39 (polyester). */
  readonly density?: number;
}

/** A kind of flake: its cut and its colour. */
export interface Flake extends FlakeCut {
  /** Reflectance of its face inside the plastic, a spectrum. */
  readonly reflectance: ArrayLike<number>;
  /** Share of what is behind a flake that is seen through it, 0..1; unset: 0, as metallized flake. */
  readonly transmittance?: number;
}

/** Flake spread in a plastic, as the optics needs it. */
export interface SpreadFlake {
  /** Flakes that hide what is behind them, met per mm of a line of sight. */
  readonly perMm: number;
  /** Reflectance of their faces inside the plastic. */
  readonly reflectance: ArrayLike<number>;
}

/**
 * Area of one face in mm².
 *
 * Units: sizeMm in mm: across flats of a hexagon, side of a square, diameter of a round flake.
 * Throws: RangeError if the size is not above 0 and finite.
 *
 * @example flakeArea('hex', 1.016) // 0.893960, to 6 digits: a 0.040 in hexagon
 */
export function flakeArea(shape: FlakeShape, sizeMm: number): number {
  requirePositive(sizeMm, 'Flake size in mm');
  const square = sizeMm * sizeMm;
  switch (shape) {
    case 'hex':
      return (Math.sqrt(3) / 2) * square;
    case 'square':
      return square;
    case 'round':
      return (Math.PI / 4) * square;
  }
}

/**
 * Mass of one flake in g.
 *
 * Throws: RangeError if a measure is not above 0 and finite.
 *
 * @example flakeMass({ shape: 'square', sizeMm: 1, filmMm: 0.025, density: 1.4 }) // 0.000035
 */
export function flakeMass(cut: FlakeCut): number {
  const { filmMm = FLAKE_FILM_THICKNESS, density = FLAKE_FILM_DENSITY } = cut;
  requirePositive(filmMm, 'Film thickness in mm');
  requirePositive(density, 'Film density in g/ml');
  return (flakeArea(cut.shape, cut.sizeMm) * filmMm * density) / 1000;
}

/**
 * Flakes in a millilitre of plastic.
 *
 * Units: concentration in g/ml, >= 0.
 * Throws: RangeError if the concentration is negative or not finite, or a measure is not above 0.
 *
 * @example flakesPerMl(0.0035, { shape: 'square', sizeMm: 1, filmMm: 0.025, density: 1.4 }) // 100
 */
export function flakesPerMl(concentration: number, cut: FlakeCut): number {
  if (!(concentration >= 0 && concentration < Number.POSITIVE_INFINITY)) {
    throw new RangeError(`Flake concentration is ${concentration} g/ml; give a finite number, at least 0`);
  }
  return concentration / flakeMass(cut);
}

/**
 * Flakes of any transparency that a line of sight meets per mm: n A / 2.
 *
 * Units: concentration in g/ml; returns per mm.
 */
export function flakesPerMm(concentration: number, cut: FlakeCut): number {
  return ((flakesPerMl(concentration, cut) / 1000) * flakeArea(cut.shape, cut.sizeMm)) / 2;
}

/** Flake at a concentration as a line of sight meets it, whatever of it is to be seen through: see `seenCoverage`. */
export function metFlake(flake: Flake, concentration: number): SpreadFlake {
  return { perMm: flakesPerMm(concentration, flake), reflectance: flake.reflectance };
}

/**
 * Share of the bait's face that has flake in view, of any depth and transparency: 1 − exp(−n A X / 2), the kinds together.
 *
 * Units: thickness in mm; perMm as from `flakesPerMm`. Returns 0..1. With that of `spreadFlake` it is what the flake hides.
 *
 * @example flakeCoverage([{ perMm: 0.1 }], 10) // 0.632121, to 6 digits
 */
export function flakeCoverage(flakes: readonly { readonly perMm: number }[], thickness: number): number {
  return -Math.expm1(-totalPerMm(flakes) * thickness);
}

/**
 * Mean spacing of flake in mm: the edge of the cube that each flake has to itself, n^(−1/3). Undefined without flake.
 *
 * @example flakeSpacing(1000) // 1
 */
export function flakeSpacing(perMl: number): number | undefined {
  return perMl > 0 ? Math.cbrt(1000 / perMl) : undefined;
}

/**
 * Flake of a kind at a concentration, for `coverWithFlakes`.
 *
 * A flake that lets the share τ through hides 1 − τ of what is behind it: it counts as 1 − τ of an opaque flake. What it
 * would do to the colour of the light that passes it is left out.
 * Throws: RangeError if the transmittance or a reflectance is not in 0..1, or a measure is not above 0.
 */
export function spreadFlake(flake: Flake, concentration: number): SpreadFlake {
  const { transmittance = 0, reflectance } = flake;
  if (!(transmittance >= 0 && transmittance <= 1)) {
    throw new RangeError(`Flake transmittance is ${transmittance}; give a share between 0 and 1`);
  }
  requireBands(reflectance, 'flake reflectance');
  for (let band = 0; band < BAND_COUNT; band++) {
    if (!(reflectance[band]! >= 0 && reflectance[band]! <= 1)) {
      throw new RangeError(`Flake reflectance is ${reflectance[band]}; give numbers between 0 and 1, never percent`);
    }
  }
  return { perMm: flakesPerMm(concentration, flake) * (1 - transmittance), reflectance };
}

/**
 * Reflectances of a layer with flake in it, over backings, each of which is written over: what is seen of the flake does not
 * depend on them, and takes most of the time.
 *
 * ∫ Σᵢ μᵢ e^(−μz) R(z over flake i) dz + e^(−μX) R(X over backing), μ = Σ μᵢ = Σ nᵢ Aᵢ / 2: the mean over lines of sight, each
 * of which ends at the first flake or at the backing. Right to 1e-6.
 * Shape: K, S and the backings are spectra.
 * Units: K and S per mm, thickness in mm.
 * Throws: RangeError as `layerReflectances`.
 */
export function coverWithFlakes(
  K: ArrayLike<number>,
  S: ArrayLike<number>,
  thickness: number,
  flakes: readonly SpreadFlake[],
  backings: readonly Spectrum[],
): void {
  coverWithLayer(K, S, thickness, backings);
  const mu = totalPerMm(flakes);
  if (mu === 0 || thickness === 0) return;
  const past = Math.exp(-mu * thickness);
  for (let band = 0; band < BAND_COUNT; band++) {
    const onFlakes = seenOnFlakes(K[band]!, S[band]!, thickness, flakes, mu, past, band);
    for (const R of backings) R[band] = Math.min(1, past * R[band]! + onFlakes);
  }
}

/** Up to this size of C the series takes no more terms than the quadrature points, and loses no digits. */
const MOST_IN_SERIES = 0.8;

/** What the terms that are left out may add to a reflectance. */
const LEFT_OUT = 1e-10;

/**
 * The integral over depth, μᵢ the flakes of kind i per mm, by a geometric series. With E = e^(−2γz), q = Rinf and Rᵢ a flake's face
 *
 *     R(z) = q + (1 − q²) D E/(1 + C E),   D = (Rᵢ − q)/(1 − q Rᵢ),   C = q D
 *
 * is Kubelka's R over Rᵢ written in E, so that each power of E has an integral of its own:
 *
 *     ∫ μᵢ e^(−μz) R dz = μᵢ [q W₀ + (1 − q²) D Σ (−C)^(k−1) W_k],   W_k = (1 − e^(−(μ + 2kγ)X))/(μ + 2kγ).
 *
 * Right to 1e-9. Where C is near 1 (next to nothing absorbs) the terms are many and cancel out, and the quadrature takes over.
 */
function seenOnFlakes(
  K: number,
  S: number,
  thickness: number,
  flakes: readonly SpreadFlake[],
  mu: number,
  past: number,
  band: number,
): number {
  const gamma = Math.sqrt(K * (K + 2 * S));
  const q = S === 0 ? 0 : S / (K + S + gamma);
  const across = Math.exp(-2 * gamma * thickness);
  let total = q * -Math.expm1(-mu * thickness);
  for (let kind = 0; kind < flakes.length; kind++) {
    const { perMm, reflectance } = flakes[kind]!;
    const face = reflectance[band]!;
    const D = (face - q) / (1 - q * face);
    const C = q * D;
    if (!(Math.abs(C) <= MOST_IN_SERIES)) return quadrature(K, S, thickness, flakes, mu, band);
    const scale = perMm * (1 - q) * (1 + q) * D;
    const least = (LEFT_OUT * (1 - Math.abs(C))) / Math.abs(scale);
    let power = 1;
    let passed = past;
    let sum = 0;
    let term: number;
    let rate = mu;
    do {
      passed *= across;
      rate += 2 * gamma;
      term = (power * (1 - passed)) / rate;
      sum += term;
      power *= -C;
    } while (Math.abs(term * C) > least);
    total += scale * sum;
  }
  // What a black flake shows is a difference, which may round to below nothing.
  return Math.max(0, total);
}

/** Beyond 20/μ there is e^(−20) = 2e-9 of the light left. */
const NOTHING_LEFT = 20;

/**
 * The same by Gauss and Legendre's rule on panels that double: R(z) changes within 1/(K + S), the weight
 * within 1/μ, and both ever more slowly with depth. Right to 1e-6.
 */
function quadrature(
  K: number,
  S: number,
  thickness: number,
  flakes: readonly SpreadFlake[],
  mu: number,
  band: number,
): number {
  const deepest = Math.min(thickness, NOTHING_LEFT / mu);
  const panels = Math.max(1, Math.ceil(Math.log2(1 + (deepest * (mu + 2 * (K + S))) / 2)));
  let half = deepest / (2 ** panels - 1) / 2;
  let from = 0;
  let total = 0;
  for (let panel = 0; panel < panels; panel++) {
    for (let i = 0; i < GAUSS_NODES.length; i++) {
      const z = from + half * (1 + GAUSS_NODES[i]!);
      const t = effectiveDepth(K, S, z);
      let seen = 0;
      for (const { perMm, reflectance } of flakes) seen += perMm * layerOver(K, S, t, reflectance[band]!);
      total += half * GAUSS_WEIGHTS[i]! * Math.exp(-mu * z) * seen;
    }
    from += 2 * half;
    half *= 2;
  }
  return total;
}

function totalPerMm(flakes: readonly { readonly perMm: number }[]): number {
  let total = 0;
  for (const { perMm } of flakes) total += perMm;
  return total;
}

function requirePositive(value: number, name: string): void {
  if (!(value > 0 && value < Number.POSITIVE_INFINITY)) {
    throw new RangeError(`${name} is ${value}; give a finite number above 0`);
  }
}
