import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { BelievedCup } from '../../src/learning/asked-views.ts';
import { Belief } from '../../src/learning/belief.ts';
import { beliefParts } from '../../src/learning/belief-parts.ts';
import { compose } from '../../src/learning/composition.ts';
import { compositionPoint } from '../../src/learning/composition-point.ts';
import { CompositionLooker } from '../../src/learning/composition-views.ts';
import { fieldWeights } from '../../src/learning/field-weights.ts';
import { JointKriging } from '../../src/learning/joint-kriging.ts';
import { learn } from '../../src/learning/learn.ts';
import type { LearningData, LookedLayer } from '../../src/learning/learning-data.ts';
import { sharedVariance } from '../../src/learning/look-covariance.ts';
import { LookField } from '../../src/learning/look-field.ts';
import { Posterior } from '../../src/learning/posterior.ts';
import type { SharedVariance } from '../../src/learning/shared-memo.ts';
import type { TwoViews } from '../../src/optics/cup-body.ts';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
import { localMetric } from '../../src/optics/local-metric.ts';
import { expectClose } from '../optics/close.ts';
import { simulatedBook } from './simulated-book.ts';

const MATERIALS = 7;
const BOOK = simulatedBook({ seed: 11, materials: MATERIALS, recipes: 7, rounds: 2 });
const SHELF = learn(BOOK.data);
const BELIEF = new Belief(SHELF);
const NAMES = Array.from({ length: MATERIALS }, (_, i) => `m0${i}`);

const layer = (contents: Readonly<Record<string, number>>, thicknessMm = 6): LookedLayer => ({
  plastics: [['plastic', 1]],
  contents: Object.entries(contents),
  thicknessMm,
});

/** Doses from a thousandth of the typical one to three of them, of one to four materials. */
const contents: fc.Arbitrary<Readonly<Record<string, number>>> = fc.dictionary(
  fc.constantFrom(...NAMES),
  fc.double({ min: -3, max: 0.5, noNaN: true }).map((power) => 0.0085 * 10 ** power),
  { minKeys: 1, maxKeys: 4 },
);

/** A test pour, two layers, and two cups side by side. */
const bodies = fc.constantFrom<(one: LookedLayer, other: LookedLayer) => BelievedCup>(
  (one) => ({ layers: [one] }),
  (one, other) => ({ layers: [one, other] }),
  (one, other) => ({ layers: [one, other], streaks: [2, 1] }),
);

/** What the model alone says, asked at the shelf's theta. */
function model(layers: readonly LookedLayer[]): TwoViews {
  const { problem, state } = new Posterior(SHELF);
  const composition = compose(problem.unknowns, layers);
  const { white, black } = new CompositionLooker(problem.unknowns).views(composition, state, {
    white: true,
    black: true,
  });
  return { overWhite: white!.lab, overBlack: black!.lab };
}

const trace = (C: Float64Array): number => [0, 1, 2, 3, 4, 5].reduce((sum, i) => sum + C[7 * i]!, 0);

