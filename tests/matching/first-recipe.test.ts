import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { seededRandom } from '../../src/cup/random.ts';
import type { FirstRecipeQuestion } from '../../src/matching/first-recipe-question.ts';
import { baseOfCup } from '../../src/matching/mix/cup-model.ts';
import type { RecipeProposal } from '../../src/matching/proposals/recipe-proposal.ts';
import type { MatchMaterial } from '../../src/matching/shelf/match-material.ts';
import { flakeDose, flakeDoses } from '../../src/matching/substitutes/flake-dose.ts';
import { nearestFlakes } from '../../src/matching/substitutes/flake-match.ts';
import type { TargetPart } from '../../src/matching/target/target-part.ts';
import { labOf } from '../../src/optics/cielab.ts';
import { bodyViews } from '../../src/optics/cup-body.ts';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
import { labFromHex } from '../../src/optics/display.ts';
import { metFlake } from '../../src/optics/flake.ts';
import { reflectancesInfinite } from '../../src/optics/kubelka-munk.ts';
import { USUAL_OPTICS } from '../../src/optics/optical-model.ts';
import { plasticConstants } from '../../src/optics/plastic.ts';
import { LEAST_CONTRAST, seenCoverage } from '../../src/optics/seen-coverage.ts';
import { stackReflectance } from '../../src/optics/stack.ts';
import { BESIDE_GLOSS } from '../../src/optics/surface.ts';
import type { VolumeUnit } from '../../src/units/volume-text.ts';
import { flakeText } from '../../src/words/flake.ts';
import { expectClose } from '../optics/close.ts';
import { firstRecipe } from './plain-questions.ts';
import { BENCH, CLEAR, EXACT_BENCH, SHELF } from './sample-shelf.ts';

const ALL = [...SHELF, CLEAR];
const { backings, path } = USUAL_OPTICS;
const named = new Map(ALL.map((material) => [material.id, material]));
const mixOf = (doses: Readonly<Record<string, number>>): ReturnType<typeof baseOfCup>['mix'] =>
  baseOfCup({ plastics: { clear: 1 }, materials: doses }, (name) => named.get(name)!, USUAL_OPTICS).mix;
const partOf = (doses: Readonly<Record<string, number>>): TargetPart => ({
  name: 'body',
  ...bodyViews(mixOf(doses), 6, USUAL_OPTICS),
  thicknessMm: 6,
});
const ask = (
  question: Partial<FirstRecipeQuestion> & Pick<FirstRecipeQuestion, 'parts'>,
): ReturnType<typeof firstRecipe> =>
  firstRecipe({
    plastic: 'clear',
    plasticMl: 120,
    shelf: ALL,
    optics: USUAL_OPTICS,
    bench: BENCH,
    tolerance: 2,
    ...question,
  });

/** Doses of a hidden mixture of the shelf, g/ml. */
const hidden = fc.nat(1e6).map((seed) => {
  const random = seededRandom(seed);
  const picked = [...SHELF].sort(() => random() - 0.5).slice(0, 2 + Math.floor(random() * 3));
  return Object.fromEntries(picked.map(({ id, typical }) => [id, typical! * 0.04 ** random()]));
});

