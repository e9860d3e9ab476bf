import { describe, expect, test } from 'vitest';
import type { CupState } from '../../src/cup/ledger.ts';
import { baseOfCup } from '../../src/matching/mix/cup-model.ts';
import type { MatchMaterial } from '../../src/matching/shelf/match-material.ts';
import type { TargetPart } from '../../src/matching/target/target-part.ts';
import { bodyViews } from '../../src/optics/cup-body.ts';
import { USUAL_OPTICS } from '../../src/optics/optical-model.ts';
import { flakeText } from '../../src/words/flake.ts';
import { expectClose } from '../optics/close.ts';
import { plainBelief } from './plain-belief.ts';
import { cutBack, substitutes } from './plain-questions.ts';
import { BENCH, CLEAR, EXACT_BENCH, SHELF, sampleMaterial } from './sample-shelf.ts';

const ALL = [...SHELF, CLEAR];
const named = new Map(ALL.map((material) => [material.id, material]));
const cupOf = (materials: Readonly<Record<string, number>>, ml = 120): CupState => ({
  plastics: { clear: ml },
  materials,
});
const lookOf = (cup: CupState): TargetPart => ({
  name: 'body',
  ...bodyViews(baseOfCup(cup, (name) => named.get(name)!, USUAL_OPTICS).mix, 6, USUAL_OPTICS),
  thicknessMm: 6,
});

describe('substitutes', () => {
  const ask = (
    cup: CupState,
    material: string,
    shelf: readonly MatchMaterial[] = ALL,
  ): ReturnType<typeof substitutes> =>
    substitutes({ optics: USUAL_OPTICS, cup, thicknessMm: 6, material, shelf, bench: BENCH, tolerance: 2 });

  test('substitutes(…) takes a twin of twice the strength first, half as much of it', () => {
    const brown = named.get('brown-dye')!;
    const twin: MatchMaterial = {
      ...brown,
      id: 'strong-brown',
      title: 'Strong Brown',
      constants: {
        absorption: Float64Array.from(brown.constants!.absorption, (K) => 2 * K),
        scattering: Float64Array.from(brown.constants!.scattering, (S) => 2 * S),
      },
    };
    const found = substitutes({
      optics: USUAL_OPTICS,
      cup: cupOf({ 'brown-dye': 0.8, 'white-pearl': 0.4 }),
      thicknessMm: 6,
      material: 'brown-dye',
      shelf: [...ALL, twin],
      bench: EXACT_BENCH,
      tolerance: 2,
    });
    expect(found.advice.kind).toBe('swap');
    expect(found.swaps[0]!.amounts[0]!.material).toBe('strong-brown');
    expectClose(found.swaps[0]!.amounts[0]!.grams, 0.4, 0.01);
  });

  test('substitutes(…) says to leave out what nobody would miss, and offers no large dose in its place', () => {
    const found = ask(cupOf({ black: 2.4, 'brown-dye': 0.3 }), 'brown-dye');
    expect(found.advice.kind).toBe('leave-out');
    expect(found.advice.kind === 'leave-out' && found.advice.expected).toBeLessThan(1);
    const grams = found.swaps.flatMap(({ amounts }) => amounts.map((amount) => amount.grams));
    expect(grams.length).toBeGreaterThan(0);
    expect(Math.max(...grams)).toBeLessThan(0.5);
  });

  test('substitutes(…) works a cup out anew where no one material will do', () => {
    const found = ask(cupOf({ olive: 0.6, 'white-pearl': 0.4 }), 'olive');
    expect(found.recipes.length).toBeGreaterThan(0);
    for (const { amounts } of [...found.swaps, ...found.recipes])
      expect(amounts.some(({ material }) => material === 'olive')).toBe(false);
    expect(found.recipes[0]!.left.deltaE).toBeLessThan(found.swaps[0]!.left.deltaE + 1e-9);
  });

  test('substitutes(…) of a flake keeps its cover', () => {
    const flake = (id: string, sizeMm: number): MatchMaterial => ({
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
        ...{ colour: '#b06a40', acrossMm: sizeMm, finish: 'metallic' },
      },
    });
    const shelf = [...ALL, flake('copper-040', 1.016), flake('copper-035', 0.889)];
    const found = substitutes({
      optics: USUAL_OPTICS,
      cup: cupOf({ 'copper-040': 0.3 }),
      thicknessMm: 6,
      material: 'copper-040',
      shelf,
      bench: EXACT_BENCH,
      tolerance: 2,
    });
    expect(found.flakes[0]).toMatchObject({ material: 'copper-035', deltaE: 0 });
    expect(flakeText(found.flakes[0]!, { volume: 'ml' })).toBe('a little smaller and the same colour');
    // Film of one thickness covers by its mass, whatever its size.
    expectClose(found.flakes[0]!.grams, 0.3, 0.003);
  });

  test('substitutes(…) takes the look that is believed of the cup for what is to be met', () => {
    const cup = cupOf({ 'brown-dye': 0.8, 'white-pearl': 0.4 });
    const off = { overWhite: { L: 6, a: 0, b: 0 }, overBlack: { L: 3, a: 0, b: 0 } };
    const belief = plainBelief(ALL, {}, USUAL_OPTICS, off);
    const question = { optics: USUAL_OPTICS, cup, thicknessMm: 6, material: 'brown-dye', shelf: ALL, bench: BENCH };
    const plain = substitutes({ ...question, tolerance: 2 });
    const taught = substitutes({ ...question, tolerance: 2, belief });
    const best = (found: ReturnType<typeof substitutes>): number => found.recipes[0]!.overWhite.lab.L;
    expectClose(best(taught), best(plain) + off.overWhite.L, 1);
  });

  test('substitutes(…) leads with weights where drops and spoons miss and weighing does not', () => {
    const bench = { ...BENCH, spoons: [{ ml: 4.929, name: '1 tsp' }] };
    const cup = cupOf({ 'white-pearl': 0.31, ochre: 0.05 }, 60);
    const found = substitutes({
      optics: USUAL_OPTICS,
      cup,
      thicknessMm: 6,
      material: 'ochre',
      shelf: ALL,
      bench,
      tolerance: 2,
    });
    for (const { amounts } of found.recipes) for (const { text } of amounts) expect(text).toMatch(/ g$/);
    expect(found.byHand!.expected).toBeGreaterThan(2);
  });

  test.each([
    ['a material that is not in the cup', cupOf({ ochre: 1 }), 'olive', { kind: 'not-in-cup', title: 'olive' }],
    ['the plastic of the cup', cupOf({ ochre: 1 }), 'clear', { kind: 'is-plastic', title: 'Clear' }],
    ['an empty cup', cupOf({}, 0), 'olive', { kind: 'empty-cup' }],
    ['one that is not on the shelf', cupOf({ lost: 1 }), 'lost', { kind: 'not-on-shelf', material: 'lost' }],
    ['NaN in the cup', cupOf({ olive: 1, ochre: Number.NaN }), 'olive', { kind: 'no-amount' }],
    ['less than nothing in it', cupOf({ olive: 1, ochre: -1 }), 'olive', { kind: 'no-amount' }],
  ] as const)('substitutes(…) names the fault of %s', (_, cup, material, fault) => {
    expect(ask(cup, material).advice).toEqual({ kind: 'fault', fault });
  });

  test('substitutes(the only colorant) from a shelf of one finds nothing', () => {
    const only = sampleMaterial('only', 'dye', '#884422');
    const found = ask(cupOf({ only: 1 }), 'only', [only, CLEAR]);
    expect(found.advice).toEqual({ kind: 'cannot', because: 'another-colour' });
  });
});