describe('of', () => {
  test('far from all looks is the model, with the theory as wrong as it may be', () => {
    const far = { layers: [layer({ m00: 0.0085 }, 80)] };
    const believed = BELIEF.of(far);
    const plain = model(far.layers);
    expect(believed.looks).toBe(0);
    expectClose(deltaE00(believed.overWhite, plain.overWhite), 0, 1e-6);
    expectClose(deltaE00(believed.overBlack, plain.overBlack), 0, 1e-6);
    const { problem, state, covariance } = new Posterior(SHELF);
    const composition = compose(problem.unknowns, far.layers);
    const { white } = new CompositionLooker(problem.unknowns).views(composition, state, { white: true, black: false });
    // Lightness over white, by itself: the first axis of the metric.
    const { columns } = composition;
    let square = 0;
    for (const [i, one] of columns.entries())
      for (const [j, other] of columns.entries())
        square += white!.slopes[i]! * white!.slopes[j]! * covariance[one * state.theta.length + other]!;
    expectClose(believed.covariance[0]!, localMetric(plain.overWhite)[0]! ** 2 * square + 0.65 ** 2, 1e-9);
  });

  test('a seen cup is shown nearer to what was seen than the model has it, and better known than poured anew', () => {
    let [before, after] = [0, 0];
    for (const look of SHELF.data.looks) {
      const { layers, cup } = look;
      before += deltaE00(model(layers).overWhite, look.overWhite!);
      after += deltaE00(BELIEF.of({ layers, cup }).overWhite, look.overWhite!);
      const [seen, anew] = [BELIEF.of({ layers, cup }), BELIEF.of({ layers })];
      expect(trace(seen.covariance)).toBeLessThan(trace(anew.covariance));
      expect(seen.looks).toBeGreaterThan(0);
    }
    expect(after).toBeLessThan(0.75 * before);
  });

  test('a covariance is one, and mean is the mean of it', () => {
    fc.assert(
      fc.property(contents, contents, bodies, fc.boolean(), (doses, others, body, poured) => {
        const asked = { ...body(layer(doses), layer(others, 3)), ...(poured ? { cup: 'r0001/cup' } : {}) };
        const { overWhite, overBlack, covariance } = BELIEF.of(asked);
        expect(BELIEF.mean(asked)).toEqual({ overWhite, overBlack });
        for (let axis = 0; axis < 6; axis++) expect(covariance[7 * axis]!).toBeGreaterThan(0);
        for (let i = 0; i < 6; i++) {
          for (let j = 0; j < i; j++) {
            expectClose(covariance[6 * i + j]!, covariance[6 * j + i]!, 1e-12);
            expect(covariance[6 * i + j]! ** 2).toBeLessThanOrEqual(
              covariance[7 * i]! * covariance[7 * j]! * (1 + 1e-9),
            );
          }
        }
      }),
      { numRuns: 50 },
    );
  });

  test('the same look once more widens nothing that it bears on', () => {
    const again: LearningData = {
      ...SHELF.data,
      looks: [...SHELF.data.looks, { ...SHELF.data.looks[3]!, key: 'r0001/cup/9' }],
    };
    const two = new Belief(learn(again));
    for (const { layers, cup } of SHELF.data.looks) {
      // The colours move, and what a unit of theta does to them.
      for (const asked of [{ layers }, { layers, cup }])
        expect(trace(two.of(asked).covariance)).toBeLessThan(1.02 * trace(BELIEF.of(asked).covariance));
    }
    const own = { layers: SHELF.data.looks[3]!.layers, cup: SHELF.data.looks[3]!.cup };
    expect(trace(two.of(own).covariance)).toBeLessThan(0.9 * trace(BELIEF.of(own).covariance));
  });

  test('a material that is not on the shelf is named', () => {
    expect(() => BELIEF.of({ layers: [layer({ m99: 0.001 })] })).toThrow(/m99/);
  });
});

test('isTried(…) of what somebody has looked at in any cup, or has measured films of, and of nothing else', () => {
  const { materials, looks } = SHELF.data;
  for (const material of ['plastic', ...NAMES]) {
    const has = ({ layers }: (typeof looks)[number]): boolean =>
      layers.some(({ plastics, contents }) =>
        [...plastics, ...contents].some(([name, dose]) => name === material && dose > 0),
      );
    expect(BELIEF.isTried(material), material).toBe(looks.some(has));
  }
  expect(BELIEF.isTried('plastic')).toBe(true);
  expect(BELIEF.isTried('m99')).toBe(false);
  const seldom = looks.filter(({ layers }) =>
    layers.every(({ contents }) => contents.every(([name]) => name !== 'm01')),
  );
  expect(seldom.length).toBeLessThan(looks.length);
  const unseen = learn({ materials, looks: seldom });
  expect(new Belief(unseen).isTried('m01')).toBe(false);
  const measured = materials.map((material) => {
    if (material.id !== 'm01') return material;
    const constants = unseen.constants.m01!;
    return {
      ...material,
      prior: { kind: 'known' as const, constants, doubt: { absorption: [0.1, 0.1, 0.1], scattering: [0.1, 0.1, 0.1] } },
      labels: [],
    };
  });
  expect(new Belief(learn({ materials: measured, looks: seldom })).isTried('m01')).toBe(true);
});

