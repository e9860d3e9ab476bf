/**
 * Shelves for the tests and benchmarks of matching: invented materials, their K and S from one colour and a kind.
 */

import type { Bench } from '../../src/cup/bench.ts';
import type { MatchMaterial } from '../../src/matching/shelf/match-material.ts';
import { isOpticalFault } from '../../src/optics/fault.ts';
import { type ColouringKind, fromColourAndKind } from '../../src/optics/from-colour-and-kind.ts';
import { USUAL_OPTICS } from '../../src/optics/optical-model.ts';
import { plasticConstants } from '../../src/optics/plastic.ts';

/** Drops, spoons from a teaspoon to a smidgen, and a scale to 0.01 g. */
export const BENCH: Bench = {
  drops: true,
  spoons: [
    { ml: 4.929, name: '1 tsp' },
    { ml: 2.464, name: '1/2 tsp' },
    { ml: 1.232, name: '1/4 tsp' },
    { ml: 0.616, name: '1/8 tsp' },
    { ml: 0.308, name: '1 pinch' },
    { ml: 0.154, name: '1 smidgen' },
  ],
  scaleGrams: 0.01,
  dropSpread: 0.1,
  spoonSpread: 0.1,
};

/** Measures nothing: every amount is as it is. */
export const EXACT_BENCH: Bench = { drops: false, spoons: [], dropSpread: 0, spoonSpread: 0 };

/** Clear plastic. */
export const CLEAR: MatchMaterial = {
  id: 'clear',
  title: 'Clear',
  kind: 'plastic',
  density: 1.05,
  gramsPerMl: 1.05,
  expectedDeltaE: 2,
  constants: plasticConstants('clear'),
  working: { from: 165, to: 177 },
  price: 12,
  packGrams: 1000,
};

/** A liquid or powder that shows a colour at its typical dose. */
export function sampleMaterial(
  id: string,
  kind: ColouringKind,
  colour: string,
  rest: Partial<MatchMaterial> & { readonly dose?: number } = {},
): MatchMaterial {
  const powder = kind === 'pearl';
  const { dose = powder ? 0.0105 : 0.0085, ...fields } = rest;
  const result = fromColourAndKind({ optics: USUAL_OPTICS, colour, kind, dose });
  if (isOpticalFault(result)) throw new RangeError(result.message);
  return {
    id,
    title: id,
    kind: powder ? 'powder' : 'colorant',
    density: powder ? 2.8 : 1,
    gramsPerMl: powder ? 0.4 : 1,
    ...(powder ? {} : { gramsPerDrop: 0.05 }),
    constants: result.constants,
    expectedDeltaE: 2,
    typical: dose,
    price: 5,
    packGrams: 30,
    ...fields,
  };
}

/** Twelve materials: dyes, pigments, pearls, a white. */
export const SHELF: readonly MatchMaterial[] = [
  sampleMaterial('amber-dye', 'dye', '#c98a2c'),
  sampleMaterial('brown-dye', 'dye', '#7a4a24'),
  sampleMaterial('green-dye', 'dye', '#5d8a3a'),
  sampleMaterial('red-dye', 'dye', '#b23a34'),
  sampleMaterial('blue-dye', 'dye', '#3a6fae'),
  sampleMaterial('violet-dye', 'dye', '#7c4f9c'),
  sampleMaterial('black', 'pigment', '#1d1c1c'),
  sampleMaterial('ochre', 'pigment', '#b9853a'),
  sampleMaterial('olive', 'pigment', '#5f6531'),
  sampleMaterial('white', 'white', '#f4f3ee'),
  sampleMaterial('white-pearl', 'pearl', '#ecebe6'),
  sampleMaterial('gold-pearl', 'pearl', '#cfae62'),
];

/** A shelf of many: hues around the circle, light and dark, of every kind. Always the same. */
export function largeShelf(count: number): readonly MatchMaterial[] {
  const kinds: readonly ColouringKind[] = ['dye', 'pigment', 'pearl', 'dye', 'pigment'];
  const hex = (value: number): string =>
    Math.round(Math.min(255, Math.max(0, value)))
      .toString(16)
      .padStart(2, '0');
  return [
    sampleMaterial('white', 'white', '#f4f3ee'),
    sampleMaterial('black', 'pigment', '#1d1c1c'),
    ...Array.from({ length: Math.max(0, count - 2) }, (_, index) => {
      const hue = (index * 2.399963) % (2 * Math.PI);
      const middle = 70 + ((index * 53) % 110);
      const reach = 20 + ((index * 31) % 60);
      const channel = (turn: number): string => hex(middle + reach * Math.cos(hue - turn));
      const colour = `#${channel(0)}${channel(2.0944)}${channel(4.1888)}`;
      return sampleMaterial(`material-${String(index).padStart(2, '0')}`, kinds[index % kinds.length]!, colour);
    }),
  ].slice(0, count);
}