describe('cutting back', () => {
  const ask = (cup: CupState, target: TargetPart, more: object = {}): ReturnType<typeof cutBack> =>
    cutBack({ optics: USUAL_OPTICS, cup, target, shelf: ALL, bench: BENCH, tolerance: 2, ...more });

  test('cutBack(a cup with half too much of everything) is half as much plastic again', () => {
    const found = ask(
      cupOf({ 'brown-dye': 0.9, 'white-pearl': 0.9 }),
      lookOf(cupOf({ 'brown-dye': 0.6, 'white-pearl': 0.6 })),
    );
    expect(found.advice).toEqual({ kind: 'let-down', by: 'plasticAlone', newCup: 'no-nearer' });
    expect(found.plasticAlone!.thin).toEqual({ plastic: 'clear', title: 'Clear', ml: 60 });
    expectClose(found.plasticAlone!.volumeMl, 180, 2);
  });

  test('cutBack(a cup that is too see-through already) does not let it down', () => {
    const found = ask(cupOf({ 'brown-dye': 0.3 }), lookOf(cupOf({ 'brown-dye': 0.6, 'white-pearl': 0.6 })));
    expect(found.plasticAlone).toBeUndefined();
    expect(found.advice).toEqual({ kind: 'add', because: 'not-overshot' });
  });

  test('cutBack(a cup four times too strong) is a new cup', () => {
    const found = ask(
      cupOf({ 'brown-dye': 2.4, 'white-pearl': 2.4 }),
      lookOf(cupOf({ 'brown-dye': 0.6, 'white-pearl': 0.6 })),
    );
    expect(found.advice.kind).toBe('start-over');
    expect(found.fresh!.deltaE).toBeLessThan(2);
  });

  test('cutBack(a cup without room) says so', () => {
    const found = ask(cupOf({ 'brown-dye': 0.9 }), lookOf(cupOf({ 'brown-dye': 0.3 })), { limits: { roomMl: 120 } });
    expect(found.advice).toEqual({ kind: 'cannot', because: 'no-room', plasticMl: 120, roomMl: 120 });
  });

  test('cutBack(a cup within tolerance) leaves it, and an empty one is a fault', () => {
    const cup = cupOf({ ochre: 0.5 });
    expect(ask(cup, lookOf(cup)).advice.kind).toBe('leave-it');
    expect(ask(cupOf({}, 0), lookOf(cup)).advice.kind).toBe('fault');
  });
});
