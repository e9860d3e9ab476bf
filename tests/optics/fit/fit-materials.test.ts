import { expect, test } from 'vitest';
import type { Lab } from '../../../src/optics/cielab.ts';
import { deltaE00 } from '../../../src/optics/delta-e00.ts';
import { labSlopes, labSlopesSpace } from '../../../src/optics/fit/colour-misfit.ts';
import type { MeasuredFilm } from '../../../src/optics/fit/film.ts';
import { fitMaterials } from '../../../src/optics/fit/fit-materials.ts';
import { predictFilm } from '../../../src/optics/fit/predict-film.ts';
import { observerWeights } from '../../../src/optics/tristimulus.ts';
import { expectAllClose, expectClose } from '../close.ts';
import { BLACK, knownFilm, knownShelf, measuredFilm, partsOf, WAVELENGTHS, WHITE } from './synthetic-films.ts';

const WEIGHTS = observerWeights(WAVELENGTHS, 'D65');

function labOf(R: ArrayLike<number>): Lab {
  const space = labSlopesSpace(R.length);
  labSlopes(R, WEIGHTS, space);
  const [L, a, b] = space.lab;
  return { L: L!, a: a!, b: b! };
}

/** Mixes that no film of the shelf is. */
const UNSEEN = (
  [
    { dusk: 0.25, chalk: 0.75 },
    { straw: 0.8, chalk: 0.2 },
    { soot: 0.1, chalk: 0.9 },
    { dusk: 0.3, straw: 0.7 },
    { straw: 0.97, soot: 0.03 },
  ] as readonly Record<string, number>[]
).map(partsOf);

test('fitMaterials(films) recovers paints well enough to predict mixes that it never saw', () => {
  const fitted = fitMaterials(knownShelf(), { wavelengths: WAVELENGTHS });
  expect(fitted.restsOn).toMatchObject({ films: 9, views: 18, converged: true });
  for (const parts of UNSEEN) {
    for (const backing of [BLACK, WHITE]) {
      const off = deltaE00(predictFilm(fitted, parts, backing).lab, labOf(knownFilm(parts, backing)));
      expect(off, JSON.stringify(parts)).toBeLessThan(1.5);
    }
  }
  for (const { name, views } of fitted.films) {
    for (const view of views) expect(view.deltaE00, `${name} ${view.label}`).toBeLessThan(1.5);
  }
});

test('fitMaterials(films) stands noise of half a point of reflectance', () => {
  const fitted = fitMaterials(knownShelf(0.005), { wavelengths: WAVELENGTHS });
  for (const parts of UNSEEN) {
    const off = deltaE00(predictFilm(fitted, parts, WHITE).lab, labOf(knownFilm(parts, WHITE)));
    expect(off, JSON.stringify(parts)).toBeLessThan(2);
  }
});

test('fitMaterials(films) is not bent by one film of another paint than its label says', () => {
  const liar: MeasuredFilm = {
    ...measuredFilm('liar', { soot: 0.5, chalk: 0.5 }),
    parts: partsOf({ dusk: 0.3, chalk: 0.7 }),
  };
  const fitted = fitMaterials([...knownShelf(), liar], { wavelengths: WAVELENGTHS });
  const weight = (name: string): number => fitted.films.find((film) => film.name === name)!.weight;
  expect(weight('liar')).toBeLessThan(0.2);
  expect(weight('grey')).toBeGreaterThan(0.8);
  const parts = partsOf({ straw: 0.8, chalk: 0.2 });
  expect(deltaE00(predictFilm(fitted, parts, WHITE).lab, labOf(knownFilm(parts, WHITE)))).toBeLessThan(1.5);
});

test('fitMaterials(films) is the same in whatever order films and parts come', () => {
  const films = knownShelf(0.002);
  const turned = [...films].reverse().map((film) => ({ ...film, parts: [...film.parts].reverse() }));
  const one = fitMaterials(films, { wavelengths: WAVELENGTHS });
  const other = fitMaterials(turned, { wavelengths: WAVELENGTHS });
  const parts = partsOf({ dusk: 0.25, chalk: 0.75 });
  expectAllClose(predictFilm(one, parts, WHITE).spectrum, predictFilm(other, parts, WHITE).spectrum, 2e-3);
});

test('fitMaterials(films) never gives a K or S that is not above 0', () => {
  const { materials } = fitMaterials(knownShelf(0.01), { wavelengths: WAVELENGTHS });
  expect([...materials.keys()]).toEqual(['chalk', 'dusk', 'soot', 'straw']);
  for (const { absorption, scattering, factor } of materials.values()) {
    expect(Math.min(...absorption, ...scattering, factor)).toBeGreaterThan(0);
    expect(Number.isFinite(Math.max(...absorption, ...scattering, factor))).toBe(true);
  }
});

