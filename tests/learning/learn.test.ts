import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { learn } from '../../src/learning/learn.ts';
import type { LearnedShelf } from '../../src/learning/learned-shelf.ts';
import type { LearningData, TaughtLook, TaughtMaterial } from '../../src/learning/learning-data.ts';
import { Posterior } from '../../src/learning/posterior.ts';
import { shelfState } from '../../src/learning/shelf-state.ts';
import { shelfUnknowns } from '../../src/learning/shelf-unknowns.ts';
import { type Lab, labOf } from '../../src/optics/cielab.ts';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
import { minimize } from '../../src/optics/fit/minimize.ts';
import { solveLinear } from '../../src/optics/linear-system.ts';
import { appliedMetric, localMetric } from '../../src/optics/local-metric.ts';
import { plainReflectance } from './plain-reflectance.ts';
import { numbersFrom, simulatedBook } from './simulated-book.ts';

const SMALL = simulatedBook({ seed: 4, materials: 2, recipes: 3, rounds: 2 }).data;

/** Half of what theta costs, from formulas written down plainly: no slopes, no blocks, elimination instead of factors. */
function plainCost({ materials, looks }: LearningData, theta: Float64Array): number {
  const unknowns = shelfUnknowns({ materials, looks });
  const state = shelfState(unknowns, theta);
  let cost = 0;
  for (const value of theta) cost += value * value;
  const off = (seen: Lab, R: readonly number[]): readonly number[] => {
    const { L, a, b } = labOf(R);
    return appliedMetric(localMetric(seen), seen.L - L, seen.a - a, seen.b - b);
  };
  for (const { id, labels } of materials)
    for (const { dose, thicknessMm, overWhite, overBlack, axisSd } of labels) {
      const layer = { plastics: [['', 1]] as const, contents: [[id, dose]] as const, thicknessMm };
      const seen = (card: Float64Array): readonly number[] => plainReflectance(unknowns, [layer], state, card, false);
      const rows = [
        ...(overWhite ? off(overWhite, seen(state.white.reflectance)) : []),
        ...(overBlack ? off(overBlack, seen(state.black.reflectance)) : []),
      ];
      for (const row of rows) cost += (row / axisSd) ** 2;
    }
  for (const cup of new Set(looks.map((look) => look.cup))) {
    const views = looks
      .filter((look) => look.cup === cup)
      .flatMap((look) => [
        {
          look,
          over: 'white',
          off: off(look.overWhite!, plainReflectance(unknowns, look.layers, state, state.white.reflectance)),
        },
        {
          look,
          over: 'black',
          off: off(look.overBlack!, plainReflectance(unknowns, look.layers, state, state.black.reflectance)),
        },
      ]);
    for (let axis = 0; axis < 3; axis++) {
      const C = views.flatMap((one, i) =>
        views.map((other, j) => {
          if (one.over !== other.over) return 0;
          return 0.65 ** 2 * alike(materials, one.look, other.look) + 0.35 ** 2 + (i === j ? one.look.axisSd ** 2 : 0);
        }),
      );
      const x = Float64Array.from(views, (view) => view.off[axis]!);
      expect(solveLinear(Float64Array.from(C), x)).toBe(true);
      for (const [i, view] of views.entries()) cost += x[i]! * view.off[axis]!;
    }
  }
  return cost / 2;
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
    const found = minimize(
      (theta, gradient) => {
        for (let i = 0; i < count; i++) {
          const at = (step: number): number => plainCost(SMALL, theta.with(i, theta[i]! + step));
          gradient[i] = (at(1e-4) - at(-1e-4)) / 2e-4;
        }
        return plainCost(SMALL, theta);
      },
      new Float64Array(count),
      { maxIterations: 400, tolerance: 1e-12, memory: 20 },
    );
    const { theta } = learn(SMALL);
    expect(plainCost(SMALL, Float64Array.from(theta))).toBeLessThan(found.value + 1e-5);
    for (const [i, value] of theta.entries()) expect(Math.abs(value - found.x[i]!)).toBeLessThan(0.01);
  });

  test('is the same from any order and from any start', () => {
    const { data } = simulatedBook({ seed: 7, materials: 6, recipes: 8, rounds: 2, camera: 'phone' });
    const learned = learn(data);
    const shuffled = { materials: [...data.materials].reverse(), looks: [...data.looks].reverse() };
    expect(learn(shuffled)).toEqual(learned);
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), (seed) => {
        const { normal } = numbersFrom(seed);
        const start: LearnedShelf = { ...learned, theta: learned.theta.map(() => normal()) };
        expect(learn(data, start).theta).toEqual(learned.theta);
      }),
      { numRuns: 5 },
    );
    expect(learn(data, learn(SMALL))).toEqual(learned);
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
    for (const [i, value] of one.entries()) if (i !== crowding) expect(Math.abs(value - other[i]!)).toBeLessThan(0.15);
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
