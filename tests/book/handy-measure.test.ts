import { expect, test } from 'vitest';
import { handyMeasure } from '../../src/words/handy-measure.ts';

const bench = {
  drops: true,
  spoons: [
    { ml: 4.93, name: '1 tsp' },
    { ml: 4.93 / 4, name: '1/4 tsp' },
    { ml: 4.93 / 8, name: '1/8 tsp' },
  ],
  scaleGrams: 0.01,
  dropSpread: 0.1,
  spoonSpread: 0.1,
};

test('handyMeasure(grams) is whole drops or few spoonfuls, where they come near', () => {
  const liquid = { gramsPerDrop: 0.05, gramsPerMl: 1 };
  const powder = { gramsPerMl: 0.4 };
  expect(handyMeasure(0.187, liquid, bench)).toBe('4 drops');
  expect(handyMeasure(0.07, liquid, bench)).toBeUndefined();
  expect(handyMeasure(0.74, powder, bench)).toBe('1/4 tsp + 1/8 tsp');
  expect(handyMeasure(30, powder, bench)).toBeUndefined();
  expect(handyMeasure(0.187, liquid, { ...bench, drops: false, spoons: [] })).toBeUndefined();
});
