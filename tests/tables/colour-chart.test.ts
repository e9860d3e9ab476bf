import { expect, test } from 'vitest';
import { CHART_COLUMNS, CHART_ROWS, COLOUR_CHART, FIRST_GREY } from '../../src/tables/colour-chart.ts';
import { referenceRows, referenceTest } from '../optics/reference.ts';

test('COLOUR_CHART has its greys last, from white to black, hardly tinted', () => {
  expect(COLOUR_CHART).toHaveLength(CHART_COLUMNS * CHART_ROWS);
  const greys = COLOUR_CHART.slice(FIRST_GREY);
  expect(greys).toHaveLength(CHART_COLUMNS);
  for (const [i, [L, a, b]] of greys.entries()) {
    expect(Math.hypot(a, b)).toBeLessThan(3.2);
    if (i > 0) expect(L).toBeLessThan(greys[i - 1]![0]);
  }
});

referenceTest('COLOUR_CHART is what was published of charts made after November 2014', () => {
  const [head, ...rows] = referenceRows('chart24.csv');
  const columns = ['L', 'a', 'b'].map((axis) => head!.indexOf(`${axis}_D50_after2014`));
  expect(rows.map((row) => columns.map((column) => Number(row[column])))).toEqual(COLOUR_CHART.map((Lab) => [...Lab]));
});
