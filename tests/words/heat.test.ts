import { describe, expect, test } from 'vitest';
import { heatOf } from '../../src/book/recipes/heat-of.ts';
import type { HeatLimit } from '../../src/cup/heat-limit.ts';
import { defined } from '../../src/values/defined.ts';
import { heatWords } from '../../src/words/heat.ts';

type Ranges = Readonly<Record<string, { from: number; to: number }>>;

function wordsFor(plastics: readonly string[], ranges: Ranges, limit?: HeatLimit): string {
  const cups = plastics.map((material) => ({
    plastics: [{ material, fraction: 1 }],
    limitUnknown: [],
    ...(limit && { limit }),
  }));
  const heat = heatOf(cups, (plastic) => defined({ working: ranges[plastic] }));
  return heatWords(heat, { temperature: '°C' }, (id) => id).join(' ');
}

describe('heatWords(heat)', () => {
  const supple = { from: 160, to: 175 };

  test('says where the limit is the top of a plastic’s pouring range', () => {
    expect(wordsFor(['Supple'], { Supple: supple }, { celsius: 175, material: 'Supple', ofRange: true })).toBe(
      'Never above 175 °C (top of the pouring range of Supple). Pour at 160 to 175 °C.',
    );
  });

  test('rounds what may not be exceeded down', () => {
    expect(wordsFor(['Supple'], { Supple: { from: 160, to: 175.9 } }, { celsius: 185.9, material: 'Supple' })).toBe(
      'Never above 185 °C (Supple sets the limit). Pour at 160 to 175 °C.',
    );
  });

  test('says so where something scorches before the plastic pours', () => {
    expect(wordsFor(['Supple'], { Supple: supple }, { celsius: 150, material: 'Prism' })).toBe(
      'Never above 150 °C (Prism sets the limit). The plastic needs at least 160 °C to pour: ask the suppliers.',
    );
  });

  test('says the range that all plastics share', () => {
    expect(wordsFor(['Supple', 'Steady'], { Supple: supple, Steady: { from: 165, to: 190 } })).toBe(
      'Pour at 165 to 175 °C.',
    );
  });

  test('names the plastic that has none, and keeps what the other’s supplier said', () => {
    expect(wordsFor(['Supple', 'Steady'], { Supple: supple })).toBe(
      'Supple pours at 160 to 175 °C. No pouring range on file for Steady: read the data sheet.',
    );
  });

  test('says so where the ranges do not meet', () => {
    expect(wordsFor(['Supple', 'Steady'], { Supple: supple, Steady: { from: 180, to: 190 } })).toBe(
      'Supple pours at 160 to 175 °C and Steady pours at 180 to 190 °C. These ranges don’t overlap: ask the suppliers.',
    );
  });

  test('says that there is no temperature only where there is none', () => {
    expect(wordsFor(['Supple'], {})).toBe('No supplier temperatures on file: read the data sheets.');
    expect(wordsFor(['Supple'], {}, { celsius: 182, material: 'Copper' })).toBe(
      'Never above 182 °C (Copper sets the limit). No pouring range on file for Supple: read the data sheet.',
    );
  });

  test('never pours above the limit', () => {
    expect(wordsFor(['Supple'], { Supple: supple }, { celsius: 170, material: 'Prism' })).toBe(
      'Never above 170 °C (Prism sets the limit). Pour at 160 to 170 °C.',
    );
  });
});

test('heatWords(heat) names what bears fewest heats, by the word of its maker alone', () => {
  const bears = {
    tin: { from: 2, to: 2 },
    gold: { from: 2, to: 2 },
    rust: { from: 4, to: 4 },
    foil: { from: 1, to: 2, usual: true as const },
  };
  const told = (...contents: readonly (keyof typeof bears)[]): string =>
    heatWords(
      heatOf(
        [
          {
            limitUnknown: [],
            plastics: [{ material: 'supple' }],
            contents: contents.map((material) => ({ material })),
          },
        ],
        (id) => (id === 'supple' ? { working: { from: 160, to: 175 } } : { bears: bears[id as keyof typeof bears] }),
      ),
      { temperature: '°C' },
      (id) => id,
    ).join(' ');
  expect(told('foil')).toBe('Pour at 160 to 175 °C.');
  expect(told('rust', 'foil')).toBe('Pour at 160 to 175 °C. rust bears four heats, counting the melt.');
  expect(told('tin', 'rust', 'gold')).toBe('Pour at 160 to 175 °C. tin and gold bear two heats, counting the melt.');
});
