import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Bench } from '../../src/cup/bench.ts';
import { dilution } from '../../src/cup/cut.ts';
import { isWeighable } from '../../src/cup/measures.ts';
import { addedPlastic, type Ingredient, measureDoses } from '../../src/matching/measure/measure-doses.ts';
import { Mix } from '../../src/matching/mix/mix.ts';
import { USUAL_OPTICS } from '../../src/optics/optical-model.ts';
import { expectClose } from '../optics/close.ts';
import { BENCH, CLEAR, EXACT_BENCH, SHELF } from './sample-shelf.ts';

const LAYERS = [{ cup: 0, thickness: 6 }];
const mixFor = (overWhite: { L: number; a: number; b: number }): Mix =>
  new Mix({
    optics: USUAL_OPTICS,
    cups: [CLEAR.constants!],
    goals: [{ layers: LAYERS, overWhite }],
    candidates: SHELF.map(({ constants }) => ({ cup: 0, constants: constants!, load: 1, most: 0.06 })),
  });
const anyMix = mixFor({ L: 50, a: 0, b: 0 });

const benches: fc.Arbitrary<Bench> = fc.constantFrom(
  BENCH,
  { ...BENCH, drops: false },
  { ...BENCH, spoons: [] },
  { drops: true, spoons: BENCH.spoons, dropSpread: 0.1, spoonSpread: 0.1 },
  { ...BENCH, drops: false, spoons: [], scaleGrams: 0.1 },
);

interface Task {
  readonly mix: Mix;
  readonly set: readonly number[];
  readonly doses: Float64Array;
  readonly ml: number;
  readonly ingredients: readonly Ingredient[];
}

/** Exact doses of up to three materials in a cup, each with the most that may go in. */
const tasks: fc.Arbitrary<Task> = fc
  .tuple(
    fc.uniqueArray(fc.nat(SHELF.length - 1), { minLength: 1, maxLength: 3 }),
    fc.array(fc.double({ min: 0.05, max: 1.5, noNaN: true }), { minLength: 3, maxLength: 3 }),
    fc.double({ min: 30, max: 400, noNaN: true }),
    fc.double({ min: 0.5, max: 3, noNaN: true }),
  )
  .map(([set, parts, ml, room]) => {
    const doses = new Float64Array(SHELF.length);
    for (const [i, j] of set.entries()) doses[j] = parts[i]! * SHELF[j]!.typical!;
    const [overWhite] = anyMix.labs(doses);
    const ingredients = SHELF.map((material, j) => {
      const most = doses[j]! > 0 ? room * doses[j]! * ml : 1;
      return { material, cup: 0, letsDown: false, most };
    });
    return { mix: mixFor(overWhite!), set, doses, ml, ingredients };
  });

test('measureDoses(…) gives measures that the bench has, within the most of each, and what they come to', () => {
  fc.assert(
    fc.property(tasks, benches, ({ mix, set, doses, ml, ingredients }, bench) => {
      const found = measureDoses(mix, ingredients, set, doses, [ml], bench);
      for (const { candidate, amount, measure } of found.ingredients) {
        expect(set).toContain(candidate);
        expect(amount).toBe(measure.grams);
        expect(amount).toBeLessThanOrEqual(ingredients[candidate]!.most * (1 + 1e-9));
        if (measure.tool === 'drops') expect(bench.drops).toBe(true);
        if (measure.tool === 'spoons') expect(bench.spoons.length).toBeGreaterThan(0);
        if (measure.tool === 'scale') {
          const steps = amount / bench.scaleGrams!;
          expectClose(steps, Math.round(steps), 1e-6, measure.text);
        }
        expectClose(found.doses[candidate]!, amount / ml, 1e-12);
      }
      const inside = found.ingredients.map(({ candidate }) => candidate);
      expect([...found.doses.keys()].filter((j) => found.doses[j]! > 0)).toEqual(inside.sort((a, b) => a - b));
      expectClose(found.score, mix.score(found.doses), 1e-12);
    }),
    { numRuns: 150 },
  );
});

test('measureDoses(…) is never worse than adding nothing', () => {
  fc.assert(
    fc.property(tasks, benches, ({ mix, set, doses, ml, ingredients }, bench) => {
      const { score } = measureDoses(mix, ingredients, set, doses, [ml], bench);
      expect(score).toBeLessThanOrEqual(mix.score(new Float64Array(SHELF.length)) + 1e-9);
    }),
    { numRuns: 100 },
  );
});

test('measureDoses(…) leaves exact doses as they are where the bench measures anything', () => {
  fc.assert(
    fc.property(tasks, ({ mix, set, doses, ml, ingredients }) => {
      const roomy = ingredients.map((each) => ({ ...each, most: Number.POSITIVE_INFINITY }));
      const found = measureDoses(mix, roomy, set, doses, [ml], EXACT_BENCH);
      for (const j of set) expectClose(found.doses[j]!, doses[j]!, 1e-9, SHELF[j]!.id);
    }),
    { numRuns: 60 },
  );
});

test('measureDoses(…) weighs of a cut what the scale hardly shows of its bottle, though the bottle might make up for something', () => {
  const scale = { ...BENCH, drops: false, spoons: [], scaleGrams: 0.01 };
  const liquids = SHELF.flatMap(({ kind }, j) => (kind === 'colorant' ? [j] : []));
  const little = fc.double({ min: 0.004, max: 0.03, noNaN: true });
  const ml = 120;
  fc.assert(
    fc.property(
      fc.shuffledSubarray(liquids, { minLength: 2, maxLength: 3 }),
      little,
      little,
      little,
      (set, ...grams) => {
        const doses = new Float64Array(SHELF.length);
        for (const [i, j] of set.entries()) doses[j] = grams[i]! / ml;
        const ingredients = SHELF.map((material): Ingredient => {
          const { gramsPerMl, bottlePerGram } = dilution(material.density, 0.9, 10);
          const cut = {
            id: 'cut',
            title: 'Cut',
            of: material.id,
            with: 'softener',
            oneIn: 10,
            gramsPerMl,
            bottlePerGram,
          };
          const cuts = material.kind === 'colorant' ? [{ ...cut, gramsPerDrop: 0.05 * gramsPerMl }] : [];
          return { material: { ...material, cuts }, cup: 0, letsDown: false, most: 1 };
        });
        const [overWhite] = anyMix.labs(doses);
        const { ingredients: found } = measureDoses(mixFor(overWhite!), ingredients, set, doses, [ml], scale);
        for (const { measure } of found)
          expect(measure.cut !== undefined || isWeighable(measure.grams, 0.01)).toBe(true);
      },
    ),
    { numRuns: 60 },
  );
});

test('addedPlastic(share, ml) makes up that share of the plastic then', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 0.99, noNaN: true }),
      fc.double({ min: 1, max: 1000, noNaN: true }),
      (share, ml) => {
        const added = addedPlastic(share, ml);
        expectClose(added / (ml + added), share, 1e-12);
      },
    ),
  );
});
