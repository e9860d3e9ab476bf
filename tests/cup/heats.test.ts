import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type CupHistory, type LogStep, readLog } from '../../src/cup/cup-log.ts';
import type { HowLooked } from '../../src/cup/how-looked.ts';

interface Look extends HowLooked {
  readonly overWhite?: string;
}
type Step = LogStep<Look>;

const add = (material: string): Step => ({ kind: 'add', amounts: [{ material, dose: '1 g', grams: 1 }] });
const again = (times = 1): Step => ({ kind: 'heat', again: times });
const heat = (celsius: number): Step => ({ kind: 'heat', celsius });
const held = (heldMinutes: number): Step => ({ kind: 'heat', heldMinutes });
const plastic: Step = { kind: 'plastic', material: 'stout', ml: 5 };
const pour: Step = { kind: 'pour', ml: 1 };
const see = (after?: HowLooked['after']): Step => ({
  kind: 'see',
  looks: [{ overWhite: '#8a6a45', ...(after && { after }) }],
});
const note: Step = { kind: 'note', text: 'dull' };
const begun: Step = { kind: 'new-cup', plastics: { supple: 80 } };
const read = (...steps: readonly Step[]): CupHistory<Look> =>
  readLog({ plastics: { supple: 100 }, materials: {} }, steps, () => 0);

describe('heats of a cup, counted by hand', () => {
  test('readLog(one heat and five reheats, nobody looks) is six, for all that went in at the start', () => {
    const reheats = [170, 172, 175, 178, 181].flatMap((celsius) => [again(), heat(celsius)]);
    const { heats, rounds } = read(add('copper'), heat(168), ...reheats, pour);
    expect(heats).toEqual({ heats: 6, borne: { supple: 6, copper: 6 }, heatedTo: 181, cooled: false });
    expect(rounds.map((round) => [round.heats, round.newHeats, round.heatedTo])).toEqual([[6, 6, 181]]);
  });

  test('readLog(…) counts for each material from the heat in which it went in', () => {
    const { heats, rounds, turns } = read(
      add('rust'),
      pour,
      see(),
      again(),
      add('copper'),
      pour,
      see(),
      again(),
      plastic,
      add('copper'),
      pour,
      see(),
    );
    expect(heats.borne).toEqual({ supple: 3, rust: 3, copper: 2, stout: 1 });
    expect(rounds.map((round) => [round.heats, round.newHeats])).toEqual([
      [1, 1],
      [2, 1],
      [3, 1],
    ]);
    expect(turns.map(({ step, heats: count }) => [step, count])).toEqual([
      [3, 2],
      [7, 3],
    ]);
  });

  test('readLog(what went in with the first of two heats) is borne twice by it, and by the cup three times', () => {
    const { heats } = read(add('rust'), pour, see(), add('copper'), { kind: 'heat', again: 2, ahead: true }, pour);
    expect(heats.borne).toEqual({ supple: 3, rust: 3, copper: 2 });
  });

  test('readLog(a recipe, heated again before its first pour) has all of it borne twice', () => {
    expect(read(add('rust'), { kind: 'heat', again: 1, ahead: true }, pour).heats.borne).toEqual({
      supple: 2,
      rust: 2,
    });
  });

  test('readLog(a new cup) counts from one again, and its time at heat from nothing', () => {
    const { heats, rounds } = read(add('rust'), held(9), again(2), pour, see(), begun, add('rust'), held(4), pour);
    expect(heats).toEqual({ heats: 1, borne: { supple: 1, rust: 1 }, heldMinutes: 4 });
    expect(rounds.map((round) => [round.heats, round.newHeats, round.heldMinutes])).toEqual([
      [3, 3, 9],
      [1, 1, 4],
    ]);
  });

  test.each(['10 min', 'next day'] as const)('readLog(a look %s) costs a heat, noted or not', (after) => {
    const cold = read(add('rust'), pour, see(after));
    expect(cold.heats).toMatchObject({ heats: 1, cooled: true });
    for (const steps of [[add('copper')], [add('copper'), pour], [again(), add('copper'), pour]])
      expect(read(add('rust'), pour, see(after), ...steps).heats.borne).toEqual({ supple: 2, rust: 2, copper: 1 });
    expect(read(add('rust'), pour, see(after), add('copper'), again(), pour).heats.heats).toBe(2);
    expect(read(add('rust'), pour, see(after), pour).heats.heats).toBe(2);
    expect(read(add('rust'), pour, see(after), add('copper')).turns).toMatchObject([{ step: 3, heats: 2 }]);
  });

  test('readLog(a look while hot) costs none', () => {
    expect(read(add('rust'), pour, see('hot'), add('copper'), pour).heats).toMatchObject({ heats: 1 });
  });
});

const STEPS: readonly Step[] = [
  add('rust'),
  add('copper'),
  plastic,
  pour,
  see(),
  see('hot'),
  see('next day'),
  again(),
  again(2),
  { kind: 'heat', again: 1, ahead: true },
  heat(171),
  held(2),
];

describe('heats of a cup, in laws', () => {
  const logs = fc.array(fc.constantFrom(...STEPS), { maxLength: 20 });

  test('law: heats never grow fewer in a cup, no material has borne more than it, and the rounds have them all but the last', () => {
    fc.assert(
      fc.property(logs, (steps) => {
        let before = 1;
        for (let length = 0; length <= steps.length; length++) {
          const { heats, rounds } = read(...steps.slice(0, length));
          expect(heats.heats).toBeGreaterThanOrEqual(before);
          before = heats.heats;
          for (const each of Object.values(heats.borne)) {
            expect(each).toBeGreaterThanOrEqual(1);
            expect(each).toBeLessThanOrEqual(heats.heats);
          }
          const sum = rounds.reduce((all, { newHeats }) => all + newHeats, 0);
          expect(sum).toBe(rounds.at(-1)?.heats ?? 0);
          for (const { newHeats } of rounds) expect(newHeats).toBeGreaterThanOrEqual(0);
        }
      }),
    );
  });

  test('law: a heat more in a log is a heat more at its end, and notes change nothing', () => {
    fc.assert(
      fc.property(logs, fc.nat(20), (steps, at) => {
        const noted = [...steps.slice(0, at), note, ...steps.slice(at)];
        expect(read(...noted).heats).toEqual(read(...steps).heats);
        // What went into a cup that was looked at cold has melted it already.
        const warm = steps.filter((step) => step.kind !== 'see' || step.looks[0]!.after !== 'next day');
        expect(read(...warm, again()).heats.heats).toBe(read(...warm).heats.heats + 1);
      }),
    );
  });

  test('law: heated again between looks or within one round, the count is the same', () => {
    fc.assert(
      fc.property(fc.array(fc.boolean(), { maxLength: 8 }), (looks) => {
        const steps = looks.flatMap((looked) => [...(looked ? [pour, see()] : []), again()]);
        expect(read(add('rust'), ...steps).heats.heats).toBe(1 + looks.length);
      }),
    );
  });
});
