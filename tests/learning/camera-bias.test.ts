import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Belief } from '../../src/learning/belief.ts';
import { axisSdBesideBias } from '../../src/learning/camera-bias.ts';
import { compose } from '../../src/learning/composition.ts';
import { CompositionLooker } from '../../src/learning/composition-views.ts';
import { learn } from '../../src/learning/learn.ts';
import type { LearningData } from '../../src/learning/learning-data.ts';
import { Posterior } from '../../src/learning/posterior.ts';
import { type ShelfProblem, shelfProblem } from '../../src/learning/shelf-problem.ts';
import { VIEWS_ALIKE } from '../../src/learning/views-alike.ts';
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

  test('of which there is no photo shows things as they are for all that is known, both views off by the same', () => {
    const { covariance, ...another } = belief.of({ layers, camera: 'another' });
    expect(another).toEqual({ overWhite: true_.overWhite, overBlack: true_.overBlack, looks: true_.looks });
    const more = Array.from(covariance, (value, i) => value - true_.covariance[i]!);
    // .36, the square of what a camera is off by along an axis, wherever an axis meets itself.
    more.forEach((value, i) => void expect(value).toBeCloseTo((Math.floor(i / 6) - (i % 6)) % 3 === 0 ? 0.36 : 0, 10));
  });

  test('adds to a search what it adds to a colour, whatever the doses', () => {
    const names = layers[0]!.contents.map(([id]) => id);
    const doses = layers[0]!.contents.map(([, dose]) => dose);
    for (const by of [0.5, 1, 2]) {
      const dosed = doses.map((dose) => by * dose);
      const asked = { layers: [{ ...layers[0]!, contents: names.map((id, i): [string, number] => [id, dosed[i]!]) }] };
      for (const camera of ['phone', 'another']) {
        const model = { overWhite: { L: 60, a: 5, b: 20 }, overBlack: { L: 40, a: 5, b: 10 } };
        const plain = structuredClone(belief.near({ layers }, names).at(dosed, model));
        const added = belief.near({ layers, camera }, names).at(dosed, model);
        const [with_, without] = [belief.mean({ ...asked, camera }), belief.mean(asked)];
        const ofMean = localMetric(without.overWhite)[0]! * (with_.overWhite.L - without.overWhite.L);
        const ofNear = localMetric(model.overWhite)[0]! * (added.overWhite.L - plain.overWhite.L);
        expect(ofNear).toBeCloseTo(ofMean, 1);
        expect(ofNear > 0.2).toBe(camera === 'phone');
      }
    }
  });

  test('is in the covariance far from all looks as in the posterior', () => {
    const shelf = learn({ ...data, looks });
    const far = [{ ...layers[0]!, thicknessMm: 80 }];
    const believed = new Belief(shelf).of({ layers: far, camera: 'phone' });
    const { problem, state, covariance } = new Posterior(shelf);
    const { unknowns } = problem;
    const { columns, ...composition } = compose(unknowns, far);
    const { white, black } = new CompositionLooker(unknowns).views({ columns, ...composition }, state, {
      white: true,
      black: true,
    });
    // A row for lightness over white and one over black: how each unknown moves it, ΔE00.
    const count = state.theta.length;
    const rows = [white!, black!].map(({ lab, slopes }) => {
      const row = new Float64Array(count);
      for (const [i, column] of columns.entries()) row[column] = localMetric(lab)[0]! * slopes[i]!;
      row[unknowns.cameras.get('phone')!] = 0.6;
      return row;
    });
    const together = (one: Float64Array, other: Float64Array): number => {
      let sum = 0;
      for (let i = 0; i < count; i++)
        for (let k = 0; k < count; k++) sum += one[i]! * other[k]! * covariance[i * count + k]!;
      return sum;
    };
    // What the theory may be off by, looks by photo alone: .8.
    expect(believed.covariance[0]!).toBeCloseTo(together(rows[0]!, rows[0]!) + 0.8 ** 2, 2);
    expect(believed.covariance[3]!).toBeCloseTo(together(rows[0]!, rows[1]!), 2);
  });

  test('takes off a stated doubt what is its own, and never more than half', () => {
    expect(axisSdBesideBias(1)).toBeCloseTo(0.8, 10);
    expect(axisSdBesideBias(0.6)).toBeCloseTo(0.3, 10);
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 8, noNaN: true }), (axisSd) => {
        const beside = axisSdBesideBias(axisSd);
        expect(beside).toBeLessThan(axisSd);
        expect(beside).toBeGreaterThanOrEqual(axisSd / 2);
        expect(Math.hypot(beside, 0.6)).toBeGreaterThan(axisSd - 1e-12);
      }),
    );
  });

  test('that shows all too light is found out by chips on labels as well, if they name it', () => {
    const withChips = (camera: { readonly camera?: string }): LearningData => ({
      ...data,
      looks,
      materials: data.materials.map((material) => ({
        ...material,
        labels: material.labels.map((label) => ({ ...label, axisSd: 1.15, ...camera })),
      })),
    });
    const named = learn(withChips({ camera: 'phone' }));
    expect(named.data.materials.flatMap(({ labels }) => labels).length).toBeGreaterThan(2);
    expect(new Belief(named).of({ layers, camera: 'phone' })).not.toEqual(
      new Belief(learn(withChips({}))).of({ layers, camera: 'phone' }),
    );
  });
});

describe('a label of a photo', () => {
  const seen = { dose: 0.006, thicknessMm: 6, overWhite: { L: 60, a: 10, b: 30 }, overBlack: { L: 30, a: 5, b: 15 } };
  const problemOf = (label: object): ShelfProblem =>
    shelfProblem({
      materials: [
        { id: 'peat', prior: { kind: 'pigment', typical: 0.006 }, labels: [{ ...seen, axisSd: 2, ...label }] },
      ],
      looks: [],
    });

  test('has the unknowns of its camera, and views that err together in part', () => {
    const [photo, chips] = [problemOf({ camera: 'phone' }), problemOf({})];
    expect(photo.unknowns.count - chips.unknowns.count).toBe(3);
    expect(photo.labels[0]!.items[0]!.camera).toBeDefined();
    expect(Array.from(chips.labels[0]!.covariance())).toEqual([4, 0, 0, 4]);
    const shared = 4 * VIEWS_ALIKE.screen;
    expect(Array.from(photo.labels[0]!.covariance())).toEqual([4, shared, shared, 4]);
    expect(Array.from(photo.labels[0]!.covariance([0.5]))).toEqual([8, 2 * shared, 2 * shared, 8]);
  });
});
