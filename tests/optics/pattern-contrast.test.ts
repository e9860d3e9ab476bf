import { expect, test } from 'vitest';
import { appearance } from '../../src/optics/appearance.ts';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
import { USUAL_OPTICS } from '../../src/optics/optical-model.ts';
import { patternContrast } from '../../src/optics/pattern-contrast.ts';
import { constantSpectrum } from '../../src/optics/spectrum.ts';
import { expectClose } from './close.ts';

const body = (K: number, S: number): { absorption: Float64Array; scattering: Float64Array } => ({
  absorption: constantSpectrum(K),
  scattering: constantSpectrum(S),
});
const thinDark = body(0.15, 0.01);
const thinLight = body(0.005, 0.02);
const thickDark = body(5, 2);
const thickLight = body(0.01, 5);

test('patternContrast of a cup with itself is nothing, and suits no swirl', () => {
  const { apart, swirl, laminate, shift, suits } = patternContrast(thinDark, thinDark, {
    optics: USUAL_OPTICS,
    thickness: 10,
  });
  for (const difference of [apart, swirl, laminate, ...shift]) expectClose(difference, 0, 1e-4);
  expect(suits.swirl).toBe(false);
});

test('patternContrast.apart is the difference of the cups by themselves, the lesser of over white and over black', () => {
  const [one, other] = [thinDark, thinLight].map((cup) => appearance(cup, { thickness: 10, optics: USUAL_OPTICS }));
  const white = deltaE00(one!.overWhite.lab, other!.overWhite.lab);
  const black = deltaE00(one!.overBlack.lab, other!.overBlack.lab);
  expectClose(
    patternContrast(thinDark, thinLight, { optics: USUAL_OPTICS, thickness: 10 }).apart,
    Math.min(white, black),
    1e-12,
  );
});

test('patternContrast: thick cups of strong contrast swirl, and are no laminate to shine through', () => {
  const { suits, swirl, apart, laminate } = patternContrast(thickDark, thickLight, {
    optics: USUAL_OPTICS,
    thickness: 10,
  });
  expect(suits).toEqual({ swirl: true, laminate: false });
  // A side hides what is behind it, and a streak of 1 mm nearly does.
  expectClose(swirl / apart, 1, 0.1);
  expectClose(laminate / apart, 1, 0.01);
});

test('patternContrast: thin cups shine through one another, which shifts their sides', () => {
  const { suits, shift, swirl } = patternContrast(thinDark, thinLight, { optics: USUAL_OPTICS, thickness: 10 });
  expect(suits.laminate).toBe(true);
  expect(Math.max(...shift)).toBeGreaterThan(1);
  expect(swirl).toBeLessThan(patternContrast(thickDark, thickLight, { optics: USUAL_OPTICS, thickness: 10 }).swirl);
});

test('patternContrast of streaks through half the bait is that of a laminate', () => {
  const { swirl, laminate } = patternContrast(thinDark, thinLight, { optics: USUAL_OPTICS, thickness: 10, streak: 5 });
  expectClose(swirl, laminate, 1e-12);
});

test.each([0, 10, 12, Number.NaN])('patternContrast refuses a streak of %s mm in a bait of 10 mm', (streak) => {
  expect(() => patternContrast(thinDark, thinLight, { optics: USUAL_OPTICS, thickness: 10, streak })).toThrow(
    RangeError,
  );
});
