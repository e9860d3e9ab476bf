import { expect, test } from 'vitest';
import { fitMaterials } from '../../../src/optics/fit/fit-materials.ts';
import { FIT_DEFAULTS } from '../../../src/optics/fit/fit-options.ts';
import { predictFilm } from '../../../src/optics/fit/predict-film.ts';
import { expectAllClose, expectClose } from '../close.ts';
import { BLACK, knownShelf, measuredFilm, partsOf, WAVELENGTHS, WHITE } from './synthetic-films.ts';

const FITTED = fitMaterials(knownShelf(0.001), { wavelengths: WAVELENGTHS });
const HALF = partsOf({ dusk: 0.3, chalk: 0.7 });

test('predictFilm(fitted, parts) does not care about the scale or the order of the parts', () => {
  const one = predictFilm(FITTED, HALF, WHITE);
  const other = predictFilm(FITTED, partsOf({ chalk: 70, dusk: 30 }), WHITE);
  expectAllClose(other.spectrum, one.spectrum, 1e-12);
  expectClose(other.bound90, one.bound90, 1e-6);
});

test('predictFilm(fitted, parts, backing, thickness) is lighter over white, and the same over both once it hides', () => {
  const over = (backing: readonly number[], thickness: number): number =>
    predictFilm(FITTED, HALF, backing, thickness).lab.L;
  expect(over(WHITE, 0.1)).toBeGreaterThan(over(BLACK, 0.1) + 5);
  expectClose(over(WHITE, 50), over(BLACK, 50), 1e-6);
});

test('predictFilm(fitted, parts) gives reflectances within 0 and 1, and Lab and XYZ of the same spectrum', () => {
  const { spectrum, tristimulus, lab } = predictFilm(FITTED, HALF, WHITE);
  expect(Math.min(...spectrum)).toBeGreaterThan(0);
  expect(Math.max(...spectrum)).toBeLessThan(1);
  expectClose(lab.L, 116 * Math.cbrt(tristimulus.Y) - 16, 1e-9);
});

test('predictFilm(fitted, parts) expects less error the more the films tell of its materials', () => {
  const bound = (films: ReturnType<typeof knownShelf>): number =>
    predictFilm(fitMaterials(films, { wavelengths: WAVELENGTHS }), HALF, WHITE).bound90;
  const chalkAndDusk = [measuredFilm('chalk', { chalk: 1 }), measuredFilm('dusk', { dusk: 1 })];
  const withTint = [...chalkAndDusk, measuredFilm('tint', { dusk: 0.1, chalk: 0.9 })];
  const withHalf = [...withTint, measuredFilm('half', { dusk: 0.4, chalk: 0.6 })];
  expect(bound(withTint)).toBeLessThan(bound(chalkAndDusk));
  expect(bound(withHalf)).toBeLessThan(bound(withTint));
});

test('predictFilm(fitted, parts) is surer of paints that met in a film than of two that only met a third', () => {
  const bound = (parts: ReturnType<typeof partsOf>, strangersMiss: number): number =>
    predictFilm(fitMaterials(knownShelf(), { wavelengths: WAVELENGTHS, strangersMiss }), parts, WHITE).bound90;
  const strangers = partsOf({ dusk: 0.3, straw: 0.7 });
  // What theory misses is 2.5 times its deviation along each axis, nine times in ten: most of what is left of known paints.
  expect(bound(strangers, 2)).toBeGreaterThan(2 * 2.5 * FIT_DEFAULTS.modelMiss);
  expect(bound(strangers, 2)).toBeGreaterThan(1.5 * bound(strangers, 1));
  expect(bound(HALF, 2)).toBe(bound(HALF, 1));
});

test('predictFilm(fitted, parts) doubts a paint alone that was only ever measured as a tint', () => {
  const without = knownShelf().filter(({ name }) => name !== 'dusk' && name !== 'dusk-half');
  const bound = (strangersMiss: number): number =>
    predictFilm(fitMaterials(without, { wavelengths: WAVELENGTHS, strangersMiss }), partsOf({ dusk: 1 }), WHITE)
      .bound90;
  expect(bound(3)).toBeGreaterThan(bound(1) + 1);
  const tint = partsOf({ dusk: 0.12, chalk: 0.88 });
  const ofTint = (strangersMiss: number): number =>
    predictFilm(fitMaterials(without, { wavelengths: WAVELENGTHS, strangersMiss }), tint, WHITE).bound90;
  expect(ofTint(3)).toBe(ofTint(1));
});

test('predictFilm(fitted, parts) doubts a trace of a strong paint by what a spatula errs', () => {
  const bound = (dusk: number, weighing: number): number =>
    predictFilm({ ...FITTED, options: { ...FITTED.options, weighing } }, partsOf({ dusk, chalk: 1 - dusk }), WHITE)
      .bound90;
  expect(bound(0.02, 0.1)).toBeGreaterThan(bound(0.02, 0));
  expect(bound(0.02, 0.3)).toBeGreaterThan(bound(0.02, 0.1) + 0.5);
});

test('predictFilm(fitted, parts) expects at most what it bounds, and names the films that it rests on', () => {
  const { expected, bound90, restsOn } = predictFilm(FITTED, partsOf({ soot: 0.1, straw: 0.9 }), BLACK);
  expect(expected).toBeGreaterThan(0);
  expect(expected).toBeLessThan(bound90);
  expect(restsOn).toEqual(['straw', 'straw-tint', 'straw-half', 'grey', 'dark-grey']);
});

test('predictFilm(fitted, parts) refuses a material that no film held, and a backing on another grid', () => {
  expect(() => predictFilm(FITTED, partsOf({ rust: 1 }), WHITE)).toThrow(
    /No material rust in the fit; give one of chalk/,
  );
  expect(() => predictFilm(FITTED, HALF, WHITE.slice(1))).toThrow(/30 bands/);
});
