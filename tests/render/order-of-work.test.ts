import { describe, expect, test } from 'vitest';
import type { Cup, Material } from '../../src/book/model.ts';
import { heatOf, heatWords, orderOfWork } from '../../src/render/order-of-work.ts';

type Ranges = Readonly<Record<string, { from: number; to: number }>>;

function wordsFor(plastics: readonly string[], ranges: Ranges, limit?: Cup['limit']): string {
  const cups = plastics.map((material) => ({
    plastics: [{ material, fraction: 1 }],
    limitUnknown: [],
    ...(limit && { limit }),
  }));
  const heat = heatOf(cups, (plastic) => ranges[plastic]);
  return heatWords(heat, { temperature: '°C' }, (id) => id).join(' ');
}

describe('heatWords(heat)', () => {
  const supple = { from: 160, to: 175 };

  test('says the range that all plastics share', () => {
    expect(wordsFor(['Supple', 'Steady'], { Supple: supple, Steady: { from: 165, to: 190 } })).toBe(
      'Pour at 165 to 175 °C.',
    );
  });

  test('names the plastic that has none, and keeps what the other’s supplier said', () => {
    expect(wordsFor(['Supple', 'Steady'], { Supple: supple })).toBe(
      'Supple pours at 160 to 175 °C. No supplier’s pouring range is on the shelf for Steady: read the data sheet.',
    );
  });

  test('says so where the ranges do not meet', () => {
    expect(wordsFor(['Supple', 'Steady'], { Supple: supple, Steady: { from: 180, to: 190 } })).toBe(
      'Supple pours at 160 to 175 °C and Steady pours at 180 to 190 °C. These ranges do not meet: ask the suppliers.',
    );
  });

  test('says that there is no temperature only where there is none', () => {
    expect(wordsFor(['Supple'], {})).toBe('No supplier’s temperature is on the shelf: read the data sheets.');
    expect(wordsFor(['Supple'], {}, { celsius: 182, material: 'Copper' })).toBe(
      'Never above 182 °C: Copper. No supplier’s pouring range is on the shelf for Supple: read the data sheet.',
    );
  });

  test('never pours above the limit', () => {
    expect(wordsFor(['Supple'], { Supple: supple }, { celsius: 170, material: 'Prism' })).toBe(
      'Never above 170 °C: Prism. Pour at 160 to 170 °C.',
    );
  });
});

test('orderOfWork(recipe) is said as one says it', () => {
  const kinds: Record<string, Material['kind']> = { peat: 'colorant', pearl: 'powder', hex: 'flake' };
  const contents = Object.keys(kinds).map((material) => ({ material, gramsPerMl: 0.01 }));
  const steps = orderOfWork(
    { pattern: 'solid', cups: [{ name: 'body', contents } as unknown as Cup] },
    (id) => kinds[id],
  );
  expect(steps).toContain('Stir in the colorant, then the powder until no streak is left.');
  expect(steps).toContain('Last the flake; stir again before each pour, it sinks.');
});
