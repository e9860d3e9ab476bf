import { expect, test } from 'vitest';
import type { ToldSlip } from '../../src/matching/rounds/wrong-log.ts';
import { doubtedLookText, wrongLogText } from '../../src/words/doubted-look.ts';

const asked = (...slips: readonly ToldSlip[]): string => wrongLogText({ deltaE: 14, slips });

test('a look that does not fit is asked about in the maker’s own words, the likeliest first', () => {
  expect(
    asked(
      { kind: 'left-out', title: 'Rust', dose: '4 drops', likely: 0.6 },
      { kind: 'swapped', title: 'Rust', instead: 'Rowan', likely: 0.3 },
      { kind: 'bad-look', likely: 0.1 },
    ),
  ).toBe(
    'This look doesn’t fit what the log says: plainly another colour (ΔE 14). Did the 4 drops of Rust go in? Or was it Rowan, not Rust? Or was it another cup that you looked at, or another light?',
  );
});

test('what is unlogged is asked about with about how much it was, what was miscounted with how often', () => {
  expect(asked({ kind: 'extra', title: 'Soot', dose: '2 drops', likely: 1 })).toContain(
    'Did Soot get in that isn’t logged, about 2 drops?',
  );
  expect(asked({ kind: 'extra', title: 'Soot', likely: 1 })).toContain('Did Soot get in that isn’t logged?');
  const times = (each: number): string =>
    asked({ kind: 'miscounted', title: 'Rust', dose: '4 drops', times: each, likely: 1 });
  expect([0.1, 0.5, 2, 10].map(times).map((text) => text.slice(text.indexOf('Did')))).toEqual([
    'Did only a tenth of the 4 drops of Rust go in?',
    'Did only half of the 4 drops of Rust go in?',
    'Did twice the 4 drops of Rust go in?',
    'Did ten times the 4 drops of Rust go in?',
  ]);
});

test('what next to nobody would believe is not asked', () => {
  expect(
    asked({ kind: 'left-out', title: 'Rust', likely: 0.9999 }, { kind: 'bad-look', likely: 0.0001 }),
  ).not.toContain('another light');
});

test('how far a look is believed is said with it', () => {
  expect(doubtedLookText({ weight: 0.053 })).toBe(
    'This look counts for little in what the book has learned (5 %): it doesn’t fit the others.',
  );
  expect(doubtedLookText({ weight: 0.001, wrong: { deltaE: 14, slips: [{ kind: 'bad-look', likely: 1 }] } })).toMatch(
    /write `checked: true` in the look\. Until then it counts for little: less than 1 %\.$/,
  );
});