describe('laws', () => {
  test('firstRecipe(a mixture of the shelf) is within ΔE00 0.3 before it is measured', () => {
    fc.assert(
      fc.property(hidden, (doses) => {
        const { proposals } = ask({ parts: [partOf(doses)], bench: EXACT_BENCH, tolerance: 0.3 });
        expectClose(proposals[0]!.exact.expected, 0, 0.3, JSON.stringify(doses));
      }),
      { numRuns: 60 },
    );
  });

  test('firstRecipe(…) says of the weights what the optics shows of them, and they are hardly ever worse than drops and spoons', () => {
    fc.assert(
      fc.property(hidden, (doses) => {
        const part = partOf(doses);
        for (const { cups, deltaE, weighedDeltaE } of ask({ parts: [part] }).proposals) {
          if (weighedDeltaE === undefined) continue;
          const weights = cups[0]!.amounts.map(({ material, weighed, grams }) => [
            material,
            (weighed?.grams ?? grams) / 120,
          ]);
          const shown = bodyViews(mixOf(Object.fromEntries(weights)), 6, USUAL_OPTICS);
          const left = Math.max(deltaE00(part.overWhite, shown.overWhite), deltaE00(part.overBlack!, shown.overBlack));
          expectClose(left, weighedDeltaE, 0.02);
          expect(weighedDeltaE).toBeLessThan(deltaE + 0.3);
        }
      }),
      { numRuns: 40 },
    );
  });

  test('firstRecipe(…) predicts what the optics shows of the measured amounts', () => {
    fc.assert(
      fc.property(hidden, (doses) => {
        const part = partOf(doses);
        for (const { cups, sides } of ask({ parts: [part] }).proposals) {
          const grams = Object.fromEntries(cups[0]!.amounts.map((amount) => [amount.material, amount.grams / 120]));
          const shown = bodyViews(mixOf(grams), 6, USUAL_OPTICS);
          expectClose(shown.overWhite.L, sides[0]!.overWhite.lab.L, 1e-9);
          expectClose(shown.overBlack.b, sides[0]!.overBlack!.lab.b, 1e-9);
        }
      }),
      { numRuns: 15 },
    );
  });

  test('firstRecipe(…) does not hang on the order of the shelf, and takes no more materials than asked', () => {
    fc.assert(
      fc.property(hidden, fc.nat(), fc.integer({ min: 1, max: 4 }), (doses, seed, most) => {
        const random = seededRandom(seed);
        const parts = [partOf(doses)];
        const found = ask({ parts, most });
        expect(ask({ parts, most, shelf: [...ALL].sort(() => random() - 0.5) })).toEqual(found);
        for (const { cups } of found.proposals) expect(cups[0]!.amounts.length).toBeLessThanOrEqual(most);
      }),
      { numRuns: 15 },
    );
  });
});

describe('a laminate', () => {
  const back = mixOf({ 'brown-dye': 0.006, 'white-pearl': 0.004 });
  const belly = mixOf({ 'amber-dye': 0.002, 'white-pearl': 0.003 });
  const side = (name: string, near: typeof back, far: typeof back): TargetPart => {
    const layers = [near, far].map((body) => ({ ...body, thickness: 3 }));
    return {
      name,
      overWhite: labOf(stackReflectance(layers, backings.white, BESIDE_GLOSS, path)),
      overBlack: labOf(stackReflectance(layers, backings.black, BESIDE_GLOSS, path)),
      thicknessMm: 6,
    };
  };

  test('firstRecipe(two sides) finds both cups together, each seen through the other', () => {
    const parts = [side('back', back, belly), side('belly', belly, back)];
    const { advice, proposals } = ask({ parts, bench: EXACT_BENCH });
    expect(advice).toEqual({ kind: 'make' });
    const [best] = proposals;
    expect(best!.cups.map(({ name }) => name)).toEqual(['back', 'belly']);
    expectClose(best!.exact.expected, 0, 0.5);
    // Alone on white, the belly is lighter than in the bait, with the back behind it.
    expect(best!.cups[1]!.alone.overWhite.lab.L - best!.sides[1]!.overWhite.lab.L).toBeGreaterThan(4);
  });

  test('firstRecipe(two sides) measured by the bench stays within tolerance', () => {
    const { proposals } = ask({ parts: [side('back', back, belly), side('belly', belly, back)] });
    expect(proposals[0]!.deltaE).toBeLessThan(2);
  });
});

