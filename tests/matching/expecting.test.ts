import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type CupState, total } from '../../src/cup/ledger.ts';
import { seededRandom } from '../../src/cup/random.ts';
import { expectationOf, leftOf } from '../../src/matching/belief/expecting.ts';
import type { NextAddition } from '../../src/matching/next-addition.ts';
import type { TargetPart } from '../../src/matching/target/target-part.ts';
import type { TwoViews } from '../../src/optics/cup-body.ts';
import { USUAL_OPTICS } from '../../src/optics/optical-model.ts';
import { expectClose } from '../optics/close.ts';
import { type PlainDoubts, plainBelief } from './plain-belief.ts';
import { firstRecipe, nextAddition } from './plain-questions.ts';
import { BENCH, CLEAR, EXACT_BENCH, SHELF, sampleMaterial } from './sample-shelf.ts';

const TOLERANCE = 2;
/** A bottle of which only the label is known, beside one of the same colour that was poured often. */
const ALL = [...SHELF, sampleMaterial('known-brown', 'dye', '#7a4a24'), CLEAR];
const asked = { shelf: ALL, optics: USUAL_OPTICS, bench: BENCH, tolerance: TOLERANCE };

const cupOf = (materials: Readonly<Record<string, number>>, ml = 120): CupState => ({
  plastics: { clear: ml },
  materials,
});
const viewsOf = ({ plastics, materials }: CupState): TwoViews => {
  const ml = total(plastics);
  const contents = Object.entries(materials).map(([name, grams]) => [name, grams / ml] as const);
  return plainBelief(ALL).mean({ layers: [{ plastics: [['clear', 1]], contents, thicknessMm: 6 }] });
};
const targetOf = (cup: CupState, more: Partial<TargetPart> = {}): TargetPart => {
  const { overWhite, overBlack } = viewsOf(cup);
  return { name: 'body', overWhite, overBlack, thicknessMm: 6, ...more };
};
const next = (cup: CupState, target: TargetPart, doubts: PlainDoubts = {}, bench = BENCH): NextAddition =>
  nextAddition({ ...asked, bench, cup, target, belief: plainBelief(ALL, doubts) });

/** A cup of three bottles and half to nine tenths of what is in it. */
const missing = fc.nat(1e6).map((seed) => {
  const random = seededRandom(seed);
  const picked = [...SHELF].sort(() => random() - 0.5).slice(0, 3);
  const whole = Object.fromEntries(picked.map(({ id, typical }) => [id, 120 * typical! * 0.05 ** random()]));
  const part = Object.fromEntries(Object.entries(whole).map(([id, grams]) => [id, grams * (0.5 + 0.4 * random())]));
  return { whole: cupOf(whole), part: cupOf(part) };
});

describe('what is expected of a colour', () => {
  test('is its difference where nothing is in doubt, and else no less than nearly that', () => {
    fc.assert(
      fc.property(missing, missing, fc.double({ min: 0, max: 3, noNaN: true }), ({ whole }, { part }, all) => {
        const contents = Object.entries(part.materials).map(([name, grams]) => [name, grams / 120] as const);
        const cup = { layers: [{ plastics: [['clear', 1]] as const, contents, thicknessMm: 6 }] };
        const target = targetOf(whole);
        const views = plainBelief(ALL).of(cup);
        const left = leftOf(views, target);
        const sure = expectationOf(views, target, TOLERANCE);
        expectClose(sure.expected, left, 1e-9);
        expectClose(sure.bound90, left, 1e-9);
        expect(sure.likely).toBe(left <= TOLERANCE ? 1 : 0);
        const unsure = expectationOf(plainBelief(ALL, { all }).of(cup), target, TOLERANCE);
        // CIEDE2000 bends, so far away a doubt may lead a little nearer.
        expect(unsure.expected).toBeGreaterThan(0.97 * left - 1e-9);
        expect(unsure.bound90).toBeGreaterThan(unsure.expected - 1e-9);
      }),
      { numRuns: 40 },
    );
  });

  test('grows with the doubt of the target as with that of the cup', () => {
    const cup = cupOf({ 'brown-dye': 0.4, 'white-pearl': 0.4 });
    const expectedWith = (axisSd: number, all: number): number =>
      next(cup, targetOf(cup, { axisSd }), { all }).expected!;
    for (const [less, more] of [
      [expectedWith(0, 0), expectedWith(1, 0)],
      [expectedWith(1, 0), expectedWith(2, 0)],
      [expectedWith(0, 0), expectedWith(0, 1)],
    ] as const)
      expect(more).toBeGreaterThan(less + 0.5);
    expectClose(expectedWith(1.5, 0), expectedWith(0, 1.5), 0.1);
  });
});

