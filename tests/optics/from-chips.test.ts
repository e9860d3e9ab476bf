import { describe, expect, test } from 'vitest';
import { isOpticalFault } from '../../src/optics/fault.ts';
import { fromChips, type PhotographedChip } from '../../src/optics/from-chips.ts';
import type { MaterialConstants, MaterialResult } from '../../src/optics/material-constants.ts';
import type { OpticalConstants } from '../../src/optics/mixture.ts';
import { USUAL_OPTICS } from '../../src/optics/optical-model.ts';
import { plasticConstants } from '../../src/optics/plastic.ts';
import { constantSpectrum } from '../../src/optics/spectrum.ts';
import { errorsOf, look, type Paint, paints, pairs, quantile } from './paints.ts';
import { referenceTest } from './reference.ts';

const plastic = plasticConstants('clear');

function found(result: MaterialResult): MaterialConstants {
  if (isOpticalFault(result)) throw new Error(result.message);
  return result;
}

/** The material's chips as a camera without noise would have them: in eight bits. */
function photographed(constants: OpticalConstants, doses: readonly number[], thickness: number): MaterialConstants {
  const chips = doses.map((concentration) => {
    const { overWhite, overBlack } = look([{ constants, concentration }], thickness);
    return { concentration, thickness, overWhite: overWhite.hex, overBlack: overBlack.hex };
  });
  return found(fromChips({ optics: USUAL_OPTICS, plastic, chips }));
}

/** `fromChips` of one chip. */
const fromChip = (chip: PhotographedChip): MaterialResult =>
  fromChips({ optics: USUAL_OPTICS, plastic, chips: [chip] });

const moss: OpticalConstants = {
  absorption: Float64Array.from({ length: 36 }, (_, band) => 40 + 150 * Math.sin(band / 6) ** 2),
  scattering: constantSpectrum(30),
};

describe('fromChips', () => {
  test('fromChip shows the two colours that it was given, within half a ΔE00', () => {
    for (const [overWhite, overBlack] of [
      ['#d9c48f', '#57503c'],
      ['#8a5a2b', '#261e16'],
      ['#c03030', '#401515'],
      ['#30406a', '#101830'],
      ['#e8e4da', '#a8a59c'],
      ['#9fc37a', '#2b3a22'],
      ['#111111', '#0b0b0b'],
    ] as const) {
      const { constants, residual, tier, expectedDeltaE } = found(
        fromChip({ concentration: 0.004, thickness: 5, overWhite, overBlack }),
      );
      expect(residual, overWhite).toBeLessThan(0.5);
      expect(tier).toBe('photographed');
      expect(expectedDeltaE).toBeGreaterThanOrEqual(residual);
      for (const value of [...constants.absorption, ...constants.scattering]) {
        expect(value >= 0 && Number.isFinite(value)).toBe(true);
      }
    }
  });

  test('fromChips of several doses predicts a dose between them within 1.5 ΔE00, and beyond them within 3', () => {
    const { constants } = photographed(moss, [0.001, 0.004], 4);
    const truth: Paint[] = [{ name: 'moss', constants: moss }];
    expect(Math.max(...errorsOf([[{ of: 0, dose: 0.002 }]], truth, [constants]))).toBeLessThan(1.5);
    expect(
      Math.max(...errorsOf([[{ of: 0, dose: 0.0005 }], [{ of: 0, dose: 0.01 }]], truth, [constants])),
    ).toBeLessThan(3);
  });

  test('fromChips takes account of the backings that the chips lay on', () => {
    const backings = { white: 0.6, black: 0.1 };
    const chip = { concentration: 0.002, thickness: 4, overWhite: '#8f8266', overBlack: '#5a5240' };
    const [book, own] = [found(fromChip(chip)), found(fromChip({ ...chip, backings }))];
    expect(own.residual).toBeLessThan(0.5);
    // Over a greyer white the same colour needs less absorption.
    expect(own.constants.absorption[17]!).toBeLessThan(book.constants.absorption[17]!);
  });

  referenceTest(
    'fromChips of 19 paints predicts pairs of them: median below 3.2 ΔE00 from one chip each, below 1.7 from two',
    () => {
      const truth = paints();
      expect(truth.length).toBe(19);
      for (const [doses, median, ninth] of [
        [[0.2], 3.2, 13],
        [[0.05, 0.5], 1.7, 9],
      ] as const) {
        const materials = truth.map(({ constants }) => photographed(constants, doses, 3));
        const errors = errorsOf(
          pairs(truth.length),
          truth,
          materials.map(({ constants }) => constants),
        );
        expect(errors.length).toBe(1026);
        expect(quantile(errors, 0.5)).toBeLessThan(median);
        expect(quantile(errors, 0.9)).toBeLessThan(ninth);
        expect(Math.max(...materials.map(({ residual }) => residual))).toBeLessThan(2);
      }
    },
  );
});

describe('faults', () => {
  const chip = { concentration: 0.002, thickness: 4, overWhite: '#8f8266', overBlack: '#3a3428' };

  test.each([
    ['a colour that is none', { ...chip, overBlack: 'dark' }, 'out-of-range'],
    ['a dose below 0', { ...chip, concentration: -1 }, 'out-of-range'],
    ['views exchanged', { ...chip, overWhite: chip.overBlack, overBlack: chip.overWhite }, 'darker-over-white'],
    ['a chip that hides its backing', { ...chip, overBlack: chip.overWhite }, 'opaque'],
  ])('fromChip diagnoses %s', (_, wrong, fault) => {
    expect(fromChip(wrong)).toMatchObject({ fault });
  });

  test('fromChips diagnoses no chips', () => {
    expect(fromChips({ optics: USUAL_OPTICS, plastic, chips: [] })).toMatchObject({ fault: 'out-of-range' });
  });
});