test('fitMaterials(films) says of each material which films tell it, and whether one is of it alone', () => {
  const { materials } = fitMaterials(knownShelf(), { wavelengths: WAVELENGTHS });
  expect(materials.get('soot')).toMatchObject({ films: ['grey', 'dark-grey'], alone: false });
  expect(materials.get('straw')).toMatchObject({ films: ['straw', 'straw-tint', 'straw-half'], alone: true });
});

test('fitMaterials(films) names a film that is darker over white than over black', () => {
  const [first, ...others] = knownShelf();
  const [black, white] = first!.views;
  const swapped: MeasuredFilm = {
    ...first!,
    views: [
      { ...black!, seen: white!.seen },
      { ...white!, seen: black!.seen },
    ],
  };
  const { faults } = fitMaterials([swapped, ...others], { wavelengths: WAVELENGTHS });
  expect(faults).toHaveLength(1);
  expect(faults[0]).toMatchObject({
    film: 'chalk',
    fault: 'darker-over-white',
    views: ['film_on_white', 'film_on_black'],
  });
  expect(faults[0]!.message).toMatch(/^Film chalk is darker as film_on_white than as film_on_black, by up to 0\.\d+/);
});

test('fitMaterials(films, concentrations) takes g per ml of a plastic that is a material of amount 1', () => {
  const plastic = partsOf({ plastic: 1 });
  const views = (K: number, S: number) =>
    [BLACK, WHITE].map((backing, i) => ({
      label: i === 0 ? 'black' : 'white',
      backing,
      seen: backing.map((R) => grey(K, S, R)),
    }));
  const grey = (K: number, S: number, R: number): number => {
    const a = 1 + K / S;
    const b = Math.sqrt(a * a - 1);
    const Rg = (R - 0.04) / (0.96 * 0.4 + 0.6 * (R - 0.04));
    const coth = b / Math.tanh(b * S * 2);
    const inside = (1 - Rg * (a - coth)) / (a - Rg + coth);
    return 0.04 + (0.96 * 0.4 * inside) / (1 - 0.6 * inside);
  };
  const surface = { k1: 0.04, k2: 0.6, specular: 'included' as const };
  const film = (name: string, dose: number): MeasuredFilm => ({
    name,
    thickness: 2,
    parts: dose === 0 ? plastic : [...plastic, { material: 'dye', amount: dose }],
    views: views(0.005 + 60 * dose, 0.01 + 20 * dose),
  });
  const fitted = fitMaterials([film('clear', 0), film('weak', 0.002), film('strong', 0.02)], {
    wavelengths: WAVELENGTHS,
    amounts: 'concentrations',
    surface,
    backingSurface: surface,
    scattering: { curvature: 0.03, slope: 0.15, centre: -1, spread: 3 },
    thicknessSpread: 0.01,
    drawdownSpread: 0.01,
  });
  const dye = fitted.materials.get('dye')!;
  expect(dye.factor).toBe(1);
  expectClose(dye.absorption[15]!, 60, 3);
  expectClose(dye.scattering[15]!, 20, 2);
  const seen = predictFilm(fitted, [...plastic, { material: 'dye', amount: 0.008 }], WHITE, 2).spectrum[15]!;
  expectClose(seen, grey(0.005 + 60 * 0.008, 0.01 + 20 * 0.008, WHITE[15]!), 0.004);
});

test('fitMaterials(films) refuses what is no film', () => {
  const fitting = (film: Partial<MeasuredFilm>) => () =>
    fitMaterials([{ ...knownShelf()[0]!, ...film }], { wavelengths: WAVELENGTHS });
  expect(() => fitMaterials([], { wavelengths: WAVELENGTHS })).toThrow(RangeError);
  expect(fitting({ parts: [] })).toThrow(/no parts/);
  expect(fitting({ parts: partsOf({ chalk: 0 }) })).toThrow(/amount above 0/);
  expect(fitting({ parts: [...partsOf({ chalk: 1 }), ...partsOf({ chalk: 1 })] })).toThrow(/chalk twice/);
  expect(fitting({ views: [{ label: 'x', backing: BLACK, seen: BLACK.map(() => 42) }] })).toThrow(/never percent/);
  expect(fitting({ views: [{ label: 'x', backing: BLACK.slice(1), seen: BLACK }] })).toThrow(/30 bands/);
  expect(fitting({ thickness: 0 })).toThrow(/thickness 0/);
});
