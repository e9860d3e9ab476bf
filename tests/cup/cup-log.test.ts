import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type LogStep, readLog } from '../../src/cup/cup-log.ts';
import type { HowLooked } from '../../src/cup/how-looked.ts';
import { type CupState, total } from '../../src/cup/ledger.ts';

interface Look extends HowLooked {
  readonly overWhite?: string;
  readonly overBlack?: string;
  readonly reflectance?: object;
  readonly doubt?: { readonly bound: number };
  readonly note?: string;
}

const START: CupState = { plastics: { supple: 100 }, materials: {} };
const add = (grams = 1): LogStep<Look> => ({
  kind: 'add',
  amounts: [{ material: 'peat', dose: `${grams} g`, grams }],
});
const NOTHING: LogStep<Look> = { kind: 'add', amounts: [] };
const pour = (ml: number): LogStep<Look> => ({ kind: 'pour', ml });
const see = (look: Look = { overWhite: '#8a6a45' }): LogStep<Look> => ({ kind: 'see', looks: [look] });
const thin = (ml: number): LogStep<Look> => ({ kind: 'plastic', material: 'supple', ml });
const newCup = (ml: number): LogStep<Look> => ({ kind: 'new-cup', plastics: { supple: ml } });
const read = (...steps: readonly LogStep<Look>[]): ReturnType<typeof readLog<Look>> => readLog(START, steps, () => 0);

/** First step, what was poured and what was seen of each round. */
const rounds = (...steps: readonly LogStep<Look>[]): readonly unknown[] =>
  read(...steps).rounds.map(({ first, pouredMl, seen }) => [first, pouredMl, seen[0]?.overWhite, seen[0]?.overBlack]);

describe('where a round ends', () => {
  test('readLog(…) begins another where something goes in after a pour or a look', () => {
    expect(rounds(add(), pour(14), add(), see(), thin(10), pour(5))).toEqual([
      [0, 14, undefined, undefined],
      [2, 0, '#8a6a45', undefined],
      [4, 5, undefined, undefined],
    ]);
    expect(rounds(add(), add(), thin(3), see())).toHaveLength(1);
  });

  test('readLog(…) begins another with a pour that is looked at after a look; baits that are poured at last are none', () => {
    expect(rounds(add(), pour(14), see(), pour(3), pour(10), see(), pour(60))).toEqual([
      [0, 14, '#8a6a45', undefined],
      [3, 73, '#8a6a45', undefined],
    ]);
  });

  test('readLog(…) takes over white, then over black for one look, and the same backing again for another', () => {
    const white = { overWhite: '#8a6a45' };
    const black = { overBlack: '#3a2a25' };
    expect(rounds(add(), pour(9), see(white), see(black), see(black))).toEqual([
      [0, 9, '#8a6a45', '#3a2a25'],
      [4, 0, undefined, '#3a2a25'],
    ]);
  });

  test('readLog(over white, then over black) keeps what was noted and measured of both, and the larger doubt', () => {
    const white = { overWhite: '#8a6a45', reflectance: { overWhite: [0.4] }, doubt: { bound: 9 }, note: 'hazy' };
    const black = { overBlack: '#3a2a25', reflectance: { overBlack: [0.1] }, doubt: { bound: 1 }, note: 'dark' };
    const both = { reflectance: { overWhite: [0.4], overBlack: [0.1] }, doubt: { bound: 9 } };
    const seen = (...steps: readonly LogStep<Look>[]): unknown => read(add(), pour(9), ...steps).rounds[0]!.seen;
    expect(seen(see(white), see(black))).toEqual([{ ...white, ...black, ...both, note: 'hazy dark' }]);
    expect(seen(see(black), see(white))).toEqual([{ ...white, ...black, ...both, note: 'dark hazy' }]);
    expect(seen(see({ note: 'hazy' }), see({ overBlack: '#3a2a25' }))).toEqual([
      { overBlack: '#3a2a25', note: 'hazy' },
    ]);
  });

  test('readLog(…) begins another with a new cup, and what goes into that belongs to it', () => {
    expect(rounds(add(), pour(9), see(), pour(60), newCup(80), add(), pour(7), see())).toEqual([
      [0, 69, '#8a6a45', undefined],
      [4, 7, '#8a6a45', undefined],
    ]);
    expect(rounds(add(), newCup(80), thin(10), add(), newCup(70))).toHaveLength(3);
  });

  test('readLog(…) gives heat and notes to the round that goes on', () => {
    const { rounds: all } = read(
      { kind: 'heat', celsius: 170 },
      add(),
      pour(14),
      see(),
      { kind: 'heat', celsius: 175, again: 1 },
      pour(10),
      { kind: 'heat', celsius: 172 },
      { kind: 'note', text: 'a little dull' },
      see(),
      { kind: 'note', text: 'left to cool' },
    );
    expect(all.map(({ heatedTo, newHeats, note }) => [heatedTo, newHeats, note])).toEqual([
      [170, 1, undefined],
      [175, 1, 'a little dull left to cool'],
    ]);
  });

  test('readLog(…) says which look has nothing before it that went in, nor that nothing did', () => {
    const unlogged = (...steps: readonly LogStep<Look>[]): readonly unknown[] =>
      read(...steps).rounds.map((round) => round.unlogged);
    expect(unlogged(pour(14), see())).toEqual([undefined]);
    expect(unlogged(add(), see(), pour(14), see())).toEqual([undefined, true]);
    expect(unlogged(add(), see(), NOTHING, pour(14), see())).toEqual([undefined, undefined]);
    expect(unlogged(add(), see(), thin(5), pour(14), see())).toEqual([undefined, undefined]);
    expect(unlogged(add(), see(), newCup(90), pour(14), see())).toEqual([undefined, undefined]);
    // A note alone is no colour.
    expect(unlogged(add(), see(), add(), see({ note: 'dull' }), pour(14), see())).toEqual([
      undefined,
      undefined,
      undefined,
    ]);
  });
});

