import fc from 'fast-check';
import { expect, test } from 'vitest';
import { labOf } from '../../src/optics/cielab.ts';
import { absorptionToScattering, reflectancesInfinite } from '../../src/optics/kubelka-munk.ts';
import { type MixturePart, mixtureConstants, type OpticalConstants } from '../../src/optics/mixture.ts';
import { BAND_COUNT, constantSpectrum } from '../../src/optics/spectrum.ts';
import { magnitude, spectrum } from './arbitrary.ts';
import { expectAllClose, expectClose } from './close.ts';
import { reflectanceInfinite } from './one-band.ts';
import { referenceTest, referenceText } from './reference.ts';

const nothing: OpticalConstants = { absorption: constantSpectrum(0), scattering: constantSpectrum(0) };

const part: fc.Arbitrary<MixturePart> = fc.record({
  constants: fc.record({ absorption: spectrum(magnitude), scattering: spectrum(magnitude) }),
  concentration: fc.double({ min: 0, max: 0.1, noNaN: true }),
});

/** Five published bands, repeated over the 36 of the book. */
const spread = (values: readonly number[]): number[] =>
  Array.from({ length: BAND_COUNT }, (_, band) => values[band % values.length]!);

referenceTest('mixtureConstants reproduces the published two-constant mixtures', () => {
  const { two_constant } = JSON.parse(referenceText('km_published_vectors.json'));
  for (const { c, R } of two_constant.cases) {
    const parts = c.map((concentration: number, i: number) => ({
      constants: { absorption: spread(two_constant.pigment_K[i]), scattering: spread(two_constant.pigment_S[i]) },
      concentration,
    }));
    const { absorption, scattering } = mixtureConstants(nothing, parts);
    expectAllClose(reflectancesInfinite(absorption, scattering), spread(R), 1e-14, `mix ${c}`);
  }
});

referenceTest('mixtureConstants with one scattering for all reproduces the published single-constant mixtures', () => {
  const { single_constant } = JSON.parse(referenceText('km_published_vectors.json'));
  for (const { c, R } of single_constant.cases) {
    const parts = c.map((concentration: number, i: number) => ({
      constants: {
        absorption: spread(single_constant.pigment_reflectances[i].map(absorptionToScattering)),
        scattering: constantSpectrum(1),
      },
      concentration,
    }));
    const { absorption, scattering } = mixtureConstants(nothing, parts);
    expectAllClose(reflectancesInfinite(absorption, scattering), spread(R), 1e-14, `mix ${c}`);
  }
});

test('mixtureConstants worked by hand: 0.01 + 0.002 · 300 + 0.01 · 4 is 0.65 per mm', () => {
  const plastic = { absorption: constantSpectrum(0.01), scattering: constantSpectrum(0.02) };
  const { absorption, scattering } = mixtureConstants(plastic, [
    { constants: { absorption: constantSpectrum(300), scattering: constantSpectrum(5) }, concentration: 0.002 },
    { constants: { absorption: constantSpectrum(4), scattering: constantSpectrum(100) }, concentration: 0.01 },
  ]);
  expectClose(absorption[0]!, 0.65, 1e-15);
  expectClose(scattering[35]!, 1.03, 1e-15);
  expectClose(reflectanceInfinite(0.65 / 1.03), 0.3425, 5e-5);
});

test('mixtureConstants doesn’t mind the order of its parts, nor one part given in two', () => {
  fc.assert(
    fc.property(fc.array(part, { minLength: 1, maxLength: 5 }), (parts) => {
      const forward = mixtureConstants(nothing, parts);
      const backward = mixtureConstants(nothing, parts.toReversed());
      const halved = mixtureConstants(
        nothing,
        [...parts, ...parts].map((each) => ({ ...each, concentration: each.concentration / 2 })),
      );
      for (let band = 0; band < BAND_COUNT; band++) {
        expectClose(backward.absorption[band]!, forward.absorption[band]!, 1e-12 * forward.absorption[band]! + 1e-300);
        expectClose(halved.scattering[band]!, forward.scattering[band]!, 1e-12 * forward.scattering[band]! + 1e-300);
      }
      const [one, other] = [forward, backward].map((mix) =>
        labOf(reflectancesInfinite(mix.absorption, mix.scattering)),
      );
      expectClose(one!.L, other!.L, 1e-9);
    }),
    { numRuns: 50 },
  );
});

test('mixtureConstants without parts is the plastic, and never the plastic’s own arrays', () => {
  const plastic = { absorption: constantSpectrum(0.01), scattering: constantSpectrum(0.02) };
  const mix = mixtureConstants(plastic, []);
  mix.absorption[0] = 9;
  expect(plastic.absorption[0]).toBe(0.01);
  expectAllClose(mix.scattering, plastic.scattering, 0);
});

test('mixtureConstants refuses a concentration below 0 and a spectrum of another grid, naming them', () => {
  const constants = nothing;
  expect(() => mixtureConstants(nothing, [{ constants, concentration: -0.1 }])).toThrow(/-0.1 g\/ml/);
  expect(() => mixtureConstants({ ...nothing, absorption: [1] }, [])).toThrow(/absorption of plastic has 1 bands/);
  expect(() => mixtureConstants(nothing, [{ constants: { ...nothing, scattering: [] }, concentration: 0 }])).toThrow(
    /scattering of part has 0 bands/,
  );
});
