import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Cut, dilution } from '../../src/cup/cut.ts';
import { partsOfMeasured } from '../../src/cup/cut-measures.ts';
import type { MatchMaterial } from '../../src/matching/shelf/match-material.ts';
import { USUAL_OPTICS } from '../../src/optics/optical-model.ts';
import { firstRecipe } from './plain-questions.ts';
import { BENCH, CLEAR, SHELF } from './sample-shelf.ts';

const SOFTENER: MatchMaterial = {
  ...{ id: 'softener', title: 'Softener', kind: 'additive', use: 'softener', expectedDeltaE: 2 },
  ...{ density: 0.95, gramsPerMl: 0.95, gramsPerDrop: 0.0475 },
};
const cutOf = (of: string, oneIn: number, diluent: MatchMaterial): Cut => {
  const { diluentMlPerGram, ...made } = dilution(1, diluent.density, oneIn);
  const plastic = diluent.kind === 'plastic' ? { plasticPerGram: diluentMlPerGram } : {};
  return {
    id: `${of}-${oneIn}`,
    title: of,
    of,
    with: diluent.id,
    oneIn,
    ...made,
    gramsPerDrop: 0.05 * made.gramsPerMl,
    ...plastic,
  };
};

test('firstRecipe(a shelf of weak cuts) never brings so much with them that the colour is another, by drops and by weight', () => {
  let cuts = 0;
  const lightness = fc.integer({ min: 70, max: 92 });
  fc.assert(
    fc.property(
      lightness,
      fc.constantFrom(10, 100, 1000),
      fc.constantFrom(CLEAR, SOFTENER),
      fc.constantFrom(0.01, 0.1),
      (L, oneIn, diluent, scaleGrams) => {
        const shelf = SHELF.filter(({ id }) => /amber|black|white$|green/.test(id)).map((each) => ({
          ...each,
          cuts: [cutOf(each.id, oneIn, diluent)],
        }));
        const { proposals } = firstRecipe({
          optics: USUAL_OPTICS,
          parts: [{ name: 'body', overWhite: { L, a: 2, b: 14 }, overBlack: { L: L / 3, a: 0, b: 4 }, thicknessMm: 6 }],
          ...{
            plastic: 'clear',
            plasticMl: 120,
            shelf: [...shelf, CLEAR, SOFTENER],
            bench: { ...BENCH, scaleGrams },
            tolerance: 2,
          },
        });
        for (const { material, weighed, ...amount } of proposals.flatMap(({ cups }) => cups[0]!.amounts))
          for (const { cut, grams } of [amount, weighed ?? amount])
            for (const part of partsOfMeasured(material, grams, cut).slice(1)) {
              cuts += 1;
              // A dose that is measured is up to a fifth off.
              expect(part.kind === 'plastic' ? part.ml / 120 : part.grams / 0.95 / 120).toBeLessThanOrEqual(
                part.kind === 'plastic' ? 0.024 : 0.012,
              );
            }
      },
    ),
    { numRuns: 20 },
  );
  expect(cuts).toBeGreaterThan(0);
});
