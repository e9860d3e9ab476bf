import fc from 'fast-check';
import { expect, test } from 'vitest';
import { appearance, swirlAppearance } from '../../src/optics/appearance.ts';
import { type CupMix, cupMixer, layersViews, type OpticalMaterial, swirlViews } from '../../src/optics/cup-body.ts';
import { spreadFlake } from '../../src/optics/flake.ts';
import { mixtureConstants } from '../../src/optics/mixture.ts';
import { USUAL_OPTICS } from '../../src/optics/optical-model.ts';
import type { Body } from '../../src/optics/stack.ts';
import { magnitude, reflectance, spectrum, thickness } from './arbitrary.ts';
import { expectAllClose, expectClose } from './close.ts';

const constants = fc.record({ absorption: spectrum(magnitude), scattering: spectrum(magnitude) });
const dose = fc.double({ min: 0, max: 0.1, noNaN: true });
const flake = fc
  .tuple(spectrum(reflectance), fc.double({ min: 0.2, max: 3, noNaN: true }))
  .map(([face, sizeMm]) => ({ shape: 'hex' as const, sizeMm, reflectance: Array.from(face) }));
const shelf = fc.record({ clear: constants, dye: constants, pearl: constants, flake });
const doses = fc.record({ dye: dose, pearl: dose, flake: dose });

type Shelf = typeof shelf extends fc.Arbitrary<infer S> ? S : never;
type Doses = Readonly<Record<'dye' | 'pearl' | 'flake', number>>;

const mixOf = ({ dye, pearl, flake: flakes }: Doses): CupMix => ({
  plastics: [{ material: 'clear', fraction: 1 }],
  contents: [
    { material: 'dye', gramsPerMl: dye },
    { material: 'flake', gramsPerMl: flakes },
    { material: 'pearl', gramsPerMl: pearl },
  ],
});
const materialOf =
  (of: Shelf) =>
  (name: string): OpticalMaterial =>
    name === 'flake' ? { flake: of.flake } : { constants: of[name as 'clear' | 'dye' | 'pearl'] };

function expectBody(found: Body, of: Shelf, { dye, pearl, flake: flakes }: Doses): void {
  const { absorption, scattering } = mixtureConstants(of.clear, [
    { constants: of.dye, concentration: dye },
    { constants: of.pearl, concentration: pearl },
  ]);
  for (const [sums, expected] of [
    [found.absorption, absorption],
    [found.scattering, scattering],
  ] as const) {
    for (const [band, value] of expected.entries()) expectClose(sums[band]!, value, 1e-12 * (1 + value));
  }
  expect(found.flakes).toHaveLength(flakes > 0 ? 1 : 0);
  if (flakes === 0) return;
  const { perMm, reflectance: face } = spreadFlake(of.flake, flakes);
  expectClose(found.flakes![0]!.perMm, perMm, 1e-12 * (1 + perMm));
  expectAllClose(found.flakes![0]!.reflectance, face, 0);
}

test('cupMixer(mix, shelf) mixes its own doses and any others by the sum of their constants', () => {
  fc.assert(
    fc.property(shelf, doses, doses, (of, own, other) => {
      const mixer = cupMixer(mixOf(own), materialOf(of), USUAL_OPTICS);
      expect(mixer.materials).toEqual(['clear', 'dye', 'flake', 'pearl']);
      expectBody(mixer.mixed(), of, own);
      expectBody(mixer.mixed([1, other.dye, other.flake, other.pearl]), of, other);
      expectBody(mixer.mixed(), of, own);
    }),
    { numRuns: 50 },
  );
});

test('cupMixer(mix, shelf).replaced(material, other) is the cup with that on the shelf, and leaves its own as it is', () => {
  fc.assert(
    fc.property(shelf, shelf, doses, fc.constantFrom('clear', 'dye', 'flake', 'pearl'), (of, others, own, name) => {
      const mixer = cupMixer(mixOf(own), materialOf(of), USUAL_OPTICS);
      const changed: Shelf = { ...of, [name]: others[name] };
      expectBody(mixer.replaced(name, materialOf(others)(name)).mixed(), changed, own);
      expectBody(mixer.mixed(), of, own);
    }),
    { numRuns: 50 },
  );
});

test('cupMixer refuses a plastic without K and S, and a dose that cannot be', () => {
  const of = { clear: { absorption: new Float64Array(36), scattering: new Float64Array(36) } };
  const shelfOf = (name: string): OpticalMaterial => (name === 'clear' ? { constants: of.clear } : {});
  expect(() => cupMixer({ plastics: [{ material: 'dye', fraction: 1 }], contents: [] }, shelfOf, USUAL_OPTICS)).toThrow(
    /Plastic dye has no K and S/,
  );
  const cup = cupMixer(
    { plastics: [{ material: 'clear', fraction: 1 }], contents: [{ material: 'dye', gramsPerMl: 1 }] },
    shelfOf,
    USUAL_OPTICS,
  );
  expect(() => cup.mixed([1, -1])).toThrow(/Concentration is -1 g\/ml/);
  expect(() => cup.mixed([1, Number.NaN])).toThrow(/Concentration is NaN g\/ml/);
});

test('layersViews and swirlViews are the colours of appearance and swirlAppearance', () => {
  fc.assert(
    fc.property(
      shelf,
      doses,
      doses,
      thickness,
      fc.double({ min: 0.1, max: 0.9, noNaN: true }),
      (of, one, two, mm, share) => {
        const [near, far] = [one, two].map((each) => cupMixer(mixOf(each), materialOf(of), USUAL_OPTICS).mixed());
        const layers = [
          { ...near!, thickness: share * mm },
          { ...far!, thickness: mm },
        ];
        const seen = appearance(layers, { optics: USUAL_OPTICS });
        expect(layersViews(layers, USUAL_OPTICS)).toEqual({
          overWhite: seen.overWhite.lab,
          overBlack: seen.overBlack.lab,
        });
        const streaks = [
          { ...near!, share },
          { ...far!, share: 1 - share },
        ];
        const swirl = swirlAppearance(streaks, { optics: USUAL_OPTICS, thickness: mm });
        expect(swirlViews(streaks, mm, USUAL_OPTICS)).toEqual({
          overWhite: swirl.overWhite.lab,
          overBlack: swirl.overBlack.lab,
        });
      },
    ),
    { numRuns: 50 },
  );
});
