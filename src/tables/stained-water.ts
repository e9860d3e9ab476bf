/**
 * What dissolved humus takes of the light in water that drains bogs and woods: its absorption falls evenly with wavelength,
 * a(λ) = a(380) e^(−S (λ − 380)).
 *
 * Form: A. Bricaud, A. Morel & L. Prieur, Limnol. Oceanogr. 26:43 (1981) (from memory).
 * Figures: L. Sipelgas et al., Optical properties of dissolved organic matter in Finnish and Estonian lakes, Hydrology
 * Research 34(4):361 (2003): 477 spectra of 30 lakes, a(380) from 0.71 to 19.5 per m, 6.6 in the mean; S for 380–500 nm, on
 * the average of its lakes, from 0.014 per nm. S is used beyond 500 nm too, where little is left of a.
 * Checked: first on 2026-11-25, against the article's abstract; the article itself could not be opened. At 440 nm it comes to
 * 2.8 per m. J. T. O. Kirk, Aust. J. Mar. Freshw. Res. 27:61 (1976), abstract, has 0.42 to 2.90 per m to the base of ten in
 * inland waters of south-eastern Australia: 1.0 to 6.7 as it is counted here.
 */
export const HUMUS = {
  /** Natural (base e) absorption at `at`, per m. */
  absorption: 6.6,
  /** nm */
  at: 380,
  /** S, per nm. */
  slope: 0.014,
} as const;
