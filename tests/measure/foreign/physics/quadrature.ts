/** Directions at which light is followed: cosines to the normal, and weights that integrate over them. */
export interface Quadrature {
  readonly cosines: Float64Array;
  readonly weights: Float64Array;
}

const STEPS = 60;

/**
 * Legendre polynomials P_0(x) to P_order(x).
 *
 * Source: three-term recurrence, any handbook of mathematical functions.
 */
export function legendre(order: number, x: number): Float64Array {
  const P = new Float64Array(order + 1);
  P[0] = 1;
  if (order > 0) P[1] = x;
  for (let l = 2; l <= order; l++) P[l] = ((2 * l - 1) * x * P[l - 1]! - (l - 1) * P[l - 2]!) / l;
  return P;
}

/** Gauss–Legendre quadrature of so many points on an interval: nodes are the zeros of P_n, found by Newton's method. */
export function gauss(points: number, from: number, to: number): Quadrature {
  const cosines = new Float64Array(points);
  const weights = new Float64Array(points);
  for (let i = 0; i < points; i++) {
    let x = -Math.cos((Math.PI * (i + 0.75)) / (points + 0.5));
    let slope = 0;
    for (let step = 0; step < STEPS; step++) {
      const P = legendre(points, x);
      slope = (points * (x * P[points]! - P[points - 1]!)) / (x * x - 1);
      x -= P[points]! / slope;
    }
    cosines[i] = from + ((to - from) * (x + 1)) / 2;
    weights[i] = (to - from) / ((1 - x * x) * slope * slope);
  }
  return { cosines, weights };
}

/**
 * Radau quadrature of so many points on an interval, of which the last is its upper end: the others are the zeros of
 * (P_{n−1}(x) − P_n(x)) / (1 − x).
 *
 * Source: Hildebrand, Introduction to Numerical Analysis (1974), 8.11 (from memory; its exactness is tested).
 */
export function radau(points: number, from: number, to: number): Quadrature {
  const cosines = new Float64Array(points);
  const weights = new Float64Array(points);
  const n = points;
  const F = (x: number): number => {
    const P = legendre(n, x);
    return (P[n - 1]! - P[n]!) / (1 - x);
  };
  const inner = zeros(F, n - 1);
  for (const [i, x] of [...inner, 1].entries()) {
    cosines[i] = from + ((to - from) * (x + 1)) / 2;
    const weight = x === 1 ? 2 / (n * n) : (1 + x) / (n * legendre(n - 1, x)[n - 1]!) ** 2;
    weights[i] = ((to - from) / 2) * weight;
  }
  return { cosines, weights };
}

/** The so many zeros that a function has between −1 and 1, by bisection. */
function zeros(F: (x: number) => number, count: number): readonly number[] {
  const cells = 400 * (count + 1);
  const found: number[] = [];
  for (let cell = 0; cell < cells && found.length < count; cell++) {
    let [low, high] = [-1 + (2 * cell) / cells, -1 + (2 * (cell + 1)) / cells - 1e-12];
    if (F(low) * F(high) > 0) continue;
    for (let step = 0; step < STEPS; step++) {
      const middle = (low + high) / 2;
      if (F(low) * F(middle) <= 0) high = middle;
      else low = middle;
    }
    found.push((low + high) / 2);
  }
  return found;
}

/** Quadrature over all cosines from 0 to 1 for plastic of an index: Gauss where light is held in by total reflection, Radau above. */
export function directions(index: number, points: number): Quadrature {
  const critical = index > 1 ? Math.sqrt(1 - 1 / index ** 2) : 0;
  if (critical === 0) return radau(points, 0, 1);
  const held = gauss(points / 2, 0, critical);
  const free = radau(points / 2, critical, 1);
  return {
    cosines: Float64Array.of(...held.cosines, ...free.cosines),
    weights: Float64Array.of(...held.weights, ...free.weights),
  };
}
