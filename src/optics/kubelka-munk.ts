/**
 * Kubelka and Munk's two fluxes in a layer that absorbs and scatters.
 *
 * Sources: P. Kubelka & F. Munk, Z. tech. Phys. 12:593 (1931); P. Kubelka, J. Opt. Soc. Am. 38:448 (1948).
 *
 * The closed forms are written here in one quantity, the effective depth
 *
 *     t = tanh(γ · thickness) / γ,   γ = √(K (K + 2S)) = bS
 *
 * because then no limit needs a formula of its own: with 1/t = bS coth(bS · thickness), Kubelka's
 * R = [1 − Rg (a − b coth bSX)] / [a − Rg + b coth bSX] is
 *
 *     R = [S t (1 − Rg) + Rg (1 − K t)] / [1 + K t + S t (1 − Rg)].
 *
 * S → 0 gives Rg e^(−2KX), K → 0 gives the purely scattering form, no thickness gives Rg, all without 0/0.
 *
 * Units: K and S per mm, thickness in mm (only the products matter). Reflectances are those inside the plastic, 0..1:
 * see `surface.ts` for what is seen from outside.
 */
import { type OpticalFault, opticalFault } from './fault.ts';
import { BAND_COUNT, requireBands, type Spectrum, WAVELENGTHS } from './spectrum.ts';

/** The largest K, S and thickness that the formulas take: far above any material, and no product overflows. */
export const LARGEST_COEFFICIENT = 1e9;

/**
 * K/S of a material from the reflectance of a layer that hides its backing.
 *
 * Units: Rinf 0..1, not 0. Returns K/S, >= 0.
 * Throws: RangeError if Rinf is not in (0, 1].
 * Source: Kubelka & Munk 1931; K/S = (1 − Rinf)² / (2 Rinf).
 *
 * @example absorptionToScattering(0.5) // 0.25
 */
export function absorptionToScattering(Rinf: number): number {
  if (!(Rinf >= 1e-9 && Rinf <= 1)) {
    throw new RangeError(`Rinf is ${Rinf}; give a reflectance above 0 (at least 1e-9) and up to 1, never percent`);
  }
  return (1 - Rinf) ** 2 / (2 * Rinf);
}

/**
 * Reflectance of a layer over a backing in optical contact, band by band.
 *
 * Shape: K, S and Rg are spectra; the result is written into `out`, which may be Rg itself.
 * Throws: RangeError, naming the wavelength, if K, S or thickness is not in 0..1e9 or Rg not in 0..1, or if a spectrum has not 36
 * bands.
 * Source: Kubelka 1948, equation for R over a backing of Rg.
 */
export function layerReflectances(
  K: ArrayLike<number>,
  S: ArrayLike<number>,
  thickness: number,
  Rg: ArrayLike<number>,
  out: Spectrum = new Float64Array(BAND_COUNT),
): Spectrum {
  requireSpectra(K, S, out);
  requireBands(Rg, 'backing');
  for (let band = 0; band < BAND_COUNT; band++) {
    const k = K[band]!;
    const s = S[band]!;
    const g = Rg[band]!;
    if (!isLayer(k, s, thickness) || !(g >= 0 && g <= 1)) throw bandError(band, k, s, thickness, g);
    out[band] = layerOver(k, s, effectiveDepth(k, s, thickness), g);
  }
  return out;
}

/**
 * `layerReflectances` over several backings, each of which is written over. The effective depth, which takes most of the time,
 * does not depend on them.
 *
 * Throws: RangeError as `layerReflectances`.
 */
