/**
 * Gauss and Legendre's rule with eight points on −1..1: exact for polynomials up to degree 15.
 *
 * Computed: the nodes are the roots of the Legendre polynomial P8, the weights 2 / ((1 − x²) P8′(x)²); the test checks
 * both.
 */
export const GAUSS_NODES: readonly number[] = [
  -0.9602898564975362, -0.7966664774136267, -0.525532409916329, -0.18343464249564978, 0.18343464249564978,
  0.525532409916329, 0.7966664774136267, 0.9602898564975362,
];

/** Weights of `GAUSS_NODES`. */
export const GAUSS_WEIGHTS: readonly number[] = [
  0.10122853629037706, 0.22238103445337443, 0.3137066458778869, 0.36268378337836166, 0.36268378337836166,
  0.3137066458778869, 0.22238103445337443, 0.10122853629037706,
];
