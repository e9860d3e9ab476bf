const MOST_SWEEPS = 60;
const SETTLED = 1e-7;

/**
 * Minimizes ½ xᵀ H x + gᵀ x with low ≤ x ≤ high, one coordinate at a time: for few unknowns or few independent rows, both
 * of which every problem of matching has, that is as fast as any method, and it cannot leave the bounds.
 *
 * Shape: H is n × n, row by row, symmetric and not negative on its diagonal; x is the start and becomes the result.
 */
export function boundedQuadratic(
  H: Float64Array,
  g: Float64Array,
  low: Float64Array,
  high: Float64Array,
  x: Float64Array,
): void {
  const n = x.length;
  const slope = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    x[i] = Math.min(high[i]!, Math.max(low[i]!, x[i]!));
    slope[i] = g[i]!;
  }
  for (let i = 0; i < n; i++) {
    if (x[i] === 0) continue;
    for (let k = 0; k < n; k++) slope[k]! += H[k * n + i]! * x[i]!;
  }
  for (let sweep = 0; sweep < MOST_SWEEPS; sweep++) {
    let gained = 0;
    for (let i = 0; i < n; i++) {
      const curve = H[i * n + i]!;
      if (!(curve > 0)) continue;
      const next = Math.min(high[i]!, Math.max(low[i]!, x[i]! - slope[i]! / curve));
      const step = next - x[i]!;
      if (step === 0) continue;
      x[i] = next;
      gained = Math.max(gained, curve * step * step);
      for (let k = 0; k < n; k++) slope[k]! += H[k * n + i]! * step;
    }
    if (gained < SETTLED) return;
  }
}
