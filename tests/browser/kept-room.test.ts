import fc from 'fast-check';
import { expect, test } from 'vitest';
import { keptRoom } from '../../src/browser/match/kept-room.ts';

const HOUR = 60 * 60 * 1000;
const EIGHT = Date.UTC(2026, 2, 12, 20);
const ready = (at: number): string => JSON.stringify({ ticked: ['air'], at, ready: true });

test('a room that was ready is so for the evening, past midnight, and not for the next one', () => {
  expect(keptRoom(ready(EIGHT), EIGHT + 5 * HOUR)).toEqual({ ticked: ['air'], at: EIGHT, ready: true });
  expect(keptRoom(ready(EIGHT), EIGHT + 20 * HOUR)).toEqual({ ticked: [], at: 0, ready: false });
});

test('a room of a clock that was set back, and one that something else wrote, is not ready', () => {
  expect(keptRoom(ready(EIGHT), EIGHT - HOUR).ready).toBe(false);
  for (const text of [null, '', 'yes', '[]', '{"ready":true}', '{"ready":true,"at":"now","ticked":[]}'])
    expect([text, keptRoom(text, EIGHT).ready]).toEqual([text, false]);
});

test('nothing that is kept makes it throw, and only texts are ticked', () => {
  fc.assert(
    fc.property(fc.json(), fc.nat(), (text, now) => {
      for (const tick of keptRoom(text, now).ticked) expect(typeof tick).toBe('string');
    }),
  );
});