export function coverWithLayer(
  K: ArrayLike<number>,
  S: ArrayLike<number>,
  thickness: number,
  backings: readonly Spectrum[],
): void {
  for (const R of backings) requireSpectra(K, S, R);
  for (let band = 0; band < BAND_COUNT; band++) {
    const k = K[band]!;
    const s = S[band]!;
    if (!isLayer(k, s, thickness)) throw bandError(band, k, s, thickness, backings[0]?.[band] ?? 0);
    const t = effectiveDepth(k, s, thickness);
    for (let i = 0; i < backings.length; i++) {
      const R = backings[i]!;
      const g = R[band]!;
      if (!(g >= 0 && g <= 1)) throw bandError(band, k, s, thickness, g);
      R[band] = layerOver(k, s, t, g);
    }
  }
}

/**
 * Reflectance of a layer thick enough to hide its backing, band by band. A band that neither absorbs nor scatters has no
 * reflectance of its own and gives 0, the limit for S → 0.
 *
 * Source: Kubelka & Munk 1931; Rinf = a − b with a = 1 + K/S, written as S/(K + S + √(K (K + 2S))), which loses no digits.
 * Throws: RangeError as `layerReflectances`, naming the wavelength, or if a spectrum has not 36 bands.
 */
export function reflectancesInfinite(
  K: ArrayLike<number>,
  S: ArrayLike<number>,
  out: Spectrum = new Float64Array(BAND_COUNT),
): Spectrum {
  requireSpectra(K, S, out);
  for (let band = 0; band < BAND_COUNT; band++) {
    const k = K[band]!;
    const s = S[band]!;
    if (!isLayer(k, s, 0)) throw bandError(band, k, s, 0, 0);
    out[band] = s === 0 ? 0 : s / (k + s + Math.sqrt(k * (k + 2 * s)));
  }
  return out;
}

/** A layer seen over two backings: reflectances inside the plastic, 0..1; thickness in mm. */
export interface TwoBackings {
  /** Reflectance of the layer over the black backing. */
  readonly R0: number;
  /** Reflectance of the black backing itself. */
  readonly Rblack: number;
  /** Reflectance of the layer over the white backing. */
  readonly R: number;
  /** Reflectance of the white backing itself. */
  readonly Rwhite: number;
  readonly thickness: number;
}

/**
 * K and S per mm of a layer from its reflectances over two backings.
 *
 * Each observation is linear in p = S t and q = (K + S) t (see the top of this file), so two of them give both; then
 * tanh²(γ · thickness) = q² − p². This is Kubelka's inversion without its special cases, for backings of any reflectance.
 * Returns a fault, never NaN, where the pair is not that of any layer: 'opaque', 'darker-over-white', 'unphysical',
 * 'out-of-range'.
 * Source: Kubelka 1948, with its equation for R solved for the two unknowns together.
 *
 * @example invertTwoBackings({ R0: 0.346546065857, Rblack: 0, R: 0.435599835119, Rwhite: 0.8, thickness: 1 })
 * // { K: 0.5, S: 1 }, to 10 digits
 */
