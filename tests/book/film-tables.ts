import { BLACK, knownFilm, partsOf, WAVELENGTHS, WHITE } from '../optics/fit/synthetic-films.ts';

const HEADER = ['sample', 'composition', 'surface', ...WAVELENGTHS].join(',');

export type Amounts = Readonly<Record<string, number>>;

const composition = (amounts: Amounts): string =>
  Object.entries(amounts)
    .map(([material, amount]) => `${material}=${amount}`)
    .join(';');

/** A row of the table, its reflectances in percent unless told otherwise. */
export function row(sample: string, amounts: Amounts, surface: string, R: readonly number[], scale = 100): string {
  return [sample, composition(amounts), surface, ...R.map((value) => (scale * value).toFixed(5))].join(',');
}

export function bareRows(sample: string, amounts: Amounts, scale = 100): string[] {
  return [row(sample, amounts, 'bare_black', BLACK, scale), row(sample, amounts, 'bare_white', WHITE, scale)];
}

export function measuredRows(sample: string, amounts: Amounts, scale = 100): string[] {
  const parts = partsOf(amounts);
  return [
    ...bareRows(sample, amounts, scale),
    row(sample, amounts, 'film_on_black', knownFilm(parts, BLACK), scale),
    row(sample, amounts, 'film_on_white', knownFilm(parts, WHITE), scale),
  ];
}

export const SHELF: readonly (readonly [string, Amounts])[] = [
  ['1', { chalk: 1 }],
  ['2', { dusk: 1 }],
  ['3', { dusk: 0.1, chalk: 0.9 }],
];

/** A table of films, as a file. */
export const table = (...rows: string[]): string => `${[HEADER, ...rows].join('\n')}\n`;
export const MEASUREMENTS = table(
  '# invented paints',
  ...SHELF.flatMap(([name, amounts]) => measuredRows(name, amounts)),
);
export const MIX = { dusk: 0.4, chalk: 0.6 };
