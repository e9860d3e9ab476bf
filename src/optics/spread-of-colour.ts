/**
 * From the uncertainty of a colour to numbers for people: the expected ΔE00, the one that half stay within, and the one that
 * is not exceeded nine times in ten.
 */

/** How far a prediction may be off. */
export interface ColourSpread {
  /** Mean of ΔE00. */
  readonly expected: number;
  /** ΔE00 not exceeded every other time. */
  readonly median: number;
  /** ΔE00 not exceeded nine times in ten. */
  readonly bound90: number;
}

/** Standard normal quantile of 0.9. */
const NORMAL_90 = 1.2815515655446004;

/**
 * Spread of the length of a Gaussian vector (zero mean, three dimensions) with covariance C, given row by row.
 *
 * The squared length is matched by a scaled chi-square of the same mean and variance (Satterthwaite 1946); its quantile is
 * Wilson & Hilferty's (1931), its mean root from the ratio of gamma functions. Good to about 2 %.
 */
export function colourSpread(C: ArrayLike<number>): ColourSpread {
  const trace = C[0]! + C[4]! + C[8]!;
  if (!(trace > 0)) return { expected: 0, median: 0, bound90: 0 };
  let squares = 0;
  for (let i = 0; i < 9; i++) squares += C[i]! * C[i]!;
  const degrees = Math.min(3, Math.max(1, (trace * trace) / squares));
  const scale = trace / degrees;
  const share = 2 / (9 * degrees);
  const quantile = (normal: number): number => degrees * (1 - share + normal * Math.sqrt(share)) ** 3;
  // √2 Γ((d + 1)/2)/Γ(d/2), by its asymptotic series: 0.7979 comes out as 0.8101 at d = 1, 1.5958 as 1.5960 at d = 3.
  const meanRoot =
    Math.sqrt(degrees) *
    (1 - 1 / (4 * degrees) + 1 / (32 * degrees ** 2) + 5 / (128 * degrees ** 3) - 21 / (2048 * degrees ** 4));
  return {
    expected: Math.sqrt(scale) * meanRoot,
    median: Math.sqrt(scale * quantile(0)),
    bound90: Math.sqrt(scale * quantile(NORMAL_90)),
  };
}
