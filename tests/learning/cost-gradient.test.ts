import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { TaughtLook } from '../../src/learning/learning-data.ts';
import { ShelfEquations } from '../../src/learning/normal-equations.ts';
import { shelfProblem } from '../../src/learning/shelf-problem.ts';
import { anyLayer, anyTheta, SORTS } from './shelf-arbitrary.ts';

const CAMERA = 'phone';
const GREY = { L: 40, a: 3, b: -8 };
const RED = { L: 30, a: 25, b: 12 };

const materials = SORTS.map((material) =>
  material.id === 'clay'
    ? {
        ...material,
        labels: [
          { dose: 0.006, thicknessMm: 6, overWhite: RED, overBlack: GREY, axisSd: 1 },
          { dose: 0.003, thicknessMm: 6, overWhite: RED, overBlack: GREY, axisSd: 2, camera: CAMERA },
        ],
      }
    : material,
);

/** Looks at two cups: over both cards, over one of them, with and without a camera, at layers and at streaks. */
const anyLooks = fc
  .array(fc.tuple(fc.array(anyLayer, { minLength: 1, maxLength: 3 }), fc.nat(3), fc.boolean()), {
    minLength: 1,
    maxLength: 5,
  })
  .map((looks) =>
    looks.map(
      ([layers, kind, streaked], i): TaughtLook => ({
        key: `look ${i}`,
        cup: `cup ${i % 2}`,
        round: i,
        layers,
        ...(streaked ? { streaks: layers.map((_, l) => 1 + l) } : {}),
        ...(kind === 1 ? {} : { overWhite: RED }),
        ...(kind === 2 ? {} : { overBlack: GREY }),
        axisSd: 0.5,
        means: kind === 3 ? 'screen' : 'instrument',
        ...(kind === 3 ? { camera: CAMERA } : {}),
      }),
    ),
  );

test('the gradient that goes back from the cost is that of the slopes of every look', () => {
  fc.assert(
    fc.property(
      anyLooks.chain((looks) => {
        const problem = shelfProblem({ materials, looks });
        return fc.record({
          problem: fc.constant(problem),
          theta: anyTheta(problem.unknowns.count),
          believed: fc.array(fc.constantFrom(1, 0.3, 0.01), { minLength: looks.length, maxLength: looks.length }),
        });
      }),
      ({ problem, theta, believed }) => {
        const equations = new ShelfEquations(problem, { looks: believed, labels: [0.5, 0.8] });
        const bySlopes = equations.at(theta, true);
        const back = equations.at(theta, false);
        expect(back.cost / bySlopes.cost).toBeCloseTo(1, 10);
        const largest = Math.max(1, ...bySlopes.gradient.map(Math.abs));
        for (const [i, value] of bySlopes.gradient.entries())
          expect((back.gradient[i]! - value) / largest).toBeCloseTo(0, 10);
      },
    ),
  );
});
