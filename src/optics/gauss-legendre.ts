/**
 * Gauss and Legendre's rule with six points on −1..1: exact for polynomials up to degree 11.
 *
 * Computed: the nodes are the roots of the Legendre polynomial P6, the weights 2 / ((1 − x²) P6′(x)²); the test checks
 * both.
 */
export const GAUSS_NODES: readonly number[] = [
  -0.9324695142031519, -0.6612093864662645, -0.2386191860831969, 0.2386191860831969, 0.6612093864662645,
  0.9324695142031519,
];

/** Weights of `GAUSS_NODES`. */
export const GAUSS_WEIGHTS: readonly number[] = [
  0.17132449237917027, 0.3607615730481387, 0.46791393457269104, 0.46791393457269104, 0.3607615730481387,
  0.17132449237917027,
];
