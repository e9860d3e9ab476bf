import { expect } from 'vitest';
import {
  coverage,
  criterion,
  type FilmLeftOut,
  missesOfOthers,
  mixesLeftOut,
  pigmentFilms,
  quantile,
} from './fit/pigment-films.ts';
import { referenceTest, referenceText } from './reference.ts';
import { type Judged, judgedFilms, judgedPairs, shareWithin } from './uncertainty-study.ts';

let films: readonly FilmLeftOut[] | undefined;

/** Every mix of the measured paints, with the fit of all others. */
function left(): readonly FilmLeftOut[] {
  films ??= mixesLeftOut(pigmentFilms(referenceText('pigment_films_shared.csv')));
  return films;
}

function expectCalibrated(judged: readonly Judged[]): void {
  const held = shareWithin(judged, 'bound90');
  expect(held).toBeGreaterThanOrEqual(0.85);
  expect(held).toBeLessThanOrEqual(0.95);
}

referenceTest('viewsSpread of photographed materials: nine in ten of their pairs are within its bound', () => {
  const judged = [...judgedPairs('one chip'), ...judgedPairs('two chips')];
  expect(judged.length).toBe(1026);
  expectCalibrated(judged);
});

referenceTest('viewsSpread of estimated materials: nine in ten of their pairs are within its bound', () => {
  const judged = judgedPairs('colour and kind');
  expect(judged.length).toBe(513);
  expectCalibrated(judged);
});

referenceTest('viewsSpread of measured paints: nine in ten of the mixes left out are within its bound', () => {
  const judged = judgedFilms(left());
  expect(judged.length).toBe(44);
  expectCalibrated(judged);
});

referenceTest('fitMaterials(all other films) predicts a mix left out, within its bound about nine times in ten', () => {
  const misses = missesOfOthers(left());
  expect(misses).toHaveLength(44);
  expect(coverage(misses)).toBeGreaterThanOrEqual(0.85);
  expect(coverage(misses)).toBeLessThanOrEqual(0.95);
  expect(criterion(misses)).toBeLessThanOrEqual(1.207);
  expect(
    quantile(
      misses.map(({ deltaE00 }) => deltaE00),
      0.95,
    ),
  ).toBeLessThanOrEqual(10.8);
});
