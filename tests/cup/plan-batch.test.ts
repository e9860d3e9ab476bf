import { describe, expect, test } from 'vitest';
import { type BatchMold, planBatch, type ScalableCup, type Shop } from '../../src/cup/plan-batch.ts';
import { NO_SCALE } from './sample-shop.ts';

const shop: Shop = { ...NO_SCALE, scaleGrams: 0.01 };
const minnow: BatchMold = { id: 'minnow', cavities: 4, cavityMl: 3, sprueMl: 6 };
const craw: BatchMold = { id: 'craw', cavities: 2, cavityMl: 8, sprueMl: 5 };
const cup = (name: string, share: number): ScalableCup => ({
  name,
  share,
  plastics: [{ material: 'supple', fraction: 1 }],
  contents: [{ material: 'peat', gramsPerMl: 0.005 }],
  volumePerPlastic: 1.005,
});
const stock = (
  material: string,
): { gramsPerMl: number; gramsPerDrop?: number; price?: number; packGrams?: number; stockGrams?: number } =>
  material === 'peat'
    ? { gramsPerMl: 1, gramsPerDrop: 0.05, price: 6, packGrams: 30, stockGrams: 0.5 }
    : { gramsPerMl: 1.05, price: 21, packGrams: 1050 };
const plan = (lines: Parameters<typeof planBatch>[0]['lines'], cups = [cup('body', 1)]): ReturnType<typeof planBatch> =>
  planBatch({ cups, lines, shop, stock, colourError: () => () => 0 });

