import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fitWeights, groupWeights } from '../../src/learning/believed-groups.ts';
import { fitTheta } from '../../src/learning/fit-theta.ts';
import { learn } from '../../src/learning/learn.ts';
import type { LearningData, LookedLayer, TaughtLook, TaughtMaterial } from '../../src/learning/learning-data.ts';
import { withModelMetrics } from '../../src/learning/model-metrics.ts';
import { ShelfEquations } from '../../src/learning/normal-equations.ts';
import { Posterior } from '../../src/learning/posterior.ts';
import { shelfProblem } from '../../src/learning/shelf-problem.ts';
import { type ShelfState, shelfState } from '../../src/learning/shelf-state.ts';
import { shelfUnknowns } from '../../src/learning/shelf-unknowns.ts';
import { startFromLabels } from '../../src/learning/start-from-labels.ts';
import { type Lab, labOf } from '../../src/optics/cielab.ts';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
import { minimize } from '../../src/optics/fit/minimize.ts';
import { solveLinear } from '../../src/optics/linear-system.ts';
import { appliedMetric, localMetric } from '../../src/optics/local-metric.ts';
import { plainReflectance } from './plain-reflectance.ts';
import { numbersFrom, simulatedBook } from './simulated-book.ts';

const SMALL = simulatedBook({ seed: 4, materials: 2, recipes: 3, rounds: 2 }).data;

/**
 * Half of what theta costs, from formulas written down plainly: no slopes, no blocks, inverses instead of factors.
 *
 * @param metricsAt theta at whose colours differences are measured
 */
function plainCost({ materials, looks }: LearningData, metricsAt: ArrayLike<number>): (theta: Float64Array) => number {
  const unknowns = shelfUnknowns({ materials, looks });
  const cups = [...new Set(looks.map((look) => look.cup))].map((cup) => {
    const views = looks
      .filter((look) => look.cup === cup)
      .flatMap((look) => [
        { look, over: 'white', seen: look.overWhite! } as const,
        { look, over: 'black', seen: look.overBlack! } as const,
      ]);
    return {
      views,
      inverse: plainInverse(views.map((one) => views.map((other) => plainCovariance(materials, one, other)))),
    };
  });
  const measuredIn = shelfState(unknowns, metricsAt);
  return (theta) => {
    const state = shelfState(unknowns, theta);
    const off = (
      seen: Lab,
      layers: readonly LookedLayer[],
      over: 'white' | 'black',
      own: boolean,
    ): readonly number[] => {
      const colour = (at: ShelfState): Lab => labOf(plainReflectance(unknowns, layers, at, at[over].reflectance, own));
      const { L, a, b } = colour(state);
      return appliedMetric(localMetric(colour(measuredIn)), seen.L - L, seen.a - a, seen.b - b);
    };
    let cost = 0;
    for (const value of theta) cost += value * value;
    for (const { id, labels } of materials)
      for (const { dose, thicknessMm, overWhite, overBlack, axisSd } of labels) {
        const layers: readonly LookedLayer[] = [{ plastics: [['', 1]], contents: [[id, dose]], thicknessMm }];
        const rows = [
          ...(overWhite ? off(overWhite, layers, 'white', false) : []),
          ...(overBlack ? off(overBlack, layers, 'black', false) : []),
        ];
        for (const row of rows) cost += (row / axisSd) ** 2;
      }
    for (const { views, inverse } of cups) {
      const rows = views.map(({ look, over, seen }) => off(seen, look.layers, over, true));
      for (const [i, one] of rows.entries())
        for (const [j, other] of rows.entries())
          for (let axis = 0; axis < 3; axis++) cost += one[axis]! * inverse[i]![j]! * other[axis]!;
    }
    return cost / 2;
  };
}

interface PlainView {
  readonly look: TaughtLook;
  readonly over: string;
}

function plainCovariance(materials: readonly TaughtMaterial[], one: PlainView, other: PlainView): number {
  if (one.over !== other.over) return 0;
  const own = one.look === other.look ? one.look.axisSd ** 2 : 0;
  return 0.65 ** 2 * alike(materials, one.look, other.look) + 0.35 ** 2 + own;
}

function plainInverse(C: readonly (readonly number[])[]): readonly (readonly number[])[] {
  return C.map((_, i) => {
    const column = new Float64Array(C.length);
    column[i] = 1;
    expect(solveLinear(Float64Array.from(C.flat()), column)).toBe(true);
    return Array.from(column);
  });
}

