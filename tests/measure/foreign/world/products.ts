/**
 * What may stand on a shelf of the foreign bench, before chance has changed it a little for each book. Absorption and scattering are those of
 * the usual dose, per mm: invented, of the size that bottles of the trade have (common practice, no source).
 *
 * @packageDocumentation
 */
import type { Feature } from '../physics/spectra.ts';

/** A material as its maker sells it. */
export interface Product {
  readonly id: string;
  readonly title: string;
  readonly kind: 'dye' | 'pigment' | 'pearl' | 'white';
  readonly absorbs: readonly Feature[];
  readonly scatters: { readonly at550: number; readonly power: number };
  /** Usual dose: drops in 100 ml of plastic, or percent of its mass. */
  readonly dose: { readonly drops: number } | { readonly percent: number };
  /** g/ml. */
  readonly density: number;
}

const CLEAR = { at550: 0.0005, power: 3 };
const drops = (count: number): { readonly drops: number } => ({ drops: count });
const band = (at: number, width: number, height: number): Feature => ({ kind: 'band', at, width, height });
const edge = (at: number, width: number, height: number): Feature => ({ kind: 'edge', at, width, height });
const floor = (height: number): Feature => ({ kind: 'floor', height });

function dye(id: string, title: string, ...absorbs: readonly Feature[]): Product {
  return { id, title, kind: 'dye', absorbs, scatters: CLEAR, dose: drops(10), density: 1 };
}

function pigment(
  id: string,
  title: string,
  [at550, power]: readonly [number, number],
  ...absorbs: readonly Feature[]
): Product {
  return { id, title, kind: 'pigment', absorbs, scatters: { at550, power }, dose: drops(10), density: 1.2 };
}

function pearl(id: string, title: string, power: number, ...absorbs: readonly Feature[]): Product {
  return { id, title, kind: 'pearl', absorbs, scatters: { at550: 0.42, power }, dose: { percent: 0.5 }, density: 3 };
}

/** What the maker of a book has: five dyes, seven pigments with a black, three pearls and two whites. */
export const SHELF_PRODUCTS: readonly Product[] = [
  dye('straw', 'Straw', band(412, 34, 0.121), floor(0.0012)),
  dye('rosehip', 'Rosehip', band(505, 30, 0.11), band(540, 22, 0.083), floor(0.001)),
  dye('kingfisher', 'Kingfisher', band(632, 34, 0.11), band(588, 26, 0.044), floor(0.001)),
  dye('duckweed', 'Duckweed', band(424, 30, 0.083), band(655, 30, 0.099), floor(0.002)),
  dye('bramble', 'Bramble', band(562, 34, 0.11), band(515, 26, 0.039), floor(0.0015)),
  pigment('rust', 'Rust', [0.5, 0.6], edge(575, 18, 0.3), floor(0.04)),
  pigment('ochre', 'Ochre', [0.6, 0.8], edge(512, 22, 0.21), floor(0.02)),
  pigment('clay-red', 'Clay Red', [0.12, 1.4], edge(600, 9, 0.36), floor(0.008)),
  pigment('marine-blue', 'Marine Blue', [0.08, 1.6], band(600, 55, 0.42), floor(0.01)),
  pigment('reed-green', 'Reed Green', [0.2, 1], band(430, 36, 0.24), band(642, 46, 0.27), floor(0.02)),
  pigment('loam', 'Loam', [0.3, 0.5], { kind: 'slope', reach: 140, height: 0.3 }, floor(0.03)),
  pigment('soot', 'Soot', [0.05, 0.8], { kind: 'slope', reach: 900, height: 0.7 }),
  pearl('silver-pearl', 'Silver Pearl', 0.2, floor(0.006)),
  pearl('brass-pearl', 'Brass Pearl', 0.3, edge(500, 24, 0.06), floor(0.006)),
  pearl('copper-pearl', 'Copper Pearl', 0.25, edge(562, 26, 0.08), floor(0.008)),
  {
    id: 'chalk',
    title: 'Chalk',
    kind: 'white',
    absorbs: [edge(396, 6, 0.4), floor(0.001)],
    scatters: { at550: 2.6, power: 0.8 },
    dose: drops(6),
    density: 1.5,
  },
  {
    id: 'bone-white',
    title: 'Bone White',
    kind: 'white',
    absorbs: [{ kind: 'slope', reach: 60, height: 0.02 }, floor(0.003)],
    scatters: { at550: 1.1, power: 0.5 },
    dose: { percent: 0.3 },
    density: 3.6,
  },
];

/** What others have: targets off the shelf are made with these too. */
export const OTHER_PRODUCTS: readonly Product[] = [
  dye('plum', 'Plum', band(545, 24, 0.121), band(590, 20, 0.11), floor(0.002)),
  dye('apple', 'Apple', band(440, 20, 0.11), band(620, 22, 0.066), floor(0.001)),
  pigment('lemon', 'Lemon', [0.3, 1.1], edge(490, 8, 0.36), floor(0.004)),
  pigment('orange-peel', 'Orange Peel', [0.25, 1.2], edge(555, 10, 0.36), floor(0.005)),
  pigment('violet', 'Violet', [0.1, 1.4], band(550, 40, 0.36), floor(0.01)),
  pearl('sky-pearl', 'Sky Pearl', 1.6, band(600, 60, 0.02), floor(0.004)),
];

/** g of a material in 1 ml of plastic at its usual dose. */
export function usualDose({ dose, density }: Product): number {
  return 'drops' in dose ? (dose.drops * DROP_ML * density) / 100 : (dose.percent / 100) * PLASTIC_DENSITY;
}

/** A drop of every bottle, as its maker says. */
export const DROP_ML = 0.05;

/** g/ml. */
export const PLASTIC_DENSITY = 1.05;
