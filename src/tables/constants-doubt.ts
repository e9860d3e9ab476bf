/**
 * How far K and S of a material may be off where they do not rest on measured films, which say so themselves.
 *
 * Found by a study (`tests/measure/uncertainty.bench.ts` prints it, `tests/optics/uncertainty.test.ts` holds it): 19 paints of
 * published K and S (R. S. Berns, Artist Paint Spectral Database, Rochester Institute of Technology) were taken for materials of
 * a shelf, once known from one chip, once from two, each seen through a camera that errs by one unit of Lab (common practice, no
 * source), once from their colour and kind alone; with these figures the stated bounds hold for nine in ten of their pairs.
 */
export interface ConstantsDoubt {
  /** Standard deviations of ln K: of its level, its slope and its bend over the spectrum. */
  readonly absorption: readonly number[];
  /** The same of ln S. */
  readonly scattering: readonly number[];
}

/** By what K and S rest on. */
export const TIER_DOUBT: Readonly<Record<'photographed' | 'estimated', ConstantsDoubt>> = {
  photographed: { absorption: [0.4, 0.4, 0.4], scattering: [0.4, 0.4, 0.4] },
  estimated: { absorption: [0.7, 0.7, 0.7], scattering: [0.7, 0.7, 0.7] },
};

/** What the theory itself leaves open of the level of K and S, however well they are measured. Common practice, no source. */
export const THEORY_DOUBT = 0.1;

/** ΔE00 by which the chips of a material are usually missed; missed by more, everything is as many times as doubtful. From the same study. */
export const USUAL_RESIDUAL = 0.5;
