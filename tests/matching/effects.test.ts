import { describe, expect, test } from 'vitest';
import { baseOfCup } from '../../src/matching/mix/cup-model.ts';
import type { MatchMaterial } from '../../src/matching/shelf/match-material.ts';
import type { AdditionLimits } from '../../src/matching/shelf/usable-materials.ts';
import type { TargetPart } from '../../src/matching/target/target-part.ts';
import { bodyViews } from '../../src/optics/cup-body.ts';
import { USUAL_OPTICS } from '../../src/optics/optical-model.ts';
import { leftOutText } from '../../src/words/left-out.ts';
import { firstRecipe, nextAddition, substitutes } from './plain-questions.ts';
import { BENCH, CLEAR, SHELF } from './sample-shelf.ts';

/** The shelf, with an amber that is fluorescent and the only yellow of it. */
const GLOWING: readonly MatchMaterial[] = [
  ...SHELF.filter(({ id }) => id !== 'ochre').map(
    (material): MatchMaterial => (material.id === 'amber-dye' ? { ...material, effect: 'fluorescent' } : material),
  ),
  CLEAR,
];
const named = new Map(GLOWING.map((material) => [material.id, material]));
const { mix } = baseOfCup(
  { plastics: { clear: 1 }, materials: { 'amber-dye': 0.008 } },
  (name) => named.get(name)!,
  USUAL_OPTICS,
);
const TARGET: TargetPart = { name: 'body', ...bodyViews(mix, 6, USUAL_OPTICS), thicknessMm: 6 };
const OUT = { material: 'amber-dye', why: 'effect', effect: 'fluorescent' } as const;
const first = (limits: AdditionLimits): ReturnType<typeof firstRecipe> =>
  firstRecipe({
    optics: USUAL_OPTICS,
    parts: [TARGET],
    plastic: 'clear',
    plasticMl: 120,
    shelf: GLOWING,
    bench: BENCH,
    tolerance: 2,
    limits,
  });

describe('a material that is fluorescent, glows, or shifts its colour', () => {
  test('firstRecipe(a target that is none) leaves it out and says so', () => {
    const { proposals, leftOut } = first({});
    expect(leftOut).toContainEqual(OUT);
    for (const { cups } of proposals)
      expect(cups[0]!.amounts.map(({ material }) => material)).not.toContain('amber-dye');
    expect(leftOutText(OUT, 'Amber', { temperature: '°C' })).toBe(
      'Left out: Amber. It is fluorescent, and the colour you want isn’t.',
    );
  });

  test('firstRecipe(a target that is one as well) takes it; one that glows in the dark does not make up for that', () => {
    const [best] = first({ effects: ['fluorescent'] }).proposals;
    expect(best!.cups[0]!.amounts.map(({ material }) => material)).toEqual(['amber-dye']);
    expect(first({ effects: ['glow'] }).leftOut).toContainEqual(OUT);
  });

  test('nextAddition(…) leaves it out, in the new cup as well', () => {
    const { proposals, startAgain, leftOut } = nextAddition({
      optics: USUAL_OPTICS,
      cup: { plastics: { clear: 120 }, materials: { black: 0.4 } },
      target: TARGET,
      shelf: GLOWING,
      bench: BENCH,
      tolerance: 2,
    });
    const used = [
      ...proposals.flatMap(({ additions }) => additions),
      ...(startAgain?.cups.flatMap(({ amounts }) => amounts) ?? []),
    ];
    expect(used.map(({ material }) => material)).not.toContain('amber-dye');
    expect(leftOut).toContainEqual(OUT);
  });

  test('substitutes(…) takes it only in a cup that is so already', () => {
    const ask = (material: string, materials: Readonly<Record<string, number>>): ReturnType<typeof substitutes> =>
      substitutes({
        optics: USUAL_OPTICS,
        cup: { plastics: { clear: 120 }, materials },
        thicknessMm: 6,
        material,
        shelf: GLOWING,
        bench: BENCH,
        tolerance: 2,
      });
    const plain = ask('gold-pearl', { 'gold-pearl': 0.5, 'brown-dye': 0.3 });
    const used = [...plain.swaps, ...plain.recipes].flatMap(({ amounts }) => amounts.map(({ material }) => material));
    expect(used).not.toContain('amber-dye');
    expect(plain.leftOut).toContainEqual(OUT);
    const glowing = ask('gold-pearl', { 'gold-pearl': 0.5, 'amber-dye': 0.3 });
    expect(glowing.leftOut).not.toContainEqual(OUT);
  });
});