export function invertTwoBackings(seen: TwoBackings): { K: number; S: number } | OpticalFault {
  const { R0, Rblack, R, Rwhite, thickness } = seen;
  if (
    !(inUnit(R0) && inUnit(R) && inUnit(Rblack) && inUnit(Rwhite) && thickness > 0 && thickness < LARGEST_COEFFICIENT)
  ) {
    return opticalFault(
      'out-of-range',
      `Unexpected reflectances ${R0} and ${R} over ${Rblack} and ${Rwhite} at ${thickness} mm, expected numbers between 0 and 1 and a thickness above 0`,
    );
  }
  if (!(Rwhite > Rblack)) {
    return opticalFault(
      'out-of-range',
      `Unexpected backings ${Rblack} and ${Rwhite}, expected the white one to be the lighter`,
    );
  }
  if (R < R0) {
    return opticalFault(
      'darker-over-white',
      `The layer is darker over white (${R}) than over black (${R0}): swapped, or two films of different thickness`,
    );
  }
  if (R - R0 <= 1e-9 * (Rwhite - Rblack)) {
    return opticalFault('opaque', `The layer looks the same over both backings (${R}): measure a thinner one`);
  }
  const determinant = (1 + R * Rwhite) * (R0 + Rblack) - (1 + R0 * Rblack) * (R + Rwhite);
  const p = ((R - Rwhite) * (R0 + Rblack) - (R0 - Rblack) * (R + Rwhite)) / determinant;
  const q = ((1 + R0 * Rblack) * (R - Rwhite) - (1 + R * Rwhite) * (R0 - Rblack)) / determinant;
  const tanhSquared = (q - p) * (q + p);
  const rounding = 1e-12;
  if (!(p >= -rounding && q - p >= -rounding && tanhSquared < 1)) {
    return opticalFault(
      'unphysical',
      `No layer shows ${R0} over ${Rblack} and ${R} over ${Rwhite}: ${p < 0 ? 'it would have to absorb light by scattering' : 'it would have to give out light'}; check the backings and the surface correction`,
    );
  }
  const tanh = Math.sqrt(Math.max(0, tanhSquared));
  const stretch = tanh < 1e-4 ? 1 + tanhSquared / 3 : Math.atanh(tanh) / tanh;
  const K = (Math.max(0, q - p) * stretch) / thickness;
  const S = (Math.max(0, p) * stretch) / thickness;
  if (K <= LARGEST_COEFFICIENT && S <= LARGEST_COEFFICIENT) return { K, S };
  return opticalFault(
    'out-of-range',
    `A layer of ${thickness} mm would have K ${K} and S ${S} per mm: check its thickness`,
  );
}

/**
 * tanh(γ · thickness)/γ in mm. Unchecked: for inner loops whose numbers were checked.
 *
 * Below γ · thickness = 0.05 the series is exact to the last digit, where 1 − e^(−2x) would not be.
 */
export function effectiveDepth(K: number, S: number, thickness: number): number {
  const gamma = Math.sqrt(K * (K + 2 * S));
  const x = gamma * thickness;
  if (x < 0.05) {
    const x2 = x * x;
    return thickness * (1 - x2 * (1 / 3 - x2 * (2 / 15 - x2 * (17 / 315 - x2 * (62 / 2835)))));
  }
  // Deeper than this, e^(−40) no longer changes the last digit of 1.
  if (x > 20) return 1 / gamma;
  const back = Math.exp(-2 * x);
  return (1 - back) / ((1 + back) * gamma);
}

/**
 * Reflectance of a layer of effective depth t over Rg. Unchecked: for inner loops whose numbers were checked.
 */
export function layerOver(K: number, S: number, t: number, Rg: number): number {
  // S t taken out of 1 − (K + S) t and 1 + (K + S) t − Rg S t: on a white backing it would cancel.
  const scattered = S * t * (1 - Rg);
  const absorbed = K * t;
  // Rounding alone can pass the limits, by 1e-16.
  return Math.min(1, Math.max(0, (scattered + Rg * (1 - absorbed)) / (1 + absorbed + scattered)));
}

function inUnit(value: number): boolean {
  return value >= 0 && value <= 1;
}

function isLayer(K: number, S: number, thickness: number): boolean {
  return (
    K >= 0 &&
    S >= 0 &&
    thickness >= 0 &&
    K <= LARGEST_COEFFICIENT &&
    S <= LARGEST_COEFFICIENT &&
    thickness <= LARGEST_COEFFICIENT
  );
}

function requireSpectra(K: ArrayLike<number>, S: ArrayLike<number>, out: Spectrum): void {
  requireBands(K, 'absorption');
  requireBands(S, 'scattering');
  requireBands(out, 'out');
}

function bandError(band: number, K: number, S: number, thickness: number, Rg: number): RangeError {
  return new RangeError(
    `At ${WAVELENGTHS[band]} nm the layer has K ${K} per mm, S ${S} per mm, thickness ${thickness} mm over Rg ${Rg}; give K, S, thickness from 0 to ${LARGEST_COEFFICIENT} and Rg from 0 to 1`,
  );
}
