import { describe, expect, test } from 'vitest';
import { chipCandidates } from '../../src/matching/chips/chip-candidates.ts';
import { BENCH, CLEAR, sampleMaterial } from './sample-shelf.ts';

const brown = sampleMaterial('brown', 'pigment', '#6a4a2a', { dose: 0.008 });
const white = sampleMaterial('chalk', 'white', '#f0f0ee', { dose: 0.01 });
const pearl = sampleMaterial('pearl', 'pearl', '#e8e4da', { dose: 0.008 });
const asked = { bench: BENCH, plasticMl: 100, thicknessMm: 6, white: 'chalk' };

const said = (...[question]: Parameters<typeof chipCandidates>): readonly string[] =>
  chipCandidates(question).map(({ doses }) =>
    doses.map(({ material, measure }) => `${measure.text} ${material}`).join(' + '),
  );

describe('chipCandidates()', () => {
  test('are whole drops from one to the usual dose, alone, with a drop of white and with more', () => {
    // The usual 0.8 g in 100 ml are 16 drops of 0.05 g, and 1 g of the white are 20.
    const doses = ['1 drop', '2 drops', '4 drops', '8 drops', '16 drops'];
    expect(said({ ...asked, shelf: [CLEAR, brown, white] })).toEqual([
      ...doses.flatMap((dose) => ['', ' + 1 drop chalk', ' + 3 drops chalk'].map((withIt) => `${dose} brown${withIt}`)),
      ...['1 drop', '2 drops', '5 drops', '10 drops', '20 drops'].map((dose) => `${dose} chalk`),
    ]);
  });

  test('are never less than the bench can measure, and each once', () => {
    const strong = sampleMaterial('ink', 'pigment', '#101214', { dose: 0.001 });
    expect(said({ ...asked, white: 'none', shelf: [strong] })).toEqual(['1 drop ink', '2 drops ink']);
    const grams = chipCandidates({ ...asked, shelf: [pearl] }).map(({ doses }) => doses[0]!.measure);
    expect(grams.every(({ tool }) => tool === 'spoons')).toBe(true);
    expect(new Set(grams.map((measure) => measure.grams)).size).toBe(grams.length);
    expect(Math.min(...grams.map((measure) => measure.grams))).toBeCloseTo(0.154 * 0.4, 6);
  });

  test('leave out what has run out, what does more than colour, and more than a bottle allows', () => {
    const out = { ...brown, stockGrams: 0 };
    const glowing = { ...brown, id: 'glow', effect: 'glow' as const };
    const weak = { ...brown, id: 'weak', most: 0.002 };
    expect(said({ ...asked, white: 'none', shelf: [out, glowing, weak] })).toEqual([
      '1 drop weak',
      '2 drops weak',
      '4 drops weak',
    ]);
  });
});