function alike(materials: readonly TaughtMaterial[], one: TaughtLook, other: TaughtLook): number {
  const dose = ({ layers }: TaughtLook, id: string): number =>
    new Map([...layers[0]!.contents, ...layers[0]!.plastics]).get(id) ?? 0;
  let square = (2 * Math.log(one.layers[0]!.thicknessMm / other.layers[0]!.thicknessMm)) ** 2;
  for (const { id, prior } of materials) {
    const trace = 0.03 * ('typical' in prior ? prior.typical : 1);
    square += (Math.log(1 + dose(one, id) / trace) - Math.log(1 + dose(other, id) / trace)) ** 2;
  }
  return Math.exp(-square / (2 * 1.3 * 1.3));
}

describe('what is learned', () => {
  test('is where plainly written formulas cost least, for an optimiser that knows no slopes', () => {
    const { count } = shelfUnknowns(SMALL);
    const { theta: learned } = learn(SMALL);
    const cost = plainCost(SMALL, learned);
    const found = minimize(
      (theta, gradient) => {
        for (let i = 0; i < count; i++) {
          const at = (step: number): number => cost(theta.with(i, theta[i]! + step));
          gradient[i] = (at(1e-4) - at(-1e-4)) / 2e-4;
        }
        return cost(theta);
      },
      new Float64Array(count),
      { maxIterations: 400, tolerance: 1e-12, memory: 20 },
    );
    expect(cost(Float64Array.from(learned))).toBeLessThan(found.value + 1e-5);
    for (const [i, value] of learned.entries()) expect(Math.abs(value - found.x[i]!)).toBeLessThan(0.01);
  });

  test('by photo is what differences measured at the colours that are learned lead to', () => {
    const { data } = simulatedBook({ seed: 7, materials: 6, recipes: 8, rounds: 2, camera: 'phone', axisSd: 1.15 });
    const { theta, weights } = learn(data);
    const measured = withModelMetrics(shelfProblem(data), Float64Array.from(theta));
    const again = fitTheta(
      new ShelfEquations(measured, fitWeights(measured, groupWeights(measured, weights))),
      Float64Array.from(theta),
    );
    for (const [i, value] of again.entries()) expect(Math.abs(value - theta[i]!)).toBeLessThan(0.03);
  });

  test('is the same from any order', () => {
    const { data } = simulatedBook({ seed: 7, materials: 6, recipes: 8, rounds: 2, camera: 'phone' });
    const shuffled = { materials: [...data.materials].reverse(), looks: [...data.looks].reverse() };
    expect(learn(shuffled)).toEqual(learn(data));
  });

  test('is found to far more digits than it is rounded to, from wherever steps begin', () => {
    const { data } = simulatedBook({ seed: 7, materials: 6, recipes: 8, rounds: 2, camera: 'phone' });
    const problem = shelfProblem(data);
    const equations = new ShelfEquations(problem);
    const theta = fitTheta(equations, startFromLabels(problem));
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), (seed) => {
        const { normal } = numbersFrom(seed);
        const again = fitTheta(
          equations,
          theta.map(() => normal()),
        );
        for (const [i, value] of again.entries()) expect(Math.abs(value - theta[i]!)).toBeLessThan(5e-6);
      }),
      { numRuns: 8 },
    );
    for (const slope of equations.at(theta, false).gradient) expect(Math.abs(slope)).toBeLessThan(1e-5);
  });

  test('survives JSON', () => {
    const learned = learn(SMALL);
    expect(JSON.parse(JSON.stringify(learned))).toEqual(learned);
  });
});

