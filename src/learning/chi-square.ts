// Terms of the series and of the continued fraction: both need about √dof of them near the middle, far fewer elsewhere.
const MOST_TERMS = 10_000;
const ENOUGH = 1e-15;

/**
 * How likely a chi-square of so many degrees of freedom is larger than x.
 *
 * Right to twelve digits, in the far tail too.
 * Source: the incomplete gamma function by its series and its continued fraction (M. Abramowitz & I. A. Stegun, Handbook of
 * Mathematical Functions (1964), 6.5.29 and 6.5.31; numbers from memory).
 *
 * @example chiSquareAbove(2 * Math.log(20), 2) // 0.05
 */
export function chiSquareAbove(x: number, dof: number): number {
  if (!(dof >= 1 && Number.isInteger(dof)))
    throw new RangeError(`${dof} degrees of freedom; give a whole number from 1`);
  if (!(x > 0)) return 1;
  const a = dof / 2;
  const half = x / 2;
  const scale = Math.exp(a * Math.log(half) - half - lnGamma(dof));
  return half < a + 1 ? 1 - scale * series(a, half) : scale * fraction(a, half);
}

/** ln Γ(dof/2), by Γ(z + 1) = z Γ(z). */
function lnGamma(dof: number): number {
  let sum = dof % 2 === 0 ? 0 : Math.log(Math.PI) / 2;
  for (let z = dof % 2 === 0 ? 1 : 0.5; z < dof / 2 - 0.25; z++) sum += Math.log(z);
  return sum;
}

function series(a: number, x: number): number {
  let term = 1 / a;
  let sum = term;
  for (let n = 1; n < MOST_TERMS && term > ENOUGH * sum; n++) {
    term *= x / (a + n);
    sum += term;
  }
  return sum;
}

/** Lentz's way to work a continued fraction out from its beginning. */
function fraction(a: number, x: number): number {
  let b = x + 1 - a;
  let c = Number.MAX_VALUE;
  let d = 1 / b;
  let product = d;
  for (let n = 1; n < MOST_TERMS; n++) {
    const numerator = -n * (n - a);
    b += 2;
    d = 1 / (numerator * d + b);
    c = b + numerator / c;
    product *= c * d;
    if (Math.abs(c * d - 1) < ENOUGH) break;
  }
  return product;
}