describe('what a log leaves', () => {
  test('readLog(…) keeps the cup of each round before its pour and after it, and the sum of the notes', () => {
    const { rounds: all, left, last, naive } = read(add(2), pour(50), see(), add(1), pour(50));
    expect(all.map(({ cup, left: after }) => [cup.materials.peat, after.materials.peat])).toEqual([
      [2, 1],
      [2, 0],
    ]);
    expect(total(left.plastics)).toBe(0);
    expect(last).toEqual({ plastics: { supple: 50 }, materials: { peat: 2 } });
    expect(naive).toEqual({ plastics: { supple: 100 }, materials: { peat: 3 } });
  });

  test('readLog(…) has what was in a cup before a new one, and leaves that alone with what it was begun with', () => {
    const { rounds: all, left, last, naive } = read(add(2), pour(50), see(), newCup(80), add(1), pour(40));
    expect(all.map(({ pouredAway }) => pouredAway)).toEqual([
      undefined,
      { plastics: { supple: 50 }, materials: { peat: 1 } },
    ]);
    expect(left).toEqual({ plastics: { supple: 40 }, materials: { peat: 0.5 } });
    expect(last).toEqual(left);
    expect(naive).toEqual({ plastics: { supple: 80 }, materials: { peat: 1 } });
    const { last: poured } = read(add(2), pour(50), newCup(80), add(1), pour(80));
    expect(poured).toEqual({ plastics: { supple: 80 }, materials: { peat: 1 } });
  });

  test('readLog(a pour of more than there is) leaves it out', () => {
    const { left, rounds: all } = read(pour(30), pour(71), pour(70));
    expect(total(left.plastics)).toBe(0);
    expect(all.map(({ pouredMl }) => pouredMl)).toEqual([100]);
  });

  test('readLog(looks of one step) are of one pour; what was looked at otherwise is a look beside it', () => {
    const hot: Look = { overWhite: '#8a6a45', after: 'hot' };
    const cold: Look = { overWhite: '#7a5a35', after: 'next day' };
    const looks = (...steps: readonly LogStep<Look>[]): readonly (readonly Look[])[] =>
      read(...steps).rounds.map(({ seen }) => seen);
    expect(looks(add(), pour(9), { kind: 'see', looks: [hot, cold] })).toEqual([[hot, cold]]);
    expect(looks(add(), pour(9), see(hot), see({ overBlack: '#3a2a25', after: 'hot' }))).toEqual([
      [{ ...hot, overBlack: '#3a2a25' }],
    ]);
    const black: Look = { overBlack: '#3a2a25', thicknessMm: 2 };
    expect(looks(add(), pour(9), see(hot), see(black))).toEqual([[hot, black]]);
    // What has settled since is another look, over whichever backing.
    const nextDay: Look = { overBlack: '#3a2a25', after: 'next day' };
    expect(looks(add(), pour(9), see(hot), see(nextDay))).toEqual([[hot], [nextDay]]);
    expect(looks(add(), pour(9), see(hot), see({ note: 'hazy', after: 'next day' }))).toHaveLength(1);
    // Over the same backing a step later is another look at the cup, as it always was.
    expect(looks(add(), pour(9), see(hot), see(cold))).toEqual([[hot], [cold]]);
  });

  const step: fc.Arbitrary<LogStep<Look>> = fc.oneof(
    fc.double({ min: 0, max: 5, noNaN: true }).map(add),
    fc.double({ min: 0.1, max: 40, noNaN: true }).map(pour),
    fc.double({ min: 0.1, max: 40, noNaN: true }).map(thin),
    fc
      .record({ overWhite: fc.constant('#8a6a45'), overBlack: fc.constant('#3a2a25') }, { requiredKeys: [] })
      .map((look) => see(look)),
    fc.constant(NOTHING),
    fc.double({ min: 1, max: 120, noNaN: true }).map(newCup),
  );

  test('readLog(any log) loses nothing: what went in is what was poured and what is left, round by round', () => {
    fc.assert(
      fc.property(fc.array(step, { maxLength: 20 }), (steps) => {
        const { rounds: all, left } = read(...steps);
        expect(all.map(({ number }) => number)).toEqual(all.map((_, index) => index + 1));
        let before = START;
        let begun = 0;
        for (const { first, added, plasticAddedMl, pouredMl, pouredAway, cup, left: after } of all) {
          const step = steps[first]!;
          if (pouredAway) {
            expect(step.kind).toBe('new-cup');
            expect(pouredAway).toEqual(before);
            before = { plastics: step.kind === 'new-cup' ? step.plastics : {}, materials: {} };
            begun++;
          }
          const grams = added.reduce((sum, each) => sum + each.grams, 0);
          expect(total(cup.plastics)).toBeCloseTo(total(before.plastics) + plasticAddedMl, 8);
          expect(total(cup.materials)).toBeCloseTo(total(before.materials) + grams, 8);
          expect(total(after.plastics)).toBeCloseTo(total(cup.plastics) - pouredMl, 8);
          before = after;
        }
        expect(left).toEqual(before);
        expect(begun).toBe(steps.filter(({ kind }) => kind === 'new-cup').length);
      }),
    );
  });

  test('readLog(any log, and more of it) keeps the rounds but the last one or two as they were', () => {
    fc.assert(
      fc.property(fc.array(step, { maxLength: 12 }), fc.array(step, { maxLength: 3 }), (steps, more) => {
        const [before, after] = [read(...steps).rounds, read(...steps, ...more).rounds];
        expect(after.length).toBeGreaterThanOrEqual(before.length);
        const settled = Math.max(0, before.length - 1);
        expect(after.slice(0, settled)).toEqual(before.slice(0, settled));
      }),
    );
  });
});
