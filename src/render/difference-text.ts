/** A contrast ratio as people say it. */
export function contrastText(ratio: number): string {
  return ratio.toFixed(2);
}

/** A colour difference: one decimal, and no false precision far off. */
export function deltaEText(deltaE: number): string {
  return deltaE >= 10 ? String(Math.round(deltaE)) : deltaE.toFixed(1);
}
