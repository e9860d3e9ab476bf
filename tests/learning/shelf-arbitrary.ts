import fc from 'fast-check';
import type { LearningData, LookedLayer, TaughtMaterial } from '../../src/learning/learning-data.ts';
import type { Flake } from '../../src/optics/flake.ts';
import { plasticConstants } from '../../src/optics/plastic.ts';
import { BAND_COUNT, WAVELENGTHS } from '../../src/optics/spectrum.ts';

const { absorption, scattering } = plasticConstants('clear');
const milky = plasticConstants('milky');

/** A red film, with a valley and a hill. */
const filmConstants = {
  absorption: WAVELENGTHS.map((nm) => 4 + 60 / (1 + Math.exp((nm - 590) / 12))),
  scattering: WAVELENGTHS.map((nm) => 20 * (550 / nm)),
};

const flake: Flake = {
  shape: 'hex',
  sizeMm: 1,
  reflectance: Array.from({ length: BAND_COUNT }, (_, i) => 0.3 + i / 80),
};

/** A material of each sort. */
export const SORTS: readonly TaughtMaterial[] = [
  {
    id: 'clear',
    prior: { kind: 'plastic', constants: { absorption: [...absorption], scattering: [...scattering] } },
    labels: [],
  },
  {
    id: 'milky',
    prior: { kind: 'plastic', constants: { absorption: [...milky.absorption], scattering: [...milky.scattering] } },
    labels: [],
  },
  { id: 'ink', prior: { kind: 'dye', typical: 0.0085 }, labels: [] },
  { id: 'clay', prior: { kind: 'pigment', typical: 0.006 }, labels: [] },
  { id: 'silver', prior: { kind: 'pearl', typical: 0.01 }, labels: [] },
  { id: 'chalk', prior: { kind: 'white', typical: 0.0085 }, labels: [] },
  { id: 'stray', prior: { kind: 'unknown', typical: 0.0085 }, labels: [] },
  {
    id: 'film',
    prior: {
      kind: 'known',
      constants: filmConstants,
      doubt: { absorption: [0.3, 0.2, 0.1], scattering: [0.2, 0.1, 0.3] },
    },
    labels: [],
  },
  { id: 'glint', prior: { kind: 'flake', flake }, labels: [] },
];

/** A shelf of one material of each sort, and no looks. */
export const SHELF: LearningData = { materials: SORTS, looks: [] };

const dose = (typical: number): fc.Arbitrary<number> =>
  fc.double({ min: Math.log(0.02), max: Math.log(1.5), noNaN: true }).map((ln) => typical * Math.exp(ln));

const contents = fc
  .subarray(['ink', 'clay', 'silver', 'chalk', 'stray', 'film'], { minLength: 1, maxLength: 4 })
  .chain((ids) => fc.tuple(...ids.map((id) => dose(0.008).map((each) => [id, each] as const))));

/** A layer of some of them, without flake. */
export const plainLayer: fc.Arbitrary<LookedLayer> = fc.record({
  plastics: fc.constantFrom(
    [['clear', 1]] as const,
    [
      ['clear', 0.6],
      ['milky', 0.4],
    ] as const,
  ),
  contents,
  thicknessMm: fc.double({ min: 1, max: 12, noNaN: true }),
});

/** The same, now and then with flake. */
export const anyLayer: fc.Arbitrary<LookedLayer> = fc
  .tuple(plainLayer, fc.option(dose(0.004), { nil: undefined }))
  .map(([layer, glint]) => (glint ? { ...layer, contents: [...layer.contents, ['glint', glint] as const] } : layer));

/** Numbers as believed before any look, not too far out. */
export function anyTheta(count: number): fc.Arbitrary<Float64Array> {
  return fc
    .array(fc.double({ min: -1.5, max: 1.5, noNaN: true }), { minLength: count, maxLength: count })
    .map((values) => Float64Array.from(values));
}
