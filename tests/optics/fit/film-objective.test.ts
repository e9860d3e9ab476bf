import { expect, test } from 'vitest';
import { filmMisfits, filmObjective, filmWeight } from '../../../src/optics/fit/film-objective.ts';
import { filmProblem } from '../../../src/optics/fit/film-problem.ts';
import { firstGuess } from '../../../src/optics/fit/first-guess.ts';
import { FIT_DEFAULTS } from '../../../src/optics/fit/fit-options.ts';
import { expectClose } from '../close.ts';
import { knownShelf, WAVELENGTHS } from './synthetic-films.ts';

const variants = [
  { ...FIT_DEFAULTS, wavelengths: WAVELENGTHS },
  { ...FIT_DEFAULTS, wavelengths: WAVELENGTHS, robustness: Number.POSITIVE_INFINITY },
  { ...FIT_DEFAULTS, wavelengths: WAVELENGTHS, amounts: 'concentrations' as const },
  { ...FIT_DEFAULTS, wavelengths: WAVELENGTHS, densities: new Map([['dusk', 1.2]]) },
];

test.each(variants)(
  'filmObjective(problem) has the gradient of a small step in every kind of unknown (%#)',
  (options) => {
    const problem = filmProblem(knownShelf(0.002), options);
    const objective = filmObjective(problem);
    const z = firstGuess(problem).map((value, i) => value + 0.3 * Math.sin(7.3 * i));
    const gradient = new Float64Array(z.length);
    objective(z, gradient);
    const aside = new Float64Array(z.length);
    const { perMaterial, materials, unknowns } = problem;
    const mixed = problem.films.find((film) => film.materials.length === 2)!;
    const h = 1e-5;
    for (const i of [
      0,
      15,
      30,
      31,
      50,
      61,
      62,
      perMaterial + 62,
      perMaterial * materials.length,
      mixed.unknowns,
      mixed.unknowns + 1,
      mixed.thicknessAt,
      unknowns - 2,
      unknowns - 1,
    ]) {
      const at = (step: number): number =>
        objective(
          z.map((value, j) => (i === j ? value + step : value)),
          aside,
        );
      const slope = (at(h) - at(-h)) / (2 * h);
      expectClose(gradient[i]!, slope, 1e-5 * Math.max(1, Math.abs(slope)), `unknown ${i}`);
    }
  },
);

test('filmWeight(problem, film, misfit) falls as a film fits worse, to nothing', () => {
  const problem = filmProblem(knownShelf(), variants[0]!);
  const film = problem.films[0]!;
  const weights = [0, 10, 100, 1e9].map((misfit) => filmWeight(problem, film, misfit));
  expect(weights).toEqual([...weights].sort((one, other) => other - one));
  expect(weights[3]).toBeLessThan(1e-6);
});

test('filmMisfits(problem, z) are the sums that the objective is made of', () => {
  const problem = filmProblem(knownShelf(0.002), variants[1]!);
  const z = firstGuess(problem);
  const value = filmObjective(problem)(z, new Float64Array(z.length));
  const misfits = filmMisfits(problem, z).reduce((sum, misfit) => sum + misfit / 2, 0);
  const prior = z.reduce((sum, each) => sum + (each * each) / 2, 0);
  expectClose(value, misfits + prior, 1e-8 * value);
});
