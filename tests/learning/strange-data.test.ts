import { expect, test } from 'vitest';
import { lookTests } from '../../src/learning/group-tests.ts';
import { learn } from '../../src/learning/learn.ts';
import type { LearningData, LookedLayer, TaughtLook } from '../../src/learning/learning-data.ts';
import type { Lab } from '../../src/optics/cielab.ts';
import { SORTS } from './shelf-arbitrary.ts';
import { numbersFrom } from './simulated-book.ts';

/** A book of amounts and colours that nobody means, and that somebody will type. */
function strangeBook(seed: number): LearningData {
  const { uniform } = numbersFrom(seed);
  const pick = <T>(of: readonly T[]): T => of[Math.floor(uniform() * of.length)]!;
  const amount = (): number => pick([0, 1e-9, 1e-4, 0.01, 0.3, 1, 50, 1e4, 1e9]);
  const thicknessMm = (): number => pick([0, 1e-6, 0.5, 6, 1e5]);
  const lab = (): Lab =>
    pick([
      { L: 0, a: 0, b: 0 },
      { L: 100, a: 0, b: 0 },
      { L: 50, a: 127, b: -128 },
      { L: 60, a: 20, b: 9 },
    ]);
  const layer = (): LookedLayer => ({
    plastics: pick([[], [['clear', 1] as const], [['clear', 0.5] as const, ['milky', 0.5] as const]]),
    contents: ['ink', 'clay', 'silver', 'chalk', 'stray', 'film', 'glint'].flatMap((id) =>
      uniform() < 0.5 ? [[id, amount()] as const] : [],
    ),
    thicknessMm: thicknessMm(),
  });
  const materials = SORTS.map((material) => ({
    ...material,
    labels:
      'typical' in material.prior
        ? [{ dose: amount(), thicknessMm: thicknessMm(), overWhite: lab(), axisSd: pick([0, 1e-3, 2, 100]) }]
        : [],
  }));
  const looks = Array.from({ length: 6 }, (_, i): TaughtLook => {
    const layers = Array.from({ length: 1 + Math.floor(2 * uniform()) }, layer);
    return {
      key: `look ${i}`,
      cup: `cup ${i % 3}`,
      round: i,
      layers,
      ...(uniform() < 0.3 ? { streaks: layers.map(() => pick([0.1, 1, 1e6])) } : {}),
      overWhite: lab(),
      ...(uniform() < 0.5 ? { overBlack: lab() } : {}),
      axisSd: pick([0, 0.4, 3, 1e3]),
      means: pick(['instrument', 'screen']),
      ...(uniform() < 0.5 ? { camera: 'phone' } : {}),
    };
  });
  return { materials, looks };
}

test('a book of nothing is learned', () => {
  const learned = learn({ materials: [], looks: [] });
  expect(learned.theta.every((value) => value === 0)).toBe(true);
  expect(lookTests(learned)).toEqual([]);
});

test.each([10, 18, 21, 47, 59])('whatever is typed, what is learned are numbers: book %d', (seed) => {
  const learned = learn(strangeBook(seed));
  const text = JSON.stringify([learned, lookTests(learned)]);
  expect(text).not.toMatch(/null/);
  for (const weight of learned.weights.looks) expect(weight > 0 && weight <= 1).toBe(true);
});
