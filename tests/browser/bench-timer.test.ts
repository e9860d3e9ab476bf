import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isUp, keptTimer, timerText, turned } from '../../src/browser/bench-timer.ts';

const NEW = { before: 0, ringAfter: 0 };
const AT = 1_800_000_000_000;

describe('the timer of the bench', () => {
  test.each([
    [0, 0, '0:00'],
    [64.9, 0, '1:04'],
    [3725, 0, '62:05'],
    [0, 90, '1:30'],
    [0.2, 90, '1:30'],
    [89.5, 90, '0:01'],
    [90, 90, '+0:00'],
    [165.5, 90, '+1:15'],
  ])('after %s s, set to %s s, shows %s', (seconds, ringAfter, text) => {
    expect(timerText({ before: 0, since: AT, ringAfter }, AT + seconds * 1000)).toBe(text);
  });

  test('counts what ran, however often it was stopped', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.nat(600), fc.nat(600))), (turns) => {
        let [timer, now, ran] = [keptTimer(null), AT, 0];
        for (const [run, pause] of turns) {
          timer = turned(timer, now);
          now += run * 1000;
          timer = turned(timer, now);
          now += pause * 1000;
          ran += run;
        }
        expect(timerText(timer, now)).toBe(`${Math.floor(ran / 60)}:${String(ran % 60).padStart(2, '0')}`);
      }),
    );
  });

  test('is up when the set time has run, and never without one', () => {
    const timer = { before: 20_000, since: AT, ringAfter: 30 };
    expect([9999, 10_000].map((ms) => isUp(timer, AT + ms))).toEqual([false, true]);
    expect(isUp({ ...timer, ringAfter: 0 }, AT + 1e9)).toBe(false);
  });

  test('comes back as it was kept, and new from anything else', () => {
    const timer = { before: 1, since: AT, ringAfter: 15 };
    expect(keptTimer(JSON.stringify(timer))).toEqual(timer);
    for (const text of [
      null,
      '',
      'x',
      'null',
      '[]',
      '{"before":"1","ringAfter":0}',
      '{"before":0,"ringAfter":1,"since":"x"}',
    ])
      expect(keptTimer(text)).toEqual(NEW);
  });
});
