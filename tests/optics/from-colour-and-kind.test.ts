import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { appearance } from '../../src/optics/appearance.ts';
import { labOf } from '../../src/optics/cielab.ts';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
import { hexOf, labFromHex } from '../../src/optics/display.ts';
import { isOpticalFault } from '../../src/optics/fault.ts';
import { fromColourAndKind, type StatedColour } from '../../src/optics/from-colour-and-kind.ts';
import { reflectancesInfinite } from '../../src/optics/kubelka-munk.ts';
import type { MaterialConstants } from '../../src/optics/material-constants.ts';
import { type MixtureConstants, mixtureConstants } from '../../src/optics/mixture.ts';
import { hidingThickness } from '../../src/optics/opacity.ts';
import { NO_PATH, USUAL_OPTICS } from '../../src/optics/optical-model.ts';
import { plasticConstants } from '../../src/optics/plastic.ts';
import { BESIDE_GLOSS, surfaceInward, surfaceOutwardSpectrum } from '../../src/optics/surface.ts';
import { reflectanceFromHex } from '../../src/optics/upsampling.ts';
import { COLOURING_KINDS, DARKEST_BODY } from '../../src/tables/colouring-kinds.ts';
import { hex } from './arbitrary.ts';
import { expectClose } from './close.ts';
import { errorsOf, paints, pairs, quantile } from './paints.ts';
import { referenceTest } from './reference.ts';

const KINDS = Object.keys(COLOURING_KINDS) as (keyof typeof COLOURING_KINDS)[];
const clear = plasticConstants('clear');
/** Of paints that are published as they are where all is hidden: K is K′ there. */
const HIDDEN = { ...USUAL_OPTICS, path: NO_PATH };

function found(stated: StatedColour): MaterialConstants {
  const result = fromColourAndKind(stated);
  if (isOpticalFault(result)) throw new Error(result.message);
  return result;
}

/** The typical dose in clear plastic. */
function mixed(stated: StatedColour): MixtureConstants {
  const { kind, dose = COLOURING_KINDS[kind].dose } = stated;
  return mixtureConstants(clear, [{ constants: found(stated).constants, concentration: dose }]);
}

/** What is seen of a body that hides what is behind it, however far light goes in it. */
function hiding(mix: MixtureConstants): Float64Array {
  return surfaceOutwardSpectrum(reflectancesInfinite(mix.absorption, mix.scattering), BESIDE_GLOSS);
}

describe('the typical dose shows the stated colour', () => {
  test.each(['#8a5a2b', '#c89a5a', '#7a8a4a', '#5a3030', '#2a2a30', '#3f5f7f'])(
    'fromColourAndKind dye %s: through the stated thickness over white',
    (colour) => {
      for (const thickness of [4, 10]) {
        const mix = mixed({ optics: USUAL_OPTICS, colour, kind: 'dye', dose: 0.006, thickness });
        const { overWhite, contrastRatio } = appearance(mix, { thickness, optics: USUAL_OPTICS });
        expect(deltaE00(overWhite.lab, labFromHex(colour))).toBeLessThan(0.5);
        // A dye hides nothing: over black it is nearly black.
        expect(contrastRatio).toBeLessThan(0.45);
      }
    },
  );

  test.each(['#8c1f1f', '#1f3f8c', '#e0b020', '#2f6f3f', '#704020', '#202020', '#d86018'])(
    'fromColourAndKind pigment %s: as a body that hides what is behind it',
    (colour) => {
      expect(
        deltaE00(
          labOf(hiding(mixed({ optics: USUAL_OPTICS, colour, kind: 'pigment', dose: 0.004 }))),
          labFromHex(colour),
        ),
      ).toBeLessThan(0.5);
    },
  );

  test.each(['#f4f2ea', '#ffffff', '#f8f8f8'])('fromColourAndKind white %s: nearly', (colour) => {
    // Gloss and the plastic's own yellow keep any white below the perfect one.
    const mix = mixed({ optics: USUAL_OPTICS, colour, kind: 'white' });
    expect(deltaE00(labOf(hiding(mix)), labFromHex(colour))).toBeLessThan(4);
    expect(hidingThickness(mix, { optics: USUAL_OPTICS })!).toBeLessThan(12);
  });

  test('fromColourAndKind of any kind: the stated colour comes back as stated, wherever a body of it is possible', () => {
    fc.assert(
      fc.property(hex, fc.constantFrom(...KINDS), (colour, kind) => {
        const { constants } = found({ optics: USUAL_OPTICS, colour, kind });
        // A band at 0 says that the plastic itself is darker there than the label; and no body is as dark as the screen's black.
        const inside = Array.from(reflectanceFromHex(colour), (R) => surfaceInward(R, BESIDE_GLOSS));
        fc.pre(constants.absorption.every((K) => K > 0) && inside.every((R) => R >= DARKEST_BODY));
        const mix = mixed({ optics: USUAL_OPTICS, colour, kind });
        const shown =
          kind === 'dye' || kind === 'clear'
            ? appearance(mix, { thickness: 10, optics: USUAL_OPTICS }).overWhite.lab
            : labOf(hiding(mix));
        expect(deltaE00(shown, labFromHex(colour)), `${kind} ${colour}`).toBeLessThan(0.2);
      }),
      { numRuns: 300 },
    );
  });

  test('fromColourAndKind says by how much the typical dose misses, any colour and kind', () => {
    fc.assert(
      fc.property(hex, fc.constantFrom(...KINDS), (colour, kind) => {
        const { residual, tier, expectedDeltaE, constants } = found({ optics: USUAL_OPTICS, colour, kind });
        const mix = mixed({ optics: USUAL_OPTICS, colour, kind });
        const shown =
          kind === 'dye' || kind === 'clear'
            ? appearance(mix, { thickness: 10, optics: USUAL_OPTICS }).overWhite.lab
            : labOf(hiding(mix));
        expect(Math.abs(residual - deltaE00(shown, labFromHex(colour)))).toBeLessThan(1e-9);
        expect(expectedDeltaE).toBeGreaterThanOrEqual(residual);
        expect(tier).toBe('estimated');
        for (const value of [...constants.absorption, ...constants.scattering]) {
          expect(value >= 0 && Number.isFinite(value)).toBe(true);
        }
      }),
      { numRuns: 150 },
    );
  });

  test('fromColourAndKind in a plastic of its own takes that plastic’s K and S off first', () => {
    const plastic = plasticConstants('milky');
    const colour = '#704020';
    const { constants, residual } = found({ optics: USUAL_OPTICS, colour, kind: 'pigment', dose: 0.004, plastic });
    expect(residual).toBeLessThan(0.5);
    const mix = mixtureConstants(plastic, [{ constants, concentration: 0.004 }]);
    expect(deltaE00(labOf(hiding(mix)), labFromHex(colour))).toBeLessThan(0.5);
  });
});

