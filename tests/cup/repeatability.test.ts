import { describe, expect, test } from 'vitest';
import { seededRandom, standardNormal } from '../../src/cup/random.ts';
import { repeatability } from '../../src/cup/repeatability.ts';

describe('repeatability', () => {
  // One dose, and a colour that moves in proportion: |N(0, 10 %)| has its 95th percentile at 1.96 standard deviations.
  const error = (grams: Readonly<Record<string, number>>): number => Math.abs(grams.peat! - 1) * 10;
  test('repeatability(relative spread) is near the 95th percentile of the normal law', () => {
    const found = repeatability({ peat: 1 }, () => ({ kind: 'relative', deviation: 0.1 }), error);
    expect(found).toBeGreaterThan(1.7);
    expect(found).toBeLessThan(2.25);
  });
  test('repeatability(half a step of the scale) stays within it', () => {
    const found = repeatability({ peat: 1 }, () => ({ kind: 'step', grams: 0.01 }), error);
    expect(found).toBeLessThanOrEqual(0.05 + 1e-9);
    expect(found).toBeGreaterThan(0.04);
  });
  test('repeatability is the same on every run and whatever the order of the materials', () => {
    const spread = (): { kind: 'relative'; deviation: number } => ({ kind: 'relative', deviation: 0.1 });
    const two = (grams: Readonly<Record<string, number>>): number =>
      Math.abs(grams.peat! - 1) * 10 + Math.abs(grams.straw! - 2);
    expect(repeatability({ peat: 1, straw: 2 }, spread, two)).toBe(repeatability({ straw: 2, peat: 1 }, spread, two));
  });
});

describe('seededRandom', () => {
  test('seededRandom and standardNormal have the moments of their laws', () => {
    const random = seededRandom(7);
    const uniform = Array.from({ length: 20_000 }, random);
    expect(uniform.every((value) => value >= 0 && value < 1)).toBe(true);
    expect(uniform.reduce((sum, value) => sum + value, 0) / uniform.length).toBeCloseTo(0.5, 1);
    const normal = Array.from({ length: 20_000 }, () => standardNormal(random));
    expect(normal.reduce((sum, value) => sum + value, 0) / normal.length).toBeCloseTo(0, 1);
    expect(normal.reduce((sum, value) => sum + value * value, 0) / normal.length).toBeCloseTo(1, 1);
  });
});
