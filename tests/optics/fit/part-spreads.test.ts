import { expect, test } from 'vitest';
import { fitMaterials } from '../../../src/optics/fit/fit-materials.ts';
import { FIT_DEFAULTS, type FitOptions } from '../../../src/optics/fit/fit-options.ts';
import { posteriorCovariance } from '../../../src/optics/fit/material-posterior.ts';
import { factorPrior, weighingSpreads } from '../../../src/optics/fit/part-spreads.ts';
import { expectAllClose, expectClose } from '../close.ts';
import { knownShelf, measuredFilm, WAVELENGTHS } from './synthetic-films.ts';

const options: FitOptions = {
  ...FIT_DEFAULTS,
  wavelengths: WAVELENGTHS,
  densities: new Map([
    ['dusk', 1.5],
    ['straw', 3],
  ]),
};

test('factorPrior(material) gives half the room to a gram of twice the density, but for what oil takes of it', () => {
  const [dusk, straw, other] = ['dusk', 'straw', 'soot'].map((name) => factorPrior(name, options));
  expectClose(dusk!.centre - straw!.centre, 0.7 * Math.LN2, 1e-12);
  expect(dusk!.centre).toBeGreaterThan(0);
  expect(straw!.centre).toBeLessThan(0);
  expect(other).toEqual({ centre: 0, spread: 0.4 });
  expect(factorPrior('dusk', { ...options, amounts: 'concentrations' })).toEqual({ centre: 0, spread: 0 });
});

test('fitMaterials(films) leaves a factor at least 0.2 of doubt where the paint was only ever measured alone', () => {
  const deviation = (films: ReturnType<typeof knownShelf>): number => {
    const fitted = fitMaterials(films, options);
    const { factor, begins } = fitted.posterior;
    const gradient = new Float64Array(factor.rows.length);
    const index = [...fitted.materials.keys()].indexOf('dusk');
    gradient[begins[index]! + 2 * WAVELENGTHS.length] = factorPrior('dusk', options).spread;
    return Math.sqrt(posteriorCovariance(fitted.posterior, [gradient])[0]!);
  };
  const alone = [measuredFilm('chalk', { chalk: 1 }), measuredFilm('dusk', { dusk: 1 })];
  expectClose(deviation(alone), 0.2, 1e-9);
  expect(deviation(knownShelf())).toBeLessThan(0.19);
});

test('weighingSpreads(amounts) is a tenth of a trace, and nothing of a film of one paint', () => {
  expectAllClose(weighingSpreads([1, 999], options), [0.0999, 0.0001], 1e-12);
  expectAllClose(weighingSpreads([30, 30], options), [0.05, 0.05], 1e-12);
  expectAllClose(weighingSpreads([7], options), [0], 1e-12);
  expectAllClose(weighingSpreads([1, 0.01], { ...options, amounts: 'concentrations' }), [0, 0], 1e-12);
});
