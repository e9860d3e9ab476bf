/** A contrast ratio as people say it. */
export function contrastText(ratio: number): string {
  return ratio.toFixed(2);
}

/**
 * A colour difference: one decimal, none far off, and never a nought where there is a difference.
 *
 * @example deltaEText(0.0093) // 'less than 0.1'
 */
export function deltaEText(deltaE: number): string {
  if (deltaE >= 9.95) return String(Math.round(deltaE));
  return deltaE > 0 && deltaE < 0.05 ? 'less than 0.1' : deltaE.toFixed(1);
}
