import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { CupHeats } from '../../src/cup/heats.ts';
import type { CupState } from '../../src/cup/ledger.ts';
import { baseOfCup } from '../../src/matching/mix/cup-model.ts';
import { type AdditionHeat, additionHeat } from '../../src/matching/proposals/addition-heat.ts';
import { bodyViews } from '../../src/optics/cup-body.ts';
import { USUAL_OPTICS } from '../../src/optics/optical-model.ts';
import { required } from '../../src/values/required.ts';
import { cutBackText } from '../../src/words/cut-back.ts';
import { nextAdditionText } from '../../src/words/next-addition.ts';
import { cutBack, nextAddition } from './plain-questions.ts';
import { BENCH, CLEAR, SHELF } from './sample-shelf.ts';

const shelf = new Map(
  [...SHELF, CLEAR].map((material) => [
    material.id,
    material.id === 'olive' ? { ...material, bears: { from: 2, to: 2 } } : material,
  ]),
);
const cup = (olive: number, ml = 140): CupState => ({ plastics: { clear: ml }, materials: { olive } });
const heats = (more: Partial<CupHeats> = {}): CupHeats => ({
  heats: 2,
  borne: { clear: 2, olive: 2 },
  heatedTo: 170,
  ...more,
});
const plastic = (ml: number): CupState => ({ plastics: { clear: ml }, materials: {} });
const drops: CupState = { plastics: {}, materials: { black: 0.15 } };
const of = (added: CupState, more?: Partial<CupHeats>): AdditionHeat => additionHeat(cup(1), heats(more), added, shelf);

describe('what an addition does to a cup that has had two heats', () => {
  test('additionHeat(35 ml into 140 ml at 170 °C) falls to 140 °C, below the 165 °C where it pours, and costs the third', () => {
    expect(of(plastic(35), { cooled: false })).toMatchObject({
      heat: 3,
      costs: 'falls',
      falls: { from: 170, to: expect.closeTo(140, 0), pours: 165 },
      worn: [{ material: 'olive', heats: 3 }],
    });
  });
  test('additionHeat(drops) costs what the cup has cooled, and only if it has where nobody says', () => {
    expect(of(drops, { cooled: false })).toEqual({ heat: 3, costs: 'no', worn: [] });
    expect(of(drops)).toMatchObject({ costs: 'if-cooled', worn: [{ material: 'olive' }] });
    expect(of(drops, { cooled: true })).toMatchObject({ costs: 'cooled', worn: [{ material: 'olive' }] });
    expect(of(drops, { borne: { clear: 2, olive: 1 } }).worn).toEqual([]);
  });
  test('additionHeat(…) takes the middle of the pouring range where no heat is noted', () => {
    const { heatedTo: _, ...unnoted } = heats();
    expect(additionHeat(cup(1), unnoted, plastic(35), shelf).falls!.from).toBe(171);
  });
  test('law: additionHeat(…) costs a heat of a cold cup whatever goes in, and more cold plastic never warms it', () => {
    const ml = fc.double({ min: 0.1, max: 300, noNaN: true });
    fc.assert(
      fc.property(ml, ml, (some, more) => {
        expect(of(plastic(some), { cooled: true }).costs).toBe('cooled');
        const [one, other] = [of(plastic(some)), of(plastic(some + more))];
        expect(other.falls?.to ?? 170).toBeLessThanOrEqual(one.falls?.to ?? 170);
        if (one.costs === 'falls') expect(other.costs).toBe('falls');
      }),
    );
  });
});

describe('a cup that a heat more would wear out', () => {
  const target = {
    name: 'body',
    ...bodyViews(baseOfCup(cup(0.8), (name) => required(shelf, name), USUAL_OPTICS).mix, 6, USUAL_OPTICS),
    thicknessMm: 6,
  };
  const question = (more?: Partial<CupHeats>) => ({
    cup: cup(0.4),
    target,
    shelf: [...shelf.values()],
    optics: USUAL_OPTICS,
    bench: BENCH,
    tolerance: 2,
    heats: heats(more),
  });
  const UNITS = { volume: 'ml', temperature: '°C' } as const;

  test('nextAddition(…) mends it, says so, and offers a new cup that spares it', () => {
    const found = nextAddition(question({ cooled: true }));
    expect(found.advice.kind).toBe('add');
    expect(found.spares).toBe(true);
    expect(found.startAgain).toBeDefined();
    const text = nextAdditionText(found, UNITS);
    expect(text).toContain('That will be its third heat, one too many: olive bears two. A new cup spares it that: ');
  });
  test('nextAddition(…) offers none while it is hot, or while everything bears it', () => {
    for (const more of [{ cooled: false }, { cooled: true, borne: { clear: 2, olive: 1 } }])
      expect(nextAddition(question(more)).startAgain).toBeUndefined();
  });
  test('cutBack(…) says so of plastic, too', () => {
    const found = cutBack({ ...question({ cooled: true }), cup: cup(1.2) });
    const text = cutBackText(found, UNITS);
    expect(text).toContain('put the plastic in cold');
    expect(text).toContain('one too many: olive bears two');
    expect(text).toContain('A new cup spares it that');
  });
});