describe('plastic that is short', () => {
  const short = (stockGrams: number): readonly MatchMaterial[] =>
    GLOWING.map((material) => (material.id === 'clear' ? { ...material, stockGrams } : material));

  test('firstRecipe(…, in stock) proposes nothing that takes more plastic than there is', () => {
    const ask = (stockGrams: number, parts: readonly TargetPart[] = [TARGET]): ReturnType<typeof firstRecipe> =>
      firstRecipe({
        optics: USUAL_OPTICS,
        parts,
        plastic: 'clear',
        plasticMl: 120,
        shelf: short(stockGrams),
        bench: BENCH,
        tolerance: 2,
        limits: { inStock: true, effects: ['fluorescent'] },
      });
    // 120 ml weigh 126 g.
    expect(ask(126).advice.kind).toBe('make');
    expect(ask(105)).toMatchObject({
      advice: { kind: 'cannot', because: 'short-of-plastic', title: 'Clear', askedMl: 120, leftMl: 100 },
      proposals: [],
    });
    const sides = [TARGET, { ...TARGET, name: 'belly' }];
    expect(ask(126, sides).advice).toMatchObject({ because: 'short-of-plastic', askedMl: 240, leftMl: 120 });
  });

  test('nextAddition(…, in stock) lets down with no more than there is, and says what a new cup lacks', () => {
    const { proposals, startAgain, shortPlastic } = nextAddition({
      optics: USUAL_OPTICS,
      cup: { plastics: { clear: 100 }, materials: { black: 3, 'amber-dye': 1 } },
      target: TARGET,
      shelf: short(21),
      bench: BENCH,
      tolerance: 2,
      startMl: 120,
      limits: { inStock: true, mayLetDown: true, roomMl: 300, effects: ['fluorescent'] },
    });
    for (const { thin } of proposals) expect(thin?.ml ?? 0).toBeLessThanOrEqual(20);
    expect(startAgain).toBeUndefined();
    expect(shortPlastic).toMatchObject({ title: 'Clear', askedMl: 120, leftMl: 20 });
  });
});

test('firstRecipe(at most one bottle) names the bottle that the limit keeps out, and nothing to buy', () => {
  const mixed = baseOfCup(
    { plastics: { clear: 1 }, materials: { 'green-dye': 0.008, black: 0.004 } },
    (name) => named.get(name)!,
    USUAL_OPTICS,
  ).mix;
  const { advice, hindered, missing } = firstRecipe({
    optics: USUAL_OPTICS,
    parts: [{ name: 'body', ...bodyViews(mixed, 6, USUAL_OPTICS), thicknessMm: 6 }],
    plastic: 'clear',
    plasticMl: 120,
    shelf: GLOWING,
    bench: BENCH,
    tolerance: 2,
    most: 1,
  });
  expect(advice).toEqual({ kind: 'cannot', because: 'shelf' });
  expect(hindered!.bottles).toBe(2);
  expect(hindered!.deltaE).toBeLessThan(0.5);
  expect(missing).toEqual([]);
});

test('a fluorescent flake is proposed for what is to glow alone, and for one that is: first, next, and in its place', () => {
  const flake = (id: string, colour: string, finish: string): MatchMaterial => ({
    ...{ id, title: id, kind: 'flake', density: 1.39, gramsPerMl: 0.55, expectedDeltaE: 2 },
    flake: {
      ...{ shape: 'hex', sizeMm: 1, reflectance: new Float64Array(36).fill(0.5) },
      ...{ colour, acrossMm: 1, finish },
    },
  });
  const shelf = [
    ...GLOWING,
    flake('glowing', '#c0d020', 'fluorescent'),
    flake('other-glowing', '#c4d424', 'fluorescent'),
    flake('gold', '#a89040', 'metallic'),
    flake('brass', '#a08838', 'metallic'),
  ];
  const asked = { shelf, bench: BENCH, tolerance: 2 };
  const flakes = [{ hex: '#c0d020', sizeMm: 1, coverage: 0.1 }];
  for (const [effects, wanted] of [
    [[], 'gold'],
    [['fluorescent'], 'glowing'],
  ] as const) {
    const limits = { effects };
    const first = firstRecipe({
      optics: USUAL_OPTICS,
      ...asked,
      parts: [{ ...TARGET, flakes }],
      plastic: 'clear',
      plasticMl: 120,
      limits,
    });
    expect(first.flakes.map(({ material }) => material)).toEqual([wanted]);
    const cup = { plastics: { clear: 120 }, materials: { black: 0.3 } };
    const next = nextAddition({ optics: USUAL_OPTICS, ...asked, cup, target: TARGET, flakes, limits });
    expect(next.flakes?.map(({ material }) => material)).toEqual([wanted]);
  }
  const inPlaceOf = (material: string): readonly string[] =>
    substitutes({
      optics: USUAL_OPTICS,
      ...{ ...asked, thicknessMm: 6, material },
      cup: { plastics: { clear: 120 }, materials: { [material]: 1 } },
    }).flakes.map((each) => each.material);
  expect(inPlaceOf('gold')).toEqual(['brass']);
  expect(inPlaceOf('glowing')[0]).toBe('other-glowing');
});
