import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { amountsWithCuts } from '../../src/cup/amounts-with-cuts.ts';
import type { BatchStock } from '../../src/cup/batch.ts';
import { type Cut, dilution, partsOfCut, withoutMaterial } from '../../src/cup/cut.ts';
import { cutMeasures, fittingCuts, weighedOf } from '../../src/cup/cut-measures.ts';
import { type CupState, cupVolume, withAdded } from '../../src/cup/ledger.ts';
import { planBatch, type ScalableCup, type Shop } from '../../src/cup/plan-batch.ts';
import { NO_SCALE } from './sample-shop.ts';

const RUST = 1.2;
const SOFTENER = 0.9;

/** Rust in softener, or in plastic of 1 g/ml, by volume; a drop is 0.05 ml. */
function cutOf(oneIn: number, diluent: 'softener' | 'supple' = 'softener'): Cut {
  const { diluentMlPerGram, ...made } = dilution(RUST, diluent === 'softener' ? SOFTENER : 1, oneIn);
  return {
    id: `rust-${oneIn}`,
    title: 'Rust Cut',
    of: 'rust',
    with: diluent,
    oneIn,
    ...made,
    gramsPerDrop: 0.05 * made.gramsPerMl,
    ...(diluent === 'supple' ? { plasticPerGram: diluentMlPerGram } : {}),
  };
}

const stockWith =
  (cuts: readonly Cut[]) =>
  (material: string): BatchStock =>
    ({
      rust: { gramsPerMl: RUST, gramsPerDrop: 0.05 * RUST, price: 12, packGrams: 30, stockGrams: 4, cuts },
      softener: { gramsPerMl: SOFTENER, gramsPerDrop: 0.05 * SOFTENER },
      supple: { gramsPerMl: 1, price: 10, packGrams: 1000 },
    })[material]!;

/** A batch of so much of a cup with so many drops of the bottle and of softener in 100 ml. */
function batchOf(
  drops: number,
  softener: number,
  cuts: readonly Cut[],
  { shop = NO_SCALE, baits = 20, perGram = 0 }: { shop?: Shop; baits?: number; perGram?: number } = {},
): ReturnType<typeof planBatch> {
  const contents = [
    { material: 'rust', gramsPerMl: (drops * 0.05 * RUST) / 100 },
    { material: 'softener', gramsPerMl: (softener * 0.05 * SOFTENER) / 100 },
  ].filter(({ gramsPerMl }) => gramsPerMl > 0);
  const cup: ScalableCup = {
    name: 'body',
    share: 1,
    plastics: [{ material: 'supple', fraction: 1 }],
    contents,
    volumePerPlastic: 1,
  };
  return planBatch({
    cups: [cup],
    lines: [{ mold: { id: 'minnow', cavities: 1, cavityMl: 97 / 22, sprueMl: 0 }, baits }],
    shop,
    stock: stockWith(cuts),
    colourError: (_, ml) => (grams) => perGram * Math.abs((grams.rust ?? 0) - (contents[0]!.gramsPerMl ?? 0) * ml),
  });
}
const rows = (batch: ReturnType<typeof planBatch>): readonly string[] =>
  batch.cups[0]!.amounts.map(({ material, cut, text }) => `${text} ${cut?.id ?? material}`);

