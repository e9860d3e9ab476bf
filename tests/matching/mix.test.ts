import fc from 'fast-check';
import { describe, test } from 'vitest';
import { Mix } from '../../src/matching/mix/mix.ts';
import type { MixGoal, MixProblem } from '../../src/matching/mix/mix-problem.ts';
import { refineDoses } from '../../src/matching/search/refine-doses.ts';
import { labOf } from '../../src/optics/cielab.ts';
import { bodyViews, cupBody } from '../../src/optics/cup-body.ts';
import type { OpticalModel } from '../../src/optics/optical-model.ts';
import { BAND_COUNT } from '../../src/optics/spectrum.ts';
import { stackReflectance } from '../../src/optics/stack.ts';
import { BESIDE_GLOSS } from '../../src/optics/surface.ts';
import { expectAllClose, expectClose } from '../optics/close.ts';
import { CLEAR, SHELF } from './sample-shelf.ts';

/** Of a book that has learned all of it. */
const OPTICS: OpticalModel = {
  backings: { white: Array.from({ length: BAND_COUNT }, (_, band) => 0.8 + band / 400), black: 0.05 },
  path: { d: 0.5, s0: 0.4 },
  crowding: 4,
};

const TARGET = { overWhite: { L: 55, a: 8, b: 30 }, overBlack: { L: 40, a: 5, b: 18 } };
const doses = fc
  .array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: SHELF.length, maxLength: SHELF.length })
  .map((parts) => Float64Array.from(parts, (part, j) => part ** 3 * SHELF[j]!.typical!));

function problemOf(goals: readonly MixGoal[], cups = 1): MixProblem {
  return {
    cups: Array.from({ length: cups }, () => CLEAR.constants!),
    goals,
    optics: OPTICS,
    candidates: Array.from({ length: cups }, (_, cup) =>
      SHELF.map(({ constants }) => ({ cup, constants: constants!, load: 1, most: 0.06 })),
    ).flat(),
  };
}

const shelf = new Map([CLEAR, ...SHELF].map((material) => [material.id, material]));
const bodyWith = (amounts: Float64Array): ReturnType<typeof cupBody> =>
  cupBody(
    {
      plastics: [{ material: 'clear', fraction: 1 }],
      contents: SHELF.map(({ id }, j) => ({ material: id, gramsPerMl: amounts[j]! })),
    },
    (name) => shelf.get(name)!,
    OPTICS,
  );

describe('one cup', () => {
  const mix = new Mix(problemOf([{ layers: [{ cup: 0, thickness: 6 }], ...TARGET }]));

  test('labs(doses) are the colours that the optics predicts', () => {
    fc.assert(
      fc.property(doses, (amounts) => {
        const views = bodyViews(bodyWith(amounts), 6, OPTICS);
        const [white, black] = mix.labs(amounts);
        expectAllClose([white!.L, white!.a, white!.b], [views.overWhite.L, views.overWhite.a, views.overWhite.b], 1e-9);
        expectAllClose([black!.L, black!.a, black!.b], [views.overBlack.L, views.overBlack.a, views.overBlack.b], 1e-9);
      }),
    );
  });

  test('slopes(doses) are those of the residuals', () => {
    fc.assert(
      fc.property(doses, fc.nat(SHELF.length - 1), (amounts, j) => {
        const { slopes } = mix.slopes(amounts);
        // CIELAB bends sharply where it changes from a root to a line: a step ten times as long is off by more than is allowed.
        const h = 1e-4 * (amounts[j]! + 1e-4);
        const up = mix.slopes(amounts.with(j, amounts[j]! + h)).residuals;
        const twice = mix.slopes(amounts.with(j, amounts[j]! + 2 * h)).residuals;
        const here = mix.slopes(amounts).residuals;
        for (let row = 0; row < mix.rows; row++) {
          const numeric = (4 * up[row]! - 3 * here[row]! - twice[row]!) / (2 * h);
          expectClose(
            slopes[row * mix.count + j]!,
            numeric,
            2e-3 * Math.abs(numeric) + 0.5,
            `row ${row}, ${SHELF[j]!.id}`,
          );
        }
      }),
    );
  });

  test('linearAbout(the cup itself) is what slopes says there', () => {
    const here = mix.linearAbout([CLEAR.constants!]);
    const plain = mix.slopes(new Float64Array(mix.count));
    expectAllClose(here.residuals, plain.residuals, 1e-9);
    expectAllClose(here.slopes, plain.slopes, 1e-9);
  });

  test('refineDoses(mix, set) finds the doses that a colour was made with', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 0.6, noNaN: true }),
        fc.double({ min: 0.05, max: 0.6, noNaN: true }),
        (one, other) => {
          const truth = new Float64Array(SHELF.length);
          truth[1] = one * SHELF[1]!.typical!;
          truth[10] = other * SHELF[10]!.typical!;
          const [overWhite, overBlack] = mix.labs(truth);
          const asked = new Mix(
            problemOf([{ layers: [{ cup: 0, thickness: 6 }], overWhite: overWhite!, overBlack: overBlack! }]),
          );
          const start = new Float64Array(SHELF.length);
          start[1] = 0.001;
          start[10] = 0.001;
          const found = refineDoses(asked, [1, 10], start).doses;
          expectClose(asked.worst(found), 0, 0.05);
          expectClose(found[1]! / truth[1], 1, 0.02);
        },
      ),
      { numRuns: 30 },
    );
  });
});

test('labs(doses) of two layers are those of the stack, over white and over black', () => {
  const sides = [
    {
      layers: [
        { cup: 0, thickness: 2 },
        { cup: 1, thickness: 4 },
      ],
      ...TARGET,
    },
    {
      layers: [
        { cup: 1, thickness: 4 },
        { cup: 0, thickness: 2 },
      ],
      ...TARGET,
    },
  ];
  const mix = new Mix(problemOf(sides, 2));
  fc.assert(
    fc.property(doses, doses, (near, far) => {
      const bodies = [bodyWith(near), bodyWith(far)];
      const stack = [
        { ...bodies[0]!, thickness: 2 },
        { ...bodies[1]!, thickness: 4 },
      ];
      const seen = [stack, stack.toReversed()].flatMap((layers) =>
        [OPTICS.backings.white, OPTICS.backings.black].map((backing) =>
          labOf(stackReflectance(layers, backing, BESIDE_GLOSS, OPTICS.path)),
        ),
      );
      const found = mix.labs(Float64Array.of(...near, ...far));
      for (const [view, lab] of seen.entries()) {
        expectAllClose([found[view]!.L, found[view]!.a, found[view]!.b], [lab.L, lab.a, lab.b], 1e-9, `view ${view}`);
      }
      // The slopes see the far layer through the near one.
      const both = Float64Array.of(...near, ...far);
      const { slopes, residuals } = mix.slopes(both);
      const j = SHELF.length + 1;
      const h = 1e-3 * (both[j]! + 1e-4);
      const up = mix.slopes(both.with(j, both[j]! + h)).residuals;
      const twice = mix.slopes(both.with(j, both[j]! + 2 * h)).residuals;
      for (let row = 0; row < mix.rows; row++) {
        const numeric = (4 * up[row]! - 3 * residuals[row]! - twice[row]!) / (2 * h);
        expectClose(slopes[row * mix.count + j]!, numeric, 2e-3 * Math.abs(numeric) + 0.5, `row ${row}`);
      }
    }),
    { numRuns: 30 },
  );
});