describe('a look', () => {
  test('seen twice narrows what is believed of every unknown, and widens nothing', () => {
    const [look] = SMALL.looks;
    const once = learn({ ...SMALL, looks: [look!] });
    const twice = learn({ ...SMALL, looks: [look!, { ...look!, key: `${look!.key} again` }] });
    // At the same theta, for there what is seen bears on the unknowns alike.
    const before = new Posterior(once).covariance;
    const after = new Posterior({ ...twice, theta: once.theta }).covariance;
    const n = once.theta.length;
    let narrowed = 0;
    for (let i = 0; i < n; i++) {
      expect(after[i * n + i]!).toBeLessThanOrEqual(before[i * n + i]! + 1e-12);
      narrowed = Math.max(narrowed, before[i * n + i]! - after[i * n + i]!);
    }
    expect(narrowed).toBeGreaterThan(1e-3);
  });

  test('at strange cups barely moves what is believed of others', () => {
    const { data } = simulatedBook({ seed: 11, materials: 6, recipes: 10, rounds: 2 });
    const stranger: TaughtMaterial = { id: 'stranger', prior: { kind: 'dye', typical: 0.0085 }, labels: [] };
    const materials = [...data.materials, stranger];
    const learned = learn({ ...data, materials });
    const look: TaughtLook = {
      ...data.looks[0]!,
      key: 'stranger/1',
      cup: 'stranger',
      layers: [{ plastics: [['plastic', 1]], contents: [['stranger', 0.004]], thicknessMm: 6 }],
      overWhite: { L: 55, a: 30, b: -35 },
      overBlack: { L: 12, a: 3, b: -4 },
    };
    const more = learn({ materials, looks: [...data.looks, look] });
    const at = shelfUnknowns({ materials, looks: [] });
    for (const { id, at: first, bottle } of at.materials.slice(0, 6))
      for (let i = first; i <= bottle!; i++)
        if (id !== 'stranger') expect(Math.abs(more.theta[i]! - learned.theta[i]!)).toBeLessThan(0.2);
  });

  test('goes by doses as parts of the typical one: ten times the typical dose and all doses changes no colour', () => {
    const ten = (contents: readonly (readonly [string, number])[]): readonly (readonly [string, number])[] =>
      contents.map(([id, dose]) => [id, 10 * dose]);
    // All but crowding, which goes by grams: it is held where it is by few and small loads.
    const scaled: LearningData = {
      materials: SMALL.materials.map((material) =>
        'typical' in material.prior
          ? {
              ...material,
              prior: { ...material.prior, typical: 10 * material.prior.typical },
              labels: material.labels.map((label) => ({ ...label, dose: 10 * label.dose })),
            }
          : material,
      ),
      looks: SMALL.looks.map((look) => ({
        ...look,
        layers: look.layers.map((layer) => ({ ...layer, contents: ten(layer.contents) })),
      })),
    };
    const before = shelfState(shelfUnknowns(SMALL), new Float64Array(shelfUnknowns(SMALL).count));
    const after = shelfState(shelfUnknowns(scaled), new Float64Array(shelfUnknowns(scaled).count));
    expect(after.materials[0]!.K[10]! * 10).toBeCloseTo(before.materials[0]!.K[10]!, 10);
    const [one, other] = [learn(SMALL).theta, learn(scaled).theta];
    const crowding = shelfUnknowns(SMALL).common + 3;
    for (const [i, value] of one.entries()) if (i !== crowding) expect(Math.abs(value - other[i]!)).toBeLessThan(0.2);
  });
});

describe('a label', () => {
  const CLEAR = SMALL.materials.find(({ prior }) => prior.kind === 'plastic')!;
  const colours = fc.record({
    L: fc.double({ min: 30, max: 80, noNaN: true }),
    a: fc.double({ min: -30, max: 40, noNaN: true }),
    b: fc.double({ min: -30, max: 40, noNaN: true }),
  });
  const learnedColour = (overWhite: Lab, kind: 'pigment' | 'dye', sd: number): Lab => {
    const label = { dose: 0.0085, thicknessMm: kind === 'dye' ? 10 : 6, overWhite, axisSd: sd / Math.sqrt(3) };
    const material: TaughtMaterial = { id: 'm', prior: { kind, typical: 0.0085 }, labels: [label] };
    const { state, looker, problem } = new Posterior(learn({ materials: [material, CLEAR], looks: [] }));
    return looker.views(problem.labels[0]!.items[0]!.composition, state, { white: true, black: false }).white!.lab;
  };

  test('is met within half a ΔE as its doubt goes to nought, and within its doubt as it is', () => {
    fc.assert(
      fc.property(colours, fc.constantFrom('pigment', 'dye'), (overWhite, kind) => {
        const sure = deltaE00(learnedColour(overWhite, kind, 0.01), overWhite);
        const usual = deltaE00(learnedColour(overWhite, kind, 4), overWhite);
        expect(sure).toBeLessThan(0.5);
        expect(usual).toBeLessThan(4);
      }),
      { numRuns: 25 },
    );
  });
});