describe('kinds', () => {
  test('fromColourAndKind: gram for gram a white hides best by far, a light pigment as a pearl does; a dye never by scattering', () => {
    const colour = '#e8e4da';
    const thickness = (kind: 'white' | 'pigment' | 'pearl'): number => {
      const { constants } = found({ optics: USUAL_OPTICS, colour, kind });
      const mix = mixtureConstants(clear, [{ constants, concentration: 0.0085 }]);
      return hidingThickness(mix, { optics: USUAL_OPTICS })!;
    };
    expect(thickness('white')).toBeLessThan(0.5 * thickness('pearl'));
    // 0.6 Y^0.7 of a pigment, and 0.65 per 0.01 g/ml of a pearl, that of those whose K and S were measured.
    expectClose(thickness('pigment') / thickness('pearl'), 1, 0.1);
    expect(
      found({ optics: USUAL_OPTICS, colour: '#e8b060', kind: 'dye' }).constants.scattering[0]! * 0.0085,
    ).toBeLessThan(0.01);
  });

  test('fromColourAndKind: a black hides at the stated dose, and a tenth of it is smoke', () => {
    // Common practice, no source: two or three drops of black in a cup smoke it, twenty or thirty make it black.
    const { constants } = found({ optics: USUAL_OPTICS, colour: '#141314', kind: 'pigment', dose: 0.0127 });
    const body = (concentration: number, thickness: number): ReturnType<typeof appearance> =>
      appearance(mixtureConstants(clear, [{ constants, concentration }]), { thickness, optics: USUAL_OPTICS });
    expect(body(0.0127, 9).contrastRatio).toBeGreaterThan(0.98);
    expect(body(0.00127, 9).overWhite.lab.L).toBeLessThan(45);
    expect(body(0.00127, 3).overWhite.lab.L).toBeGreaterThan(45);
    expect(body(0.00127, 3).contrastRatio).toBeLessThan(0.3);
  });

  test('fromColourAndKind: half the stated dose of twice the strength is the same material', () => {
    const [one, half] = [0.008, 0.004].map(
      (dose) => found({ optics: USUAL_OPTICS, colour: '#704020', kind: 'pigment', dose }).constants,
    );
    one!.absorption.forEach((k, band) => {
      expect(Math.abs(half!.absorption[band]! / k - 2)).toBeLessThan(1e-9);
    });
  });

  test('fromColourAndKind: twice the dose of a dye is darker, half of it lighter', () => {
    const { constants } = found({ optics: USUAL_OPTICS, colour: '#b07a3a', kind: 'dye', dose: 0.006 });
    const L = (concentration: number): number =>
      appearance(mixtureConstants(clear, [{ constants, concentration }]), { thickness: 10, optics: USUAL_OPTICS })
        .overWhite.lab.L;
    expect(L(0.012)).toBeLessThan(L(0.006) - 5);
    expect(L(0.003)).toBeGreaterThan(L(0.006) + 5);
  });
});

referenceTest(
  'fromColourAndKind of 19 paints predicts pairs of them: median below the 9 ΔE00 that it says to expect',
  () => {
    const truth = paints();
    const materials = truth.map(({ name, constants }) =>
      found({
        optics: HIDDEN,
        colour: hexOf(
          surfaceOutwardSpectrum(reflectancesInfinite(constants.absorption, constants.scattering), BESIDE_GLOSS),
        ).hex,
        kind: /white/i.test(name) ? 'white' : 'pigment',
        dose: 1,
      }),
    );
    const errors = errorsOf(
      pairs(truth.length),
      truth,
      materials.map(({ constants }) => constants),
    );
    expect(quantile(errors, 0.5)).toBeLessThan(materials[0]!.expectedDeltaE);
    expect(quantile(errors, 0.5)).toBeGreaterThan(materials[0]!.expectedDeltaE / 2);
  },
);

test.each([
  ['a colour that is none', { colour: 'brown', kind: 'dye' }],
  ['a dose of 0', { colour: '#704020', kind: 'dye', dose: 0 }],
  ['a thickness that is no number', { colour: '#704020', kind: 'dye', thickness: Number.NaN }],
] as const)('fromColourAndKind diagnoses %s', (_, stated) => {
  expect(fromColourAndKind({ ...stated, optics: USUAL_OPTICS })).toMatchObject({ fault: 'out-of-range' });
});