describe('near', () => {
  const behind = layer({ m03: 0.004 }, 4);

  test('adds to the model what `mean` does, but for looks that hardly bear on it', () => {
    fc.assert(
      fc.property(contents, contents, fc.boolean(), fc.boolean(), (doses, others, layered, poured) => {
        const layers = (near: LookedLayer): readonly LookedLayer[] => (layered ? [near, behind] : [near]);
        const cup = poured ? { cup: 'r0001/cup' } : {};
        const near = BELIEF.near({ layers: layers(layer(doses)), ...cup }, NAMES);
        const asked = layers(layer(others));
        const plain = model(asked);
        const offset = near.at(
          NAMES.map((name) => others[name] ?? 0),
          plain,
        );
        const mean = BELIEF.mean({ layers: asked, ...cup });
        for (const view of ['overWhite', 'overBlack'] as const)
          for (const axis of ['L', 'a', 'b'] as const)
            expectClose(plain[view][axis] + offset[view][axis], mean[view][axis], 0.05, `${view} ${axis}`);
      }),
      { numRuns: 40 },
    );
  });

  test('what is not named stays as it is', () => {
    const kept = { m05: 0.002, m02: 0.003 };
    const near = BELIEF.near({ layers: [layer({ ...kept, m01: 0.001 })] }, ['m01']);
    const asked = [layer({ ...kept, m01: 0.005 })];
    const plain = model(asked);
    const { overWhite } = near.at([0.005], plain);
    expectClose(plain.overWhite.L + overWhite.L, BELIEF.mean({ layers: asked }).overWhite.L, 0.05);
    expect(() => BELIEF.near({ layers: asked }, ['m99'])).toThrow(/m99/);
  });
});

test('fieldWeights solve what JointKriging does', () => {
  const { looks, state } = beliefParts(SHELF);
  const shared: SharedVariance = (one, other) => sharedVariance(one.errors, other.errors);
  const alpha = fieldWeights(new LookField(looks, shared));
  const asked = {
    errors: { point: compositionPoint(state.unknowns, [layer({ m01: 0.004, m04: 0.002 })]), means: 'instrument' },
  } as const;
  const { offset } = new JointKriging(looks, [asked], shared);
  for (let axis = 0; axis < 6; axis++) {
    const sum = looks.reduce((total, look, i) => total + shared(asked, look) * alpha[6 * i + axis]!, 0);
    expectClose(sum, offset[axis]!, 1e-3);
  }
});

test('LookField finds what sharedVariance says, and the nearest first', () => {
  const { looks, state } = beliefParts(SHELF);
  const field = new LookField(looks);
  fc.assert(
    fc.property(contents, contents, fc.boolean(), (near, behind, poured) => {
      const point = compositionPoint(state.unknowns, [layer(near), layer(behind, 3)]);
      const asked = { errors: { point, means: 'screen', ...(poured ? { cup: 'r0001/cup' } : {}) } } as const;
      const shares = Array.from(field.sharesWith(asked));
      for (const [i, look] of looks.entries()) expectClose(shares[i]!, sharedVariance(asked.errors, look.errors), 2e-6);
      const nearest = field.nearest([asked]).map((look) => sharedVariance(asked.errors, look.errors));
      for (let i = 1; i < nearest.length; i++) expect(nearest[i]!).toBeLessThan(nearest[i - 1]! + 0.05 * 0.8 ** 2);
    }),
  );
});
