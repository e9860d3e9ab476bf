import { expect, test } from 'vitest';
import { onScale, tooLittleToWeigh } from '../../src/matching/measure/too-little.ts';

const amount = (title: string, grams: number): { title: string; grams: number; text: string; isLiquid: boolean } => ({
  title,
  grams,
  text: `${grams.toFixed(2)} g`,
  isLiquid: true,
});

test('tooLittleToWeigh(amounts, step) warns where half a step is more than a fifth of an amount', () => {
  expect(tooLittleToWeigh([amount('Soot', 0.01), amount('Straw', 0.25)], 0.01)).toEqual({
    amounts: [amount('Soot', 0.01)],
    error: 0.5,
  });
  expect(tooLittleToWeigh([amount('Soot', 0.01), amount('Moss', 0.02)], 0.01)).toEqual({
    amounts: [amount('Soot', 0.01), amount('Moss', 0.02)],
    error: 0.5,
  });
  expect(tooLittleToWeigh([amount('Moss', 0.03)], 0.01)).toBeUndefined();
});

test('tooLittleToWeigh(amounts) without a scale has nothing to say', () => {
  expect(tooLittleToWeigh([amount('Soot', 0.01)])).toBeUndefined();
});

test('onScale(material, weight) knows a bottle of which there is a cut', () => {
  const soot = { title: 'Soot', gramsPerDrop: 0.05 };
  const cut = {
    id: 'soot-cut',
    gramsPerMl: 1,
    title: 'Soot cut',
    of: 'soot',
    with: 'softener',
    oneIn: 10,
    gramsPerDrop: 0.05,
    bottlePerGram: 0.1,
  };
  expect(onScale(soot, { grams: 0.01, text: '0.01 g' }).hasCut).toBeUndefined();
  expect(onScale({ ...soot, cuts: [cut] }, { grams: 0.01, text: '0.01 g' }).hasCut).toBe(true);
  expect(onScale(soot, { grams: 0.01, text: '0.10 g', cut }).hasCut).toBe(true);
});