describe('a cut', () => {
  test('partsOfCut of 10 drops of one in ten is 1 drop of the bottle and 9 of what it is cut with', () => {
    const [bottle, diluent] = partsOfCut(cutOf(10), 10 * cutOf(10).gramsPerDrop);
    expect(bottle).toEqual({ kind: 'add', material: 'rust', grams: expect.closeTo(0.05 * RUST, 12) });
    expect(diluent).toEqual({ kind: 'add', material: 'softener', grams: expect.closeTo(9 * 0.05 * SOFTENER, 12) });
    expect(partsOfCut(cutOf(10, 'supple'), 10 * cutOf(10, 'supple').gramsPerDrop)[1]).toEqual({
      kind: 'plastic',
      material: 'supple',
      ml: expect.closeTo(9 * 0.05, 12),
    });
  });

  test('partsOfCut keeps mass and volume, and withoutMaterial takes back what withAdded put in', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 2, max: 1000, noNaN: true }),
        fc.double({ min: 0.001, max: 50, noNaN: true }),
        fc.constantFrom('softener' as const, 'supple' as const),
        (oneIn, grams, diluent) => {
          const cut = cutOf(oneIn, diluent);
          const parts = partsOfCut(cut, grams);
          const mass = parts.reduce((sum, part) => sum + (part.kind === 'plastic' ? part.ml * 1 : part.grams), 0);
          expect(mass).toBeCloseTo(grams, 9);
          const before: CupState = { plastics: { supple: 100 }, materials: { softener: 2 } };
          const perGram = (name: string): number => 1 / (name === 'rust' ? RUST : SOFTENER);
          const after = withAdded(before, { kind: 'cut', cut: cut.id, grams, parts });
          expect(cupVolume(after, perGram) - cupVolume(before, perGram)).toBeCloseTo(grams / cut.gramsPerMl, 9);
          const back = withoutMaterial(after, 'rust', () => cut);
          expect(back.plastics.supple).toBeCloseTo(100, 9);
          expect(back.materials).toEqual({ softener: expect.closeTo(2, 9) });
          expect(back.cuts).toEqual({});
        },
      ),
    );
  });
});

describe('planBatch with a cut on the shelf', () => {
  test('counts what is too little for a drop of the cut that the recipe was written with, and no softener beside it', () => {
    // 6 drops of one in ten: 0.6 drops of the bottle, and the 5.4 of softener that came with them.
    expect(rows(batchOf(0.6, 5.4, [cutOf(10)]))).toEqual(['6 drops rust-10']);
    expect(rows(batchOf(0.6, 5.4, []))).toEqual(['1 drop rust', '5 drops softener']);
    // Softener of its own stays.
    expect(rows(batchOf(0.6, 25.4, [cutOf(10)]))).toEqual(['6 drops rust-10', '20 drops softener']);
  });

  test('drops the bottle itself in a batch that is large enough', () => {
    expect(rows(batchOf(4, 36, [cutOf(10)]))).toEqual(['4 drops rust', '36 drops softener']);
  });

  test('takes the strongest cut that comes near', () => {
    expect(rows(batchOf(0.5, 0, [cutOf(100), cutOf(10), cutOf(4)]))).toEqual(['2 drops rust-4']);
    expect(rows(batchOf(0.02, 0, [cutOf(100), cutOf(10), cutOf(4)]))).toEqual(['2 drops rust-100']);
  });

  test('takes no cut that would bring more softener than anybody overlooks', () => {
    // 0.3 drops are 30 drops of one in a hundred, 1.5 ml in 100 ml of plastic.
    expect(rows(batchOf(0.3, 0, [cutOf(100)]))).toEqual(['1 drop rust']);
    expect(fittingCuts(0.3 * 0.05 * RUST, [cutOf(100)], { materials: {}, plastics: { supple: 100 } })).toEqual([]);
    expect(rows(batchOf(0.3, 0, [cutOf(100, 'supple')]))).toEqual(['30 drops rust-100']);
  });

  test('counts a cut where whole drops of the bottle are near and leave the colour off', () => {
    // 5.5 drops: 6 are 9 % too much, here ΔE 3.
    const perGram = 3 / (0.5 * 0.05 * RUST);
    expect(rows(batchOf(5.5, 0, [cutOf(4, 'supple')]))).toEqual(['6 drops rust']);
    expect(rows(batchOf(5.5, 0, [cutOf(4, 'supple')], { perGram }))).toEqual(['22 drops rust-4']);
  });

  test('weighs the cut where the scale is too coarse for the bottle', () => {
    const shop = { ...NO_SCALE, drops: false, spoons: [], scaleGrams: 0.01 };
    expect(rows(batchOf(0.3, 2.7, [cutOf(10)], { shop }))).toEqual(['0.14 g rust-10']);
  });

  test('takes from the shelf the two parts of what is measured, so that no gram is lost', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 8, noNaN: true }),
        fc.double({ min: 0, max: 60, noNaN: true }),
        fc.integer({ min: 2, max: 60 }),
        fc.constantFrom('softener' as const, 'supple' as const),
        fc.integer({ min: 1, max: 90 }),
        (drops, softener, oneIn, diluent, baits) => {
          const cut = cutOf(oneIn, diluent);
          const batch = batchOf(drops, softener, [cut], { baits });
          const { plastics, amounts, split } = batch.cups[0]!;
          const inCups =
            plastics.reduce((sum, { ml }) => sum + ml, 0) +
            amounts.reduce((sum, { measuredGrams }) => sum + measuredGrams, 0);
          const taken = batch.materials.reduce((sum, { grams }) => sum + grams, 0);
          expect(taken).toBeCloseTo(inCups * split, 9);
          const rust = amounts.find(({ material }) => material === 'rust')!;
          const bottle = rust.measuredGrams * (rust.cut?.bottlePerGram ?? 1);
          expect(batch.materials.find(({ material }) => material === 'rust')!.grams).toBeCloseTo(bottle * split, 9);
          // Measured exactly, nothing is in the cups but the recipe; where it has no softener, next to nothing.
          const exact =
            amounts.reduce((sum, { grams }) => sum + grams, 0) + plastics.reduce((sum, { ml }) => sum + ml, 0);
          const recipe = plasticOf(batch) * (1 + (drops * 0.05 * RUST + softener * 0.05 * SOFTENER) / 100);
          expect(Math.abs(exact / recipe - 1)).toBeLessThan(0.0101);
        },
      ),
    );
  });

  test('cutMeasures of nothing near is nothing', () => {
    expect(cutMeasures(1e-6, [cutOf(2)], NO_SCALE)).toEqual([]);
  });
});

