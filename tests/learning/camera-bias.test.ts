import { describe, expect, test } from 'vitest';
import { Belief } from '../../src/learning/belief.ts';
import { learn } from '../../src/learning/learn.ts';
import type { Lab } from '../../src/optics/cielab.ts';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
import { localMetric } from '../../src/optics/local-metric.ts';
import { expectClose } from '../optics/close.ts';
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
  const seen = { overWhite: { L: 60, a: 5, b: 20 }, axisSd: 1.15 };

  test('that shows all too light is found out, and a colour that it shows is known better', () => {
    const { overWhite, axisSd } = belief.withoutBias(seen, 'phone');
    expect(overWhite.L).toBeLessThan(59.5);
    expect(axisSd).toBeLessThan(1.15);
    expect(belief.withoutBias(seen, 'another')).toEqual(seen);
  });

  test('as it shows a cup is the cup and its bias', () => {
    const { layers } = looks[4]!;
    const [true_, shown] = [belief.of({ layers }), belief.of({ layers, camera: 'phone' })];
    const corrected = belief.withoutBias({ ...shown, axisSd: 1 }, 'phone');
    expectClose(deltaE00(corrected.overWhite, true_.overWhite), 0, 0.2);
    // What was photographed is what is known; how light it truly is hangs on the bias.
    expect(shown.covariance[0]!).toBeLessThan(true_.covariance[0]!);
  });
});