describe('planBatch', () => {
  test('planBatch counts baits, sprues by the shot, loss, and what stays in the cup', () => {
    const batch = plan([{ mold: minnow, baits: 10 }]);
    // 10 × 3 ml + 3 shots × 6 ml = 48 ml; a tenth lost: 52.8 ml; 3 ml stay.
    expect(batch.lines).toEqual([{ mold: 'minnow', baits: 10, shots: 3 }]);
    expect(batch.cups[0]!.volumeMl).toBeCloseTo(55.8, 9);
    expect(batch.cups[0]!.plastics[0]!.ml).toBeCloseTo(55.8 / 1.005, 9);
    expect(batch.cups[0]!.amounts[0]).toMatchObject({
      material: 'peat',
      text: '6 drops',
      tool: 'drops',
      byWeight: '0.28 g',
    });
  });
  test('fills plastic to the next mark of a measuring cup, and doses by what is filled', () => {
    const marked = (
      plastics: ScalableCup['plastics'],
      marksMl?: number,
    ): ReturnType<typeof planBatch>['cups'][number] =>
      planBatch({
        cups: [{ ...cup('body', 1), plastics }],
        lines: [{ mold: minnow, baits: 10 }],
        shop: { ...shop, ...(marksMl === undefined ? {} : { marksMl }) },
        stock,
        colourError: () => () => 0,
      }).cups[0]!;
    // 55.8 ml in the cup take 55.5 ml of plastic.
    const one = marked([{ material: 'supple', fraction: 1 }], 5);
    expect(one.plastics).toEqual([{ material: 'supple', ml: 60 }]);
    expect(one.amounts[0]!.grams).toBeCloseTo(60 * 0.005, 12);
    expect(one.volumeMl).toBeCloseTo(60 * 1.005, 12);
    const two = marked(
      [
        { material: 'supple', fraction: 0.7 },
        { material: 'firm', fraction: 0.3 },
      ],
      5,
    );
    expect(two.plastics.map(({ ml }) => ml)).toEqual([40, 20]);
    expect(marked([{ material: 'supple', fraction: 1 }]).plastics[0]!.ml).toBeCloseTo(55.8 / 1.005, 9);
  });
  test('a liquid that its maker spoons is spooned again, where there are spoons', () => {
    const tool = (spooned: boolean, spoons: Shop['spoons']): string =>
      planBatch({
        cups: [{ ...cup('body', 1), contents: [{ material: 'peat', gramsPerMl: 0.04, ...(spooned && { spooned }) }] }],
        lines: [{ mold: minnow, baits: 10 }],
        shop: { ...NO_SCALE, spoons },
        stock,
        colourError: () => () => 0,
      }).cups[0]!.amounts[0]!.text;
    const spoons = [
      { ml: 2.5, name: '2.5 ml' },
      { ml: 1.25, name: '1.25 ml' },
    ];
    // 2.2 g of 55 ml: 44 drops of 0.05 g.
    expect(tool(false, spoons)).toBe('44 drops');
    expect(tool(true, spoons)).toBe('2.5 ml');
    expect(tool(true, [])).toBe('44 drops');
  });
  test('makes as many more as are thrown away, so that there are as many good ones as asked', () => {
    const [line] = plan([{ mold: minnow, baits: 24, rejects: 0.05 }]).lines;
    // 24 / 0.95 = 25.26, so 26 are made, in 7 shots of four; 25 would leave 23.75 good ones.
    expect(line).toEqual({ mold: 'minnow', baits: 24, made: 26, shots: 7 });
    // 19 of 20 are good: exactly as many as asked.
    expect(plan([{ mold: minnow, baits: 19, rejects: 0.05 }]).lines[0]).toMatchObject({ made: 20, shots: 5 });
    const batch = plan([{ mold: minnow, baits: 24, rejects: 0.05 }]);
    // 26 × 3 ml + 7 shots × 6 ml = 120 ml; a tenth lost: 132 ml; 3 ml stay.
    expect(batch.cups[0]!.volumeMl).toBeCloseTo(135, 9);
    expect(batch.costPerBait).toBeCloseTo(batch.cost / 24, 12);
  });
  test('loses with each mold what it loses', () => {
    const batch = plan([
      { mold: minnow, baits: 10, loss: 0.2 },
      { mold: craw, baits: 2 },
    ]);
    // 48 ml × 1.2 + (2 × 8 ml + 1 × 5 ml) × 1.1 + 3 ml.
    expect(batch.cups[0]!.volumeMl).toBeCloseTo(57.6 + 23.1 + 3, 9);
  });
  test('fills an injector with as many whole shots as it holds above what stays in it', () => {
    const injector = { holdsMl: 60, leftMl: 8 };
    const filled = (baits: number, share: number, holdsMl = 60): unknown =>
      planBatch({
        cups: [cup('back', share), cup('belly', 1 - share)],
        lines: [{ mold: minnow, baits, injected: true }],
        shop: { ...shop, injector: { ...injector, holdsMl } },
        stock,
        colourError: () => () => 0,
      }).cups[0]!.fills;
    // A shot is 4 × 3 ml + 6 ml = 18 ml, of which the back takes 9: 52 ml give 5 of them, and 15 shots take 3 fills.
    expect(filled(60, 0.5)).toEqual([{ mold: 'minnow', shotMl: 9, shotsAFill: 5, fills: 3 }]);
    // 16 shots take a fourth.
    expect(filled(61, 0.5)).toMatchObject([{ shotsAFill: 5, fills: 4 }]);
    // 10 ml above what stays hold no shot of 18 ml.
    expect(filled(4, 1, 18)).toMatchObject([{ shotsAFill: 0, fills: 0 }]);
    const poured = { cups: [cup('body', 1)], shop: { ...shop, injector }, stock, colourError: () => () => 0 };
    const both = planBatch({
      ...poured,
      lines: [
        { mold: minnow, baits: 10, injected: true },
        { mold: craw, baits: 2 },
      ],
    });
    expect(both.cups[0]!.fills).toMatchObject([{ mold: 'minnow' }]);
    // As without an injector, (48 + 21) ml × 1.1 + 3 ml, and what stays in the injector, once.
    expect(both.cups[0]!.volumeMl).toBeCloseTo(78.9 + 8, 9);
    expect(planBatch({ ...poured, lines: [{ mold: craw, baits: 2 }] }).cups[0]!.fills).toBeUndefined();
  });
  test('planBatch says of which drops one moves the colour by more than the tolerance, and whether the scale is finer', () => {
    const touchy = (deltaEPerGram: number, scaleGrams: number): unknown =>
      planBatch({
        cups: [cup('body', 1)],
        lines: [{ mold: minnow, baits: 10 }],
        shop: { ...shop, scaleGrams },
        stock,
        colourError: (_, plasticMl) => (grams) => deltaEPerGram * Math.abs(grams.peat! - 0.005 * plasticMl),
      }).cups[0]!.amounts[0];
    expect(touchy(50, 0.01)).toMatchObject({
      text: '6 drops',
      dropDeltaE: expect.closeTo(2.5, 9),
      betterWeighed: true,
    });
    expect(touchy(50, 0.1)).toMatchObject({ text: '6 drops', betterWeighed: false });
    expect(touchy(30, 0.01)).not.toHaveProperty('dropDeltaE');
  });
  test('planBatch offers to weigh what the scale shows, and says where its step is too coarse', () => {
    const weighedWith = (scaleGrams?: number): unknown => {
      const { scaleGrams: _, ...without } = shop;
      const batch = planBatch({
        cups: [cup('body', 1)],
        lines: [{ mold: minnow, baits: 10 }],
        shop: { ...without, ...(scaleGrams === undefined ? {} : { scaleGrams }) },
        stock,
        colourError: () => () => 0,
      });
      const { byWeight, offScale } = batch.cups[0]!.amounts[0]!;
      return { byWeight, offScale };
    };
    // 0.2776 g: a scale of 0.1 g shows 0.3 g, of 0.01 oz twice as much or nothing.
    expect(weighedWith(0.01)).toEqual({ byWeight: '0.28 g' });
    expect(weighedWith(0.1)).toEqual({ offScale: 'between-steps' });
    expect(weighedWith(0.28349523125)).toEqual({ offScale: 'too-little' });
    expect(weighedWith()).toEqual({});
  });
  test('planBatch adds several molds together', () => {
    const batch = plan([
      { mold: minnow, baits: 10 },
      { mold: craw, baits: 6 },
    ]);
    expect(batch.baits).toBe(16);
    expect(batch.cups[0]!.volumeMl).toBeCloseTo((48 + 6 * 8 + 3 * 5) * 1.1 + 3, 9);
  });
  test('planBatch shares the bait among its cups', () => {
    const batch = plan([{ mold: minnow, baits: 10 }], [cup('back', 0.4), cup('belly', 0.6)]);
    expect(batch.cups.map(({ volumeMl }) => volumeMl)).toEqual([
      expect.closeTo(48 * 0.4 * 1.1 + 3, 9),
      expect.closeTo(48 * 0.6 * 1.1 + 3, 9),
    ]);
  });
  test('planBatch splits a cup that would stand above its fill limit into equal cups below it', () => {
    const [only] = plan([{ mold: minnow, baits: 100 }]).cups;
    expect(only!.split).toBe(3);
    expect(only!.volumeMl).toBeLessThanOrEqual(350 * 0.5 + 1e-9);
    expect((only!.volumeMl - 3) * only!.split).toBeCloseTo((100 * 3 + 25 * 6) * 1.1, 6);
  });
  test('planBatch does not split a cup for what nobody sees of its height, and splits what is more', () => {
    // 33 baits take 9 shots: (99 + 54) × 1.1 = 168.3 ml, and 34 take 171.6 ml; the cup has room for 172 ml.
    expect(plan([{ mold: minnow, baits: 34 }]).cups[0]!.split).toBe(1);
    // 36 baits: (108 + 54) × 1.1 = 178.2 ml, 3.6 % more than there is room for; 42 baits (126 + 66 ml) are 23 % more.
    expect(plan([{ mold: minnow, baits: 36 }]).cups[0]!.split).toBe(1);
    expect(plan([{ mold: minnow, baits: 42 }]).cups[0]!.split).toBe(2);
  });
  test('planBatch prices what it measures, and says what to buy', () => {
    const batch = plan([{ mold: minnow, baits: 100 }]);
    const peat = batch.materials.find(({ material }) => material === 'peat')!;
    const grams = batch.cups[0]!.amounts[0]!.measuredGrams * 3;
    expect(peat.grams).toBeCloseTo(grams, 9);
    expect(peat.cost).toBeCloseTo((grams / 30) * 6, 9);
    expect(peat.shortGrams).toBeCloseTo(grams - 0.5, 9);
    expect(peat.packs).toBe(1);
    expect(batch.costPerBait).toBeCloseTo(batch.cost / 100, 9);
    expect(batch.unpriced).toEqual([]);
  });
  test('planBatch counts the flakes of a bait, by the mold and by the share of the cup', () => {
    const { cups } = planBatch({
      cups: [
        { ...cup('back', 0.25), contents: [{ material: 'copper', gramsPerMl: 0.004 }], volumePerPlastic: 1.25 },
        cup('belly', 0.75),
      ],
      lines: [
        { mold: minnow, baits: 4 },
        { mold: craw, baits: 2 },
      ],
      shop,
      stock: (material) =>
        material === 'copper' ? { gramsPerMl: 0.5, flake: { gramsPerFlake: 0.00008 } } : stock(material),
      colourError: () => () => 0,
    });
    // 0.004 g in 1.25 ml are 40 flakes a ml; a quarter of 3 ml, and of 8 ml.
    const [copper] = cups[0]!.amounts;
    expect(copper!.flakesABait!.map(({ mold, count }) => [mold, count.toFixed(6)])).toEqual([
      ['minnow', '30.000000'],
      ['craw', '80.000000'],
    ]);
    expect(cups[1]!.amounts[0]!.flakesABait).toBeUndefined();
  });
  test('planBatch(no baits) throws and says what it needs', () => {
    expect(() => plan([{ mold: minnow, baits: 0 }])).toThrow(/whole number of baits/);
  });
});

test('planBatch(a measure far off) says whether a cup as full as may be would come nearer', () => {
  const trace = (gramsPerMl: number): ScalableCup => ({
    ...cup('body', 1),
    contents: [{ material: 'peat', gramsPerMl }],
  });
  const amount = (gramsPerMl: number): unknown =>
    planBatch({
      cups: [trace(gramsPerMl)],
      lines: [{ mold: minnow, baits: 10 }],
      shop: { ...shop, scaleGrams: 0.1 },
      stock,
      colourError: () => () => 0,
    }).cups[0]!.amounts[0];
  // 55.8 ml here, 175 ml at most: a third of a drop becomes a whole one, a twentieth does not.
  expect(amount(0.05 / 55.8 / 3)).toMatchObject({ text: '1 drop', nearInFullCup: true });
  expect(amount(0.05 / 55.8 / 20)).toMatchObject({ text: '1 drop', nearInFullCup: false });
  expect(amount(0.05 / 55.8)).not.toHaveProperty('nearInFullCup');
});
