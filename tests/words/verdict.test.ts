import { describe, expect, test } from 'vitest';
import { isNoVerdict, thresholdsFor, type Verdict, verdict } from '../../src/matching/target/verdict.ts';
import { labFromHex } from '../../src/optics/display.ts';
import { verdictText } from '../../src/words/verdict.ts';

const views = (overWhite: string, overBlack?: string) => ({
  overWhite: labFromHex(overWhite),
  ...(overBlack === undefined ? {} : { overBlack: labFromHex(overBlack) }),
});

function judged(seen: readonly [string, string?], target: readonly [string, string?]): Verdict {
  const part = { name: 'body', thicknessMm: 6, ...views(...target) };
  const result = verdict(views(...seen), part, thresholdsFor(2));
  if (isNoVerdict(result)) throw new Error(result.fault.kind);
  return result;
}

describe('verdictText', () => {
  test.each([
    [
      'what is wrong, then how it looks, then the size',
      judged(['#dcc79a', '#7d735d'], ['#d4c092', '#9c8e70']),
      'hue is right, much too see-through (hides 30 %, the target 51 %), a touch light: plainly another colour (ΔE 11)',
    ],
    [
      'within tolerance',
      judged(['#8c6840', '#4a3a28'], ['#8d6941', '#4a3a28']),
      'within tolerance: you won’t see it (ΔE 0.4)',
    ],
    ['no target over black', judged(['#887868'], ['#8c6840']), /^[^%]*too dull: /],
    ['a grey with a cast', judged(['#7a6f6f'], ['#747474']), /^much too red(?!.*(dull|vivid))/],
    [
      'too solid',
      judged(['#5b4327', '#5b4327'], ['#5b4327', '#000000']),
      /, much too solid \(hides 100 %, the target 0 %\)/,
    ],
  ])('of %s', (_, found, words) => {
    expect(verdictText(found)).toMatch(
      typeof words === 'string' ? new RegExp(`^${words.replace(/[()]/g, '\\$&')}$`) : words,
    );
  });

  test('says of a pair that was evened that it counts as solid', () => {
    const opacity = { deltaE: 4, size: 'too', towards: 'opaque', contrast: 1, target: 0.8, evened: 'seen' } as const;
    const found = { ...judged(['#8c6840'], ['#8c6840']), deltaE: 4, within: false, opacity };
    expect(verdictText(found)).toBe(
      'hue is right, too solid (hides 100 %, a shade lighter over black and taken as solid, the target 80 %): easy to see (ΔE 4.0)',
    );
  });

  test.each([
    [0.4, 'on paper within tolerance; in plastic: hard to miss (expect ΔE 5.4, nine in ten within 7.6)'],
    [0.9, 'within tolerance: hard to miss (expect ΔE 5.4, nine in ten within 7.6); likely right: 90 %'],
  ])(
    'says of what is predicted and likely right by %s that it is right on paper, or that it is right',
    (likely, words) => {
      const found = judged(['#8c6840', '#4a3a28'], ['#8d6941', '#4a3a28']);
      expect(verdictText(found, { expected: 5.4, bound90: 7.6, likely })).toBe(words);
    },
  );

  test('never says "thin" or "thick", which a bait is in millimetres', () => {
    for (const seen of ['#000000', '#403020', '#9c8e70'])
      expect(verdictText(judged(['#d4c092', seen], ['#d4c092', '#7d735d']))).not.toMatch(/thin|thick/);
  });

  test('of parts that are each right and too much together says so', () => {
    const right = { deltaE: 1.1, size: 'right' } as const;
    const found: Verdict = { deltaE: 2.2, within: false, hue: right, lightness: right, vividness: right };
    expect(verdictText(found)).toBe('hue is right, no part far off: just visible (ΔE 2.2)');
  });
});
