import { describe, expect, test } from 'vitest';
import type { BatchCup, Measured } from '../../src/cup/batch.ts';
import { exactWords, measureNote, measuringNotes, weighsText } from '../../src/words/measured.ts';

const pearl: Measured = {
  material: 'pearl',
  grams: 0.8,
  measuredGrams: 0.68,
  text: '1/4 tsp',
  tool: 'spoons',
  byWeight: '0.80 g',
};
const weighed: Measured = {
  material: 'copper',
  grams: 0.144,
  measuredGrams: 0.14,
  text: '0.14 g',
  tool: 'scale',
  byWeight: '0.14 g',
  tooCoarse: { text: '1/8 tsp', grams: 0.3389 },
};
const far: Measured = { material: 'copper', grams: 0.144, measuredGrams: 0.3389, text: '1/8 tsp', tool: 'spoons' };
const { byWeight: _, ...unweighed } = pearl;
const small: Measured = { ...unweighed, grams: 0.7089, offScale: 'too-little' };
const cup = (amounts: readonly Measured[], measuringDeltaE: number, together = false): BatchCup => ({
  name: 'body',
  split: 1,
  plastics: [],
  amounts,
  volumeMl: 100,
  measuringDeltaE,
  together,
});
const apart = { together: false, amounts: [] };
const title = (material: string): string => ({ pearl: 'Ivory pearl', copper: 'Copper hex' })[material]!;

describe('measured amounts in words', () => {
  test('a spoon says what it weighs, and what the exact amount is', () => {
    expect(weighsText(pearl)).toBe('= 0.68 g');
    expect(exactWords(pearl)).toEqual({ amount: '0.80 g' });
    expect(measureNote(pearl, apart)).toBeUndefined();
  });
  test('what the scale is too coarse for says what it truly is, and that it is not to be weighed', () => {
    expect(exactWords({ ...pearl, grams: 1.12, byWeight: '0.04 oz (1.13 g)' })).toEqual({ amount: '0.04 oz (1.13 g)' });
    expect(exactWords(small)).toEqual({ amount: '0.71 g', note: 'too little for this scale' });
    expect(exactWords({ ...small, offScale: 'between-steps' }).note).toBe('finer than the scale can show');
  });
  test('what the scale leads names the spoon that it stands in for', () => {
    expect(weighsText(weighed)).toBeUndefined();
    expect(measureNote(weighed, apart)).toBe('by scale: 1/8 tsp would be 2.4 times too much');
  });
  test('what is weighed for the colour’s sake says that it is by scale', () => {
    const { tooCoarse: _, ...forColour } = weighed;
    expect(measureNote(forColour, apart)).toBe('by scale');
  });
  test('drops of which one moves the colour too far are better weighed, and all of it where they belong together', () => {
    const black = { ...pearl, text: '2 drops', tool: 'drops' as const, dropDeltaE: 3.48, betterWeighed: true };
    expect(measureNote(black, apart)).toBe('better weighed: one drop more is easy to see (ΔE 3.5)');
    const tied = { together: true, amounts: [black, pearl] };
    expect(measureNote(black, tied)).toBe('better to weigh it all: one drop more is easy to see (ΔE 3.5)');
    expect(measureNote(black, { ...tied, amounts: [black, small] })).toBeUndefined();
    expect(measureNote({ ...black, betterWeighed: false }, apart)).toBeUndefined();
  });
  test('what no tool comes near says how far off it is, and what mends it', () => {
    expect(exactWords(far)).toEqual({ amount: '0.14 g' });
    expect(measureNote({ ...far, nearInFullCup: true }, apart)).toBe('about 2.4 times too much: make a larger batch');
    expect(measureNote({ ...far, measuredGrams: 0.1, nearInFullCup: true }, apart)).toBe(
      'about 31 % short: make a larger batch',
    );
    expect(measureNote(far, apart)).toBe(
      'about 2.4 times too much: no cup is large enough for that, but a scale would do',
    );
    expect(measureNote({ ...far, tool: 'scale' }, apart)).toMatch(/but a finer scale would do$/);
  });
  test('a cup names what is far off although the colour hardly shows it', () => {
    expect(measuringNotes(cup([far], 0.02), title)).toEqual([
      'What rounding does to the colour: you won’t see it (ΔE less than 0.1). The cup gets 2.4 times the Copper hex of the recipe.',
    ]);
    expect(measuringNotes(cup([far, { ...pearl, measuredGrams: 0.4 }], 2), title)).toEqual([
      'What rounding does to the colour: just visible (ΔE 2.0). The cup gets 2.4 times the Copper hex and 0.5 times the Ivory pearl of the recipe.',
    ]);
    expect(measuringNotes(cup([pearl], 0.02), title)).toEqual([]);
  });
  test('a cup says what is gained by weighing some of it', () => {
    expect(measuringNotes({ ...cup([pearl], 0.4), byHandDeltaE: 2.31 }, title)).toEqual([
      'What rounding does to the colour: you won’t see it (ΔE 0.4).',
      'Without a scale: just visible (ΔE 2.3).',
    ]);
  });
  test('a cup says where one measure makes up for another', () => {
    expect(measuringNotes(cup([pearl], 0.6, true), title)).toEqual([
      'What rounding does to the colour: you won’t see it (ΔE 0.6).',
      'Rounded as a set: use all drops and spoons, or weigh everything.',
    ]);
    expect(measuringNotes(cup([pearl, small], 0.02, true), title)).toEqual([
      'Rounded as a set: use all drops and spoons.',
    ]);
    expect(measuringNotes(cup([pearl, weighed], 0.02, true), title)).toEqual([
      'Weigh what says “by scale”. Rounded as a set: use all drops and spoons, or weigh everything.',
    ]);
  });
});
