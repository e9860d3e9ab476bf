import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { TargetPart } from '../../src/matching/target/target-part.ts';
import { isNoVerdict, thresholdsFor, type Verdict, verdict } from '../../src/matching/target/verdict.ts';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
import { labFromHex } from '../../src/optics/display.ts';
import { expectClose } from '../optics/close.ts';

const part = (overWhite: string, overBlack?: string): TargetPart => ({
  name: 'body',
  overWhite: labFromHex(overWhite),
  ...(overBlack === undefined ? {} : { overBlack: labFromHex(overBlack) }),
  thicknessMm: 6,
});

function judged(seen: readonly [string, string?], target: readonly [string, string?], tolerance = 2): Verdict {
  const { overWhite, overBlack } = part(...seen);
  const result = verdict({ overWhite, ...(overBlack && { overBlack }) }, part(...target), thresholdsFor(tolerance));
  if (isNoVerdict(result)) throw new Error(result.fault);
  return result;
}

describe('words', () => {
  test('verdict(seen, target) names thickness and lightness apart from a hue that is right', () => {
    const found = judged(['#dcc79a', '#7d735d'], ['#d4c092', '#9c8e70']);
    expect(found.sentence).toMatch(
      /^hue within \d\.\d; (much )?too thin: contrast ratio 0\.\d\d against 0\.\d\d; a touch light$/,
    );
    expect(found.within).toBe(false);
    expect(found.thickness!.contrast).toBeLessThan(found.thickness!.target);
  });

  test.each([
    ['too red', ['#a06040'], ['#8c6840']],
    ['too green', ['#708048'], ['#887848']],
    ['dark', ['#604830'], ['#8c6840']],
    ['too weak', ['#887868'], ['#8c6840']],
    ['too strong', ['#a06c20'], ['#96704a']],
  ] as const)('verdict(seen, target) says %s', (words, seen, target) => {
    expect(judged([seen[0]], [target[0]]).sentence).toContain(words);
  });

  test('verdict(seen, target) of a grey calls a cast by its hue, never weak or strong', () => {
    const { sentence } = judged(['#7a6f6f'], ['#747474']);
    expect(sentence).toContain('red');
    expect(sentence).not.toMatch(/weak|strong/);
  });

  test('verdict(seen, target) within tolerance says so first', () => {
    expect(judged(['#8c6840', '#4a3a28'], ['#8d6941', '#4a3a28']).sentence).toMatch(
      /^within tolerance: ΔE 0\.\d; hue within 0\.\d$/,
    );
  });

  test('verdict(seen, target) is never within nothing', () => {
    expect(judged(['#8c6840', '#4a3a28'], ['#8c6840', '#4a3a28']).sentence).toContain('hue within 0.1');
  });

  test('verdict(seen, target) of a target that is black over black is as one that is nearly so', () => {
    const seen = ['#5b4327', '#5b4327'] as const;
    const [black, nearly] = ['#000000', '#010101'].map((overBlack) => judged(seen, ['#5b4327', overBlack]));
    expect(black!.thickness!.within).toBe(false);
    expect(black!.sentence).toContain('much too thick: contrast ratio 1.00 against 0.00');
    expectClose(black!.thickness!.deltaE, nearly!.thickness!.deltaE, 0.6);
    expect(judged(['#5b4327', '#000000'], ['#5b4327', '#000000']).thickness!.within).toBe(true);
    expect(judged(['#000000', '#000000'], ['#000000', '#000000']).thickness!.within).toBe(true);
  });
  test('verdict(seen, target) without a colour over black says nothing of thickness', () => {
    const found = judged(['#8c6840'], ['#8c6840', '#4a3a28']);
    expect(found.thickness).toBeUndefined();
    expect(found.overBlack).toBeUndefined();
  });
});

describe('laws', () => {
  const hex = fc.nat(0xffffff).map((value) => `#${value.toString(16).padStart(6, '0')}`);

  test('verdict(seen, target) has ΔE00 of the views, and of a colour with itself nothing', () => {
    fc.assert(
      fc.property(hex, hex, (one, other) => {
        expectClose(judged([one], [other]).deltaE, deltaE00(labFromHex(one), labFromHex(other)), 1e-9);
        const same = judged([one], [one]);
        expectClose(same.deltaE, 0, 1e-9);
        expect(same.within).toBe(true);
      }),
    );
  });
});

describe('what is no colour', () => {
  test('verdict(seen, target) with NaN is a sentence', () => {
    const result = verdict({ overWhite: { L: Number.NaN, a: 0, b: 0 } }, part('#8c6840'), thresholdsFor(2));
    expect(result).toEqual({
      fault:
        'The colour over white is no colour. Give it as # and six hexadecimal digits, such as #8a5a2b, or as an instrument’s Lab.',
    });
  });

  test('verdict(seen, target) with black and white mixed up says so', () => {
    const result = verdict({ overWhite: labFromHex('#403020') }, part('#403020', '#8c6840'), thresholdsFor(2));
    expect(isNoVerdict(result) && result.fault).toMatch(/exchange them/);
  });

  test('verdict({}, target) asks what was seen', () => {
    const result = verdict({}, part('#403020'), thresholdsFor(2));
    expect(isNoVerdict(result) && result.fault).toMatch(/^Nothing was seen/);
  });
});
