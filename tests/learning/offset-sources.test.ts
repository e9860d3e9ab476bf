import { describe, expect, test } from 'vitest';
import { modelViews } from '../../src/learning/asked-views.ts';
import { Belief } from '../../src/learning/belief.ts';
import { beliefParts } from '../../src/learning/belief-parts.ts';
import type { LearnedShelf } from '../../src/learning/learned-shelf.ts';
import { LookField } from '../../src/learning/look-field.ts';
import { shelfOffsets } from '../../src/learning/offset-sources.ts';
import { shelfUnknowns } from '../../src/learning/shelf-unknowns.ts';
import { USUAL_OPTICS } from '../../src/optics/optical-model.ts';
import { expectClose } from '../optics/close.ts';
import { simulatedBook } from './simulated-book.ts';

// Nothing is learned of it: the looks are off by what they are.
const { data } = simulatedBook({ seed: 21, materials: 6, recipes: 230, rounds: 3, camera: 'phone' });
const SHELF: LearnedShelf = {
  data,
  // But of the camera, which shows all too light and too red.
  theta: [...new Array<number>(shelfUnknowns(data).count - 3).fill(0), 1.5, 1, 0],
  weights: { looks: data.looks.map(() => 1), looksAlone: data.looks.map(() => 1), cups: {}, labels: {} },
  optics: USUAL_OPTICS,
  constants: {},
};

describe('of very many looks', () => {
  test('those are kept that are least like one another', () => {
    const { looks } = beliefParts(SHELF);
    const field = new LookField(looks);
    const { isThinned, of } = shelfOffsets(field);
    const kept = of('screen');
    expect(isThinned).toBe(true);
    expect(kept.length).toBe(600);
    // A look that is left out has one nearby that is not.
    const points = new Set(kept.map(({ point }) => point));
    const shares = looks
      .filter(({ errors }) => !points.has(errors.point))
      .map((look) => {
        const shared = field.sharesWith(look);
        return Math.max(...looks.flatMap(({ errors }, i) => (points.has(errors.point) ? [shared[i]!] : [])));
      });
    expect(shares.length).toBe(90);
    expect(Math.min(...shares)).toBeGreaterThan(0.9 * 0.65 ** 2);
  });

  test('the cup that is asked about is as `mean` has it, whichever looks are kept', () => {
    const belief = new Belief(SHELF);
    const { state, looker } = beliefParts(SHELF);
    const names = ['m00', 'm01', 'm02', 'm03', 'm04', 'm05'];
    for (const { layers, cup } of data.looks.filter((_, i) => i % 70 === 0)) {
      const asked = { layers, cup, camera: 'phone' };
      const contents = new Map(layers[0]!.contents);
      const doses = names.map((name) => contents.get(name) ?? 0);
      const { model } = modelViews(state, looker, asked, 'screen');
      const offset = belief.near(asked, names).at(doses, model);
      const mean = belief.mean(asked);
      for (const view of ['overWhite', 'overBlack'] as const)
        for (const axis of ['a', 'b'] as const)
          expectClose(model[view][axis] + offset[view][axis], mean[view][axis], 1e-6, `${cup} ${view} ${axis}`);
    }
  });
});