describe('what it says', () => {
  test('firstRecipe(…) gives cost, contrast ratio, and the difference under a lamp', () => {
    const { proposals } = ask({ parts: [partOf({ ochre: 0.004, 'white-pearl': 0.006 })] });
    const [best] = proposals;
    expect(best!.cost).toBeGreaterThan(0);
    expect(best!.unpriced).toEqual([]);
    expect(best!.cups[0]!.alone.contrastRatio).toBeGreaterThan(0);
    expect(best!.deltaEUnderA).toBeGreaterThan(0);
    expect(best!.cups).toMatchObject([{ plasticTitle: 'Clear', plasticMl: 120 }]);
  });

  test('firstRecipe(a target whose reflectance was measured) compares it under a lamp as it is', () => {
    const doses = { ochre: 0.004, 'white-pearl': 0.006 };
    const layers = [{ ...mixOf(doses), thickness: 6 }];
    const reflectance = {
      overWhite: stackReflectance(layers, backings.white, BESIDE_GLOSS, path),
      overBlack: stackReflectance(layers, backings.black, BESIDE_GLOSS, path),
    };
    const own = { bench: EXACT_BENCH, shelf: ALL.filter(({ id }) => id in doses || id === 'clear') };
    const best = ask({ parts: [{ ...partOf(doses), reflectance }], ...own }).proposals[0]!;
    // The recipe is the target's own, so its reflectance is as well; the smoothest one of the colour is another.
    expect(best.deltaEUnderA).toBeLessThan(0.3);
    const smooth = ask({ parts: [partOf(doses)], ...own }).proposals[0]!;
    expect(smooth.deltaEUnderA).toBeGreaterThan(best.deltaEUnderA);
  });

  test('firstRecipe(plain plastic) adds nothing', () => {
    const found = ask({ parts: [partOf({})] });
    expect(found).toMatchObject({ advice: { kind: 'leave-plain', plasticTitles: ['Clear'] }, proposals: [] });
  });

  test('firstRecipe(more plastic than a cup is filled to) is refused', () => {
    const found = ask({ parts: [partOf({ 'brown-dye': 0.005 })], plasticMl: 300, limits: { roomMl: 175 } });
    expect(found.advice).toEqual({ kind: 'fault', fault: { kind: 'too-full', roomMl: 175 } });
  });

  test('firstRecipe(a colour no plastic has) says what would help', () => {
    const { advice, missing } = ask({
      parts: [{ name: 'body', overWhite: labFromHex('#2030ff'), thicknessMm: 6 }],
      shelf: ALL.filter(({ id }) => !/blue|violet/.test(id)),
    });
    expect(advice).toEqual({ kind: 'cannot', because: 'shelf' });
    expect(missing[0]!.kind).toMatch(/blue|violet/);
  });

  test.each([
    ['no part', { parts: [] }, { kind: 'no-parts' }],
    ['three parts', { parts: [partOf({}), partOf({}), partOf({})] }, { kind: 'too-many-parts' }],
    ['a plastic that is not there', { parts: [partOf({})], plastic: 'none' }, { kind: 'no-plastic', plastic: 'none' }],
    ['no plastic', { parts: [partOf({})], plasticMl: 0 }, { kind: 'no-volume' }],
    ['half a material', { parts: [partOf({})], most: 0.5 }, { kind: 'number-of-materials', most: 6 }],
    [
      'NaN',
      { parts: [{ ...partOf({}), overBlack: { L: Number.NaN, a: 0, b: 0 } }] },
      { kind: 'no-colour', over: 'black' },
    ],
  ] as const)('firstRecipe(…) names the fault of %s', (_, question, fault) => {
    expect(ask(question as never).advice).toEqual({ kind: 'fault', fault });
  });

  test('firstRecipe(…) from an empty shelf says so', () => {
    const found = ask({ parts: [partOf({ ochre: 0.01 })], shelf: [CLEAR] });
    expect(found.advice).toEqual({ kind: 'cannot', because: 'nothing-usable' });
  });

  test('no weighing is offered on a scale too coarse to do about as well as drops and spoons', () => {
    const coarse = (scaleGrams: number): readonly RecipeProposal[] =>
      [0.1, 0.3, 1].flatMap(
        (part) =>
          ask({ parts: [partOf({ [SHELF[0]!.id]: part * SHELF[0]!.typical! })], bench: { ...BENCH, scaleGrams } })
            .proposals,
      );
    for (const scaleGrams of [0.01, 0.3]) {
      for (const { deltaE, weighedDeltaE = deltaE } of coarse(scaleGrams))
        expect(weighedDeltaE).toBeLessThanOrEqual(deltaE + 1 + 1e-9);
    }
    const offers = (scaleGrams: number): number =>
      coarse(scaleGrams).filter(({ weighedDeltaE }) => weighedDeltaE !== undefined).length;
    expect(offers(0.3)).toBeLessThan(offers(0.01));
  });
});

