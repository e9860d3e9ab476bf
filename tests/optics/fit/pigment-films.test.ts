/**
 * The joint fit against measured films of real paints; see `pigment-films.ts` for their source. `npm run bench` prints all
 * scores.
 */
import { expect } from 'vitest';
import { fitMaterials } from '../../../src/optics/fit/fit-materials.ts';
import { expectClose } from '../close.ts';
import { referenceRows, referenceTest, referenceText } from '../reference.ts';
import { labOnGrid, missesOf, PLAIN_TWO_CONSTANT, pigmentFilms, quantile } from './pigment-films.ts';

const read = (): ReturnType<typeof pigmentFilms> => pigmentFilms(referenceText('pigment_films_shared.csv'));

referenceTest('labOnGrid(R) gives the Lab stated for every measured film', () => {
  const { all, wavelengths } = read();
  const [header, ...rows] = referenceRows('pigment_films_shared_lab.csv');
  const column = (name: string): number => header!.indexOf(name);
  const stated = new Map(rows.map((row) => [`${row[0]} ${row[1]}`, row]));
  expect(stated.size).toBe(82);
  for (const { name, views } of all) {
    for (const { label, seen } of views) {
      const row = stated.get(`${name} ${label}`)!;
      const lab = labOnGrid(seen, wavelengths);
      for (const axis of ['L', 'a', 'b'] as const) {
        expectClose(lab[axis], Number(row[column(axis)]), 0.00005 + 1e-9, `${name} ${label} ${axis}`);
      }
    }
  }
});

referenceTest('fitMaterials(calibration films) predicts validation films nearer than two constants alone do', () => {
  const { calibration, validation, wavelengths, densities } = read();
  const score = (options: object): { median: number; p95: number } => {
    const misses = missesOf(fitMaterials(calibration, { wavelengths, ...options }), validation);
    const off = misses.map((miss) => miss.deltaE00);
    return { median: quantile(off, 0.5), p95: quantile(off, 0.95) };
  };
  const ours = score({ densities });
  const plain = score(PLAIN_TWO_CONSTANT);
  expect(ours.median).toBeLessThan(2.2);
  expect(ours.p95).toBeLessThan(6);
  expect(ours.median).toBeLessThan(plain.median);
  expect(ours.p95).toBeLessThan(plain.p95 - 2);
});

referenceTest('fitMaterials(films) names the films whose drawdowns differ', () => {
  const { all, wavelengths } = read();
  const { faults, restsOn } = fitMaterials(all, { wavelengths });
  expect(restsOn).toMatchObject({ films: 41, views: 82, converged: true });
  // Of those that the notes on the data name, the shared ones.
  expect(faults.map(({ film }) => film)).toEqual(['04B', '10B']);
});
