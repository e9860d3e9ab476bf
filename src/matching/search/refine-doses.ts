import { boundedQuadratic } from '../mix/bounded-quadratic.ts';
import type { Mix } from '../mix/mix.ts';

const MOST_STEPS = 30;
const GIVE_UP = 1e8;

/**
 * Doses of a set of candidates that bring the colours nearest to their targets: Levenberg and Marquardt's damped least
 * squares within the doses' bounds, from `start`.
 *
 * Returns doses for all candidates; those outside the set keep what `start` gives them.
 */
export function refineDoses(
  mix: Mix,
  set: readonly number[],
  start: Float64Array,
): { readonly doses: Float64Array; readonly squares: number } {
  const n = set.length;
  let doses = start.slice();
  for (const j of set) doses[j] = Math.min(mix.most[j]!, Math.max(0, doses[j]!));
  mix.keepTogether(doses, set, (i) => 1 / mix.most[set[i]!]! ** 2);
  let squares = mix.squares(doses);
  let damping = 1e-3;
  const H = new Float64Array(n * n);
  const g = new Float64Array(n);
  const damped = new Float64Array(n * n);
  const low = new Float64Array(n);
  const high = new Float64Array(n);
  for (let step = 0; step < MOST_STEPS && n > 0; step++) {
    const { residuals, slopes } = mix.slopes(doses, set);
    normalEquations(slopes, residuals, mix.count, set, H, g);
    for (const [i, j] of set.entries()) {
      low[i] = -doses[j]!;
      high[i] = mix.most[j]! - doses[j]!;
    }
    let improved = false;
    while (!improved && damping < GIVE_UP) {
      damped.set(H);
      for (let i = 0; i < n; i++) damped[i * n + i]! *= 1 + damping;
      const move = new Float64Array(n);
      boundedQuadratic(damped, g, low, high, move);
      const tried = doses.slice();
      for (const [i, j] of set.entries()) tried[j] = Math.min(mix.most[j]!, Math.max(0, tried[j]! + move[i]!));
      mix.keepTogether(tried, set, (i) => Math.max(damped[i * n + i]!, 1e-12));
      const next = mix.squares(tried);
      if (next < squares) {
        const settled = squares - next < 1e-4 * squares + 1e-8;
        doses = tried;
        squares = next;
        damping = Math.max(1e-7, damping / 8);
        improved = true;
        if (settled) return { doses, squares };
      } else damping *= 6;
    }
    if (!improved) break;
  }
  return { doses, squares };
}

/** JᵀJ and Jᵀr for the columns of a set. */
export function normalEquations(
  slopes: Float64Array,
  residuals: Float64Array,
  count: number,
  set: readonly number[],
  H: Float64Array,
  g: Float64Array,
): void {
  const n = set.length;
  const rows = residuals.length;
  for (let i = 0; i < n; i++) {
    let gradient = 0;
    for (let row = 0; row < rows; row++) gradient += slopes[row * count + set[i]!]! * residuals[row]!;
    g[i] = gradient;
    for (let k = i; k < n; k++) {
      let sum = 0;
      for (let row = 0; row < rows; row++) sum += slopes[row * count + set[i]!]! * slopes[row * count + set[k]!]!;
      H[i * n + k] = sum;
      H[k * n + i] = sum;
    }
  }
}