describe('flake', () => {
  const flake = (id: string, colour: string, sizeMm: number, finish: string): MatchMaterial => ({
    id,
    title: id,
    kind: 'flake',
    density: 1.39,
    gramsPerMl: 0.55,
    expectedDeltaE: 2,
    flake: {
      shape: 'hex',
      sizeMm,
      reflectance: new Float64Array(36).fill(0.3),
      ...{ colour, acrossMm: sizeMm, finish },
    },
  });
  const flakes = [
    flake('black-large', '#1a1a1a', 1.016, 'metallic'),
    flake('black-small', '#1c1c1c', 0.381, 'metallic'),
    flake('copper', '#b06a40', 1.016, 'metallic'),
    flake('black-prism', '#1a1a1a', 1.016, 'hologram'),
  ];

  test('nearestFlakes(wanted) goes by colour, size and finish, and says the difference', () => {
    const found = nearestFlakes({ hex: '#1a1a1a', sizeMm: 1.016, finish: 'metallic' }, flakes);
    expect(found.map((each) => [each.material, flakeText(each, { volume: 'ml' })])).toEqual([
      ['black-large', 'the same size and the same colour'],
      ['black-prism', 'the same size, the same colour and hologram instead of metallic'],
      ['black-small', 'much smaller and the same colour'],
      ['copper', 'the same size and much yellower'],
    ]);
  });

  test('nearestFlakes(wanted, shelf, mold) says which of them jam in the mold', () => {
    const mold = { gateMm: 1.9, thinMm: 1.5 };
    const text = (units: VolumeUnit): readonly string[] =>
      nearestFlakes({ hex: '#1a1a1a', sizeMm: 1.016, finish: 'metallic' }, flakes, mold)
        .filter(({ material }) => material !== 'black-prism')
        .map((each) => flakeText(each, units));
    expect(text({ volume: 'ml' })).toEqual([
      'the same size and the same colour, but too large for the gate: 1.9 mm where it needs 2.03 mm',
      'much smaller and the same colour',
      'the same size and much yellower, but too large for the gate: 1.9 mm where it needs 2.03 mm',
    ]);
    expect(text({ volume: 'fl oz' })[0]).toContain('0.075 in where it needs 0.08 in');
  });

  const cover = fc.double({ min: 0.01, max: 0.4, noNaN: true });

  test('flakeDoses(…) show as is wanted in any body, each beside the other', () => {
    fc.assert(
      fc.property(hidden, cover, cover, (doses, one, other) => {
        // As much as ever it takes.
        const [black, copper] = [flakes[0]!, flakes[2]!].map((each) => ({ ...each, most: 0.25 })) as [
          MatchMaterial,
          MatchMaterial,
        ];
        const layer = { ...mixOf(doses), thickness: 8 };
        const found = flakeDoses(
          [
            { material: black, coverage: one },
            { material: copper, coverage: other },
          ],
          { optics: USUAL_OPTICS, layers: [layer], at: 0 },
        );
        const volume = 1 + found.reduce((sum, { gramsPerMl }) => sum + gramsPerMl / 1.39, 0);
        const met = [black, copper].map(({ flake: cut }, index) => metFlake(cut!, found[index]!.gramsPerMl / volume));
        for (const [index, { coverage }] of seenCoverage([{ ...layer, flakes: met }], USUAL_OPTICS)[0]!.entries()) {
          expectClose(coverage, found[index]!.seen, 1e-3);
          if (found[index]!.contrast >= LEAST_CONTRAST) expectClose(coverage, found[index]!.wanted, 2e-3);
        }
      }),
      { numRuns: 30 },
    );
  });

  test('flakeDose(…) is several times as much where the body is solid as where it is clear', () => {
    const grams = (doses: Readonly<Record<string, number>>): number =>
      flakeDose(flakes[0]!, { optics: USUAL_OPTICS, layers: [{ ...mixOf(doses), thickness: 11 }], at: 0 }, 0.1)
        .gramsPerMl;
    expect(grams({ ochre: 0.02, 'white-pearl': 0.02 })).toBeGreaterThan(3 * grams({}));
  });

  test('flakeDose(what can hardly be told from the plastic) is what a clear body takes, not as much as a cup bears', () => {
    const black = { ...flakes[0]!, most: 0.25 };
    const layer = { ...mixOf({ black: 0.02 }), thickness: 8 };
    const own = reflectancesInfinite(layer.absorption, layer.scattering);
    const hidden = flakeDose(
      { ...black, flake: { ...black.flake!, reflectance: own } },
      { optics: USUAL_OPTICS, layers: [layer], at: 0 },
      0.15,
    );
    expect(hidden.contrast).toBeLessThan(LEAST_CONTRAST);
    expect(hidden.seen).toBeLessThan(0.15);
    // 1 − e^(−μ 8 mm) = 0.15.
    expectClose(metFlake(black.flake!, hidden.gramsPerMl).perMm, -Math.log(0.85) / 8, 1e-3);
  });

  test('flakeDose(…) is no more than a cup takes, and says what that shows', () => {
    const bed = {
      layers: [{ ...mixOf({ ochre: 0.02, 'white-pearl': 0.02 }), thickness: 11 }],
      at: 0,
      optics: USUAL_OPTICS,
    };
    const scarce = { ...flakes[0]!, most: 0.002 };
    const found = flakeDose(scarce, bed, 0.5);
    expectClose(found.gramsPerMl, 0.002, 1e-12);
    expect(found.seen).toBeLessThan(0.2);
    expect(flakeDose(scarce, bed, 0).gramsPerMl).toBe(0);
  });

  const flaked = (
    { parts, ...question }: Partial<FirstRecipeQuestion> & Pick<FirstRecipeQuestion, 'parts'>,
    coverage = 0.15,
  ): ReturnType<typeof ask> =>
    ask({
      parts: parts.map((part) => ({ flakes: [{ hex: '#151515', sizeMm: 1, coverage }], ...part })),
      shelf: [...ALL, ...flakes],
      ...question,
    });

  test('firstRecipe(a target with flake) puts the nearest flake in, and matches the colour with it', () => {
    const found = flaked({ parts: [partOf({ ochre: 0.002, 'white-pearl': 0.002 })] });
    expect(found.flakes[0]!.material).toBe('black-large');
    expect(found.proposals[0]!.cups[0]!.amounts.some(({ material }) => material === 'black-large')).toBe(true);
  });

  test('firstRecipe(a target with flake) shows the wanted share of it in each body that it proposes', () => {
    fc.assert(
      fc.property(hidden, cover, (doses, coverage) => {
        const question = {
          parts: [partOf(doses)],
          bench: EXACT_BENCH,
        };
        const found = flaked(question, coverage);
        for (const { cups } of found.proposals) {
          const [{ material, seen, wanted } = expect.fail('no flake')] = cups[0]!.flakes;
          expect(material).toBe('black-large');
          expect(wanted).toBe(coverage);
          expectClose(seen, coverage, 0.03 * coverage + 1e-3);
        }
        expect(flaked(question, coverage)).toEqual(found);
      }),
      { numRuns: 4 },
    );
  });

  test('firstRecipe(a target with more flake than a cup takes) says so of what it shows', () => {
    const [cup] = flaked({
      parts: [partOf({ ochre: 0.002, 'white-pearl': 0.002 })],
      shelf: [...ALL, { ...flakes[0]!, most: 0.001 }],
    }).proposals[0]!.cups;
    expect(cup!.flakes[0]).toMatchObject({ atMost: true, wanted: 0.15 });
    expect(cup!.flakes[0]!.seen).toBeLessThan(0.12);
  });

  test('firstRecipe(two sides with flake) shows the wanted share on each, by what lies in its own half of the bait', () => {
    const [back, belly] = [
      partOf({ ochre: 0.004, 'white-pearl': 0.004 }),
      partOf({ ochre: 0.002, 'white-pearl': 0.002 }),
    ];
    const { cups } = flaked({
      parts: [
        { ...back, name: 'back' },
        { ...belly, name: 'belly' },
      ],
      bench: EXACT_BENCH,
    }).proposals[0]!;
    for (const { flakes: seen } of cups) expectClose(seen[0]!.seen, 0.15, 0.005);
  });

  test('firstRecipe(two sides) puts flake into the one that has any, and each into its own plastic', () => {
    const milky: MatchMaterial = { ...CLEAR, id: 'milky', title: 'Milky', constants: plasticConstants('milky') };
    const question = {
      parts: [
        { ...partOf({ ochre: 0.004, 'white-pearl': 0.004 }), name: 'back', plasticMl: 90 },
        { ...partOf({ ochre: 0.002, 'white-pearl': 0.002 }), name: 'belly', plastic: 'milky', flakes: [] },
      ],
      shelf: [...ALL, ...flakes, milky],
    };
    const found = flaked(question);
    expect(found.flakes.map(({ part, material }) => [part, material])).toEqual([['back', 'black-large']]);
    expect(found.proposals.length).toBeGreaterThan(0);
    for (const { cups, unpriced } of found.proposals) {
      expect(cups.map(({ plastic, plasticMl }) => [plastic, plasticMl])).toEqual([
        ['clear', 90],
        ['milky', 120],
      ]);
      expect(cups.map(({ amounts }) => amounts.some(({ material }) => material === 'black-large'))).toEqual([
        true,
        false,
      ]);
      expect(unpriced).not.toContain('milky');
    }
    const strange = ask({ parts: [question.parts[0]!, { ...question.parts[1]!, plastic: 'ochre' }] });
    expect(strange.advice).toEqual({ kind: 'fault', fault: { kind: 'no-plastic', plastic: 'ochre' } });
    const full = ask({ parts: [{ ...question.parts[0]!, plasticMl: 400 }], limits: { roomMl: 300 } });
    expect(full.advice).toEqual({ kind: 'fault', fault: { kind: 'too-full', roomMl: 300 } });
  });
});
