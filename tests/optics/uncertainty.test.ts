import { expect } from 'vitest';
import { pigmentFilms } from './fit/pigment-films.ts';
import { referenceTest, referenceText } from './reference.ts';
import { type Judged, judgedFilms, judgedPairs, shareWithin } from './uncertainty-study.ts';

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
  const judged = judgedFilms(pigmentFilms(referenceText('pigment_films_shared.csv')));
  expect(judged.length).toBe(44);
  expectCalibrated(judged);
});