/** Plastic of each cup before any went in with a cut, ml: the volume, as the doses take no room here. */
const plasticOf = (batch: ReturnType<typeof planBatch>): number => batch.cups[0]!.volumeMl;

test('weighedOf(…) is of the strongest cut that the scale will do for, in whichever order cuts lie on the shelf', () => {
  const cuts = [cutOf(4), cutOf(20), cutOf(10), cutOf(100)];
  for (const shelf of [cuts, cuts.toReversed()]) {
    expect(weighedOf(0.004, shelf, 0.01).cut?.oneIn).toBe(10);
    expect(weighedOf(0.001, shelf, 0.01).cut?.oneIn).toBe(100);
    expect(weighedOf(0.1, shelf, 0.01).cut).toBeUndefined();
  }
});

test('amountsWithCuts(several bottles, each cut with the same) never bring more of it together than the cup has', () => {
  let cut = 0;
  const drops = fc.array(fc.double({ min: 0.1, max: 1.5, noNaN: true }), { minLength: 2, maxLength: 4 });
  fc.assert(
    fc.property(
      drops,
      fc.constantFrom('softener' as const, 'supple' as const),
      fc.integer(),
      (doses, diluent, seed) => {
        const bottles = doses.map((dose, index) => [`bottle-${index}`, 0.05 * RUST * dose] as const);
        // As much as some of the cuts bring, and not all of them.
        const there = 0.05 * 39 * (doses[0]! + (Math.abs(seed) % doses.length) * doses[1]!) * 1.01;
        const contents = {
          materials: { ...Object.fromEntries(bottles), softener: diluent === 'softener' ? there * SOFTENER : 0.01 },
          plastics: { clear: 30, supple: diluent === 'supple' ? there : 1e-9 },
        };
        const stock = (name: string): BatchStock =>
          name.startsWith('bottle')
            ? { gramsPerMl: RUST, gramsPerDrop: 0.05 * RUST, cuts: [{ ...cutOf(40, diluent), of: name }] }
            : stockWith([])(name);
        const { found, brought } = amountsWithCuts(contents, stock, NO_SCALE, () => 0);
        expect(brought.plastics.supple ?? 0).toBeLessThanOrEqual(contents.plastics.supple + 1e-6);
        const softener = brought.materials.softener ?? 0;
        expect(softener <= contents.materials.softener * 1.00001 || softener <= 0.31 * SOFTENER).toBe(true);
        cut += Object.values(found.chosen).filter((measure) => measure.cut).length;
        expect(Object.keys(found.chosen).sort()).toEqual(Object.keys(contents.materials).sort());
      },
    ),
  );
  expect(cut).toBeGreaterThan(0);
});
