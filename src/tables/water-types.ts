/**
 * Downward diffuse attenuation of daylight, per metre, in Jerlov's ten types of sea water: I to III of the open ocean, 1 to
 * 9 of coasts, ever more turbid.
 *
 * Source: N. G. Jerlov, Marine Optics, 2nd ed., Elsevier 1976, table XXVII, p. 135 (printed there per 100 m).
 * Edition: 1976. Step: 25 nm, 375–700 nm.
 * Checked: first on 2026-11-25, row by row between two copies in open-source programs of different authors. They differ in
 * one figure, type I at 400 nm: 0.028 here, 0.027 there. The book itself could not be opened.
 *
 * No river or lake is in it; for water stained by peat see `stained-water.ts`.
 */
export const WATER_WAVELENGTHS: readonly number[] = [
  375, 400, 425, 450, 475, 500, 525, 550, 575, 600, 625, 650, 675, 700,
];

/** See `WATER_WAVELENGTHS`. */
export const WATER_TYPES: Readonly<
  Record<'I' | 'IA' | 'IB' | 'II' | 'III' | '1C' | '3C' | '5C' | '7C' | '9C', readonly number[]>
> = {
  I: [0.038, 0.028, 0.022, 0.019, 0.018, 0.027, 0.043, 0.063, 0.089, 0.235, 0.305, 0.36, 0.42, 0.56],
  IA: [0.052, 0.038, 0.031, 0.026, 0.025, 0.032, 0.048, 0.067, 0.094, 0.24, 0.31, 0.37, 0.43, 0.57],
  IB: [0.066, 0.051, 0.042, 0.036, 0.033, 0.042, 0.054, 0.072, 0.099, 0.245, 0.315, 0.375, 0.435, 0.58],
  II: [0.122, 0.096, 0.081, 0.068, 0.062, 0.07, 0.076, 0.089, 0.115, 0.26, 0.335, 0.4, 0.465, 0.61],
  III: [0.22, 0.185, 0.16, 0.135, 0.116, 0.115, 0.116, 0.12, 0.148, 0.295, 0.375, 0.445, 0.52, 0.66],
  '1C': [0.8, 0.51, 0.36, 0.25, 0.17, 0.14, 0.13, 0.12, 0.15, 0.3, 0.37, 0.45, 0.51, 0.65],
  '3C': [1.1, 0.78, 0.54, 0.39, 0.29, 0.22, 0.2, 0.19, 0.21, 0.33, 0.4, 0.46, 0.56, 0.71],
  '5C': [1.6, 1.1, 0.78, 0.56, 0.43, 0.36, 0.31, 0.3, 0.33, 0.4, 0.48, 0.54, 0.65, 0.8],
  '7C': [2.1, 1.6, 1.2, 0.89, 0.71, 0.58, 0.49, 0.46, 0.46, 0.48, 0.54, 0.63, 0.78, 0.92],
  '9C': [3.0, 2.4, 1.9, 1.6, 1.23, 0.99, 0.78, 0.63, 0.58, 0.6, 0.65, 0.76, 0.92, 1.1],
};