describe('what is chosen', () => {
  test('a bottle that is known rather than one of the same colour that is not', () => {
    const target = targetOf(cupOf({ 'brown-dye': 0.5, 'white-pearl': 0.5 }));
    const chosen = (unknown: string): readonly string[] =>
      firstRecipe({
        ...asked,
        parts: [target],
        plastic: 'clear',
        plasticMl: 120,
        belief: plainBelief(ALL, { strength: { [unknown]: 0.6 } }),
      }).proposals[0]!.cups[0]!.amounts.map(({ material }) => material);
    expect(chosen('brown-dye')).not.toContain('brown-dye');
    expect(chosen('known-brown')).not.toContain('known-brown');
  });

  test('no large dose of an unknown bottle to mend a small fault', () => {
    const whole = cupOf({ ochre: 0.6, 'white-pearl': 0.6, 'violet-dye': 0.1 });
    const part = cupOf({ ochre: 0.6, 'white-pearl': 0.6 });
    const target = targetOf(whole);
    const shelf = ALL.filter(({ id }) => ['clear', 'ochre', 'white-pearl', 'violet-dye'].includes(id));
    const violet = (sd: number): number => {
      const strength = { 'violet-dye': sd };
      const belief = plainBelief(shelf, { strength });
      const { proposals } = nextAddition({
        ...asked,
        shelf,
        bench: EXACT_BENCH,
        tolerance: 0.5,
        cup: part,
        target,
        belief,
      });
      return proposals[0]?.additions.find(({ material }) => material === 'violet-dye')?.grams ?? 0;
    };
    expectClose(violet(0), 0.1, 0.01);
    expect(violet(0.8)).toBeLessThan(0.09);
    expect(violet(3)).toBeLessThan(violet(0) / 1.9);
  });

  test('no proposal that another is expected to beat by more than making it scatters, unless it is likely right', () => {
    fc.assert(
      fc.property(missing, ({ whole, part }) => {
        const { proposals } = next(part, targetOf(whole), { all: 0.8 });
        const [best] = proposals;
        for (const other of proposals.slice(1))
          expect(best!.likely >= 0.85 || best!.expected < other.expected + 1).toBe(true);
      }),
      { numRuns: 15 },
    );
  });
});

describe('when it stops', () => {
  test('where the cup is likely right', () => {
    const cup = cupOf({ 'brown-dye': 0.4, 'white-pearl': 0.4 });
    const found = next(cup, targetOf(cup), { all: 0.5 });
    expect(found.advice).toMatchObject({ kind: 'leave-it', because: 'likely-right', likely: found.likely });
    expect(found.likely).toBeGreaterThan(0.85);
    expect(next(cup, targetOf(cup), { all: 1.5 }).advice).not.toMatchObject({ because: 'likely-right' });
  });

  test('where a look can tell no more, whatever it was', () => {
    const cup = cupOf({ 'brown-dye': 0.4, 'white-pearl': 0.4 });
    const target = targetOf(cup, { axisSd: 2, means: 'screen' });
    expect(next(cup, target, { all: 0.5 }).advice).toMatchObject({ because: 'as-near-as-looks-tell', tells: 'target' });
    const { axisSd: _, ...sure } = target;
    expect(next(cup, sure, { all: 2 }).advice).toMatchObject({ because: 'as-near-as-looks-tell', tells: 'cup' });
  });

  test('where no step gains enough, and says that nothing gets there only where the doubts rule it out', () => {
    const dyes = ALL.filter(({ id }) => id.endsWith('-dye') || id === 'clear');
    const cup = cupOf({ 'amber-dye': 0.2 });
    const target = targetOf(cupOf({ 'amber-dye': 0.2, 'white-pearl': 0.1 }));
    const ask = (all: number): NextAddition =>
      nextAddition({ ...asked, shelf: dyes, cup, target, belief: plainBelief(dyes, { all }) });
    expect(ask(0).advice.kind).toBe('cannot');
    expect(ask(8).advice).toMatchObject({ kind: 'leave-it', because: 'as-near-as-looks-tell' });
  });

  test('proposes no step that gains less than it costs', () => {
    fc.assert(
      fc.property(missing, fc.double({ min: 0, max: 2, noNaN: true }), ({ whole, part }, all) => {
        const found = next(part, targetOf(whole, { axisSd: all }), { all });
        for (const { expected } of found.proposals) expect(expected).toBeLessThan(found.expected! - 0.25);
        if (found.advice.kind === 'leave-it') expect(found.proposals).toEqual([]);
      }),
      { numRuns: 15 },
    );
  });
});
