/**
 * Published values of a 24-patch colour chart, made after November 2014: CIELAB under D50 for the 2° observer.
 *
 * Source: what the chart's maker published in 2016; facts. Compared with a copy of the published table when it was written down
 * (`tests/tables/colour-chart.test.ts` compares again where that copy is there).
 *
 * Shape: six to a row, four rows, as the chart stands with its greys below, from white to black.
 */
export const COLOUR_CHART: readonly (readonly [L: number, a: number, b: number])[] = [
  [37.54, 14.37, 14.92],
  [64.66, 19.27, 17.5],
  [49.32, -3.82, -22.54],
  [43.46, -12.74, 22.72],
  [54.94, 9.61, -24.79],
  [70.48, -32.26, -0.37],
  [62.73, 35.83, 56.5],
  [39.43, 10.75, -45.17],
  [50.57, 48.64, 16.67],
  [30.1, 22.54, -20.87],
  [71.77, -24.13, 58.19],
  [71.51, 18.24, 67.37],
  [28.37, 15.42, -49.8],
  [54.38, -39.72, 32.27],
  [42.43, 51.05, 28.62],
  [81.8, 2.67, 80.41],
  [50.63, 51.28, -14.12],
  [49.57, -29.71, -28.32],
  [95.19, -1.03, 2.93],
  [81.29, -0.57, 0.44],
  [66.89, -0.75, -0.06],
  [50.76, -0.13, 0.14],
  [35.63, -0.46, -0.48],
  [20.64, 0.07, -0.46],
];

/** Patches of a row, and rows. */
export const CHART_COLUMNS = 6;
export const CHART_ROWS = 4;

/** The place of its first grey, which is its white; the greys are the last row. */
export const FIRST_GREY = 18;
