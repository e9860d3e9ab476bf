import { describe, expect, test } from 'vitest';
import { Belief } from '../../src/learning/belief.ts';
import { learn } from '../../src/learning/learn.ts';
import type { Lab } from '../../src/optics/cielab.ts';
import { localMetric } from '../../src/optics/local-metric.ts';
import { simulatedBook } from './simulated-book.ts';

describe('a camera', () => {
  const { data } = simulatedBook({ seed: 5, materials: 5, recipes: 8, rounds: 2, camera: 'phone', axisSd: 1.15 });
  // Two ΔE too light, in every photo.
  const brighter = (lab: Lab): Lab => ({ ...lab, L: lab.L + 2 / localMetric(lab)[0]! });
  const looks = data.looks.map((look) => ({
    ...look,
    overWhite: brighter(look.overWhite!),
    overBlack: brighter(look.overBlack!),
  }));
  const belief = new Belief(learn({ ...data, looks }));
  const { layers } = looks[4]!;
  const [true_, shown] = [belief.of({ layers }), belief.of({ layers, camera: 'phone' })];

  test('that shows all too light is found out', () => {
    expect(shown.overWhite.L - true_.overWhite.L).toBeGreaterThan(0.5);
    expect(shown.overBlack.L - true_.overBlack.L).toBeGreaterThan(0.3);
  });

  test('is known better in what it has shown than what it was shown, which hangs on its bias', () => {
    expect(shown.covariance[0]!).toBeLessThan(true_.covariance[0]!);
  });

  test('of which there is no photo shows things as they are', () => {
    expect(belief.of({ layers, camera: 'another' })).toEqual(true_);
  });
});
