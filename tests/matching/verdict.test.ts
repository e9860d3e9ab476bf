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
  if (isNoVerdict(result)) throw new Error(result.fault.kind);
  return result;
}

describe('parts', () => {
  test('verdict(seen, target) names opacity and lightness apart from a hue that is right', () => {
    const found = judged(['#dcc79a', '#7d735d'], ['#d4c092', '#9c8e70']);
    expect(found.hue.size).toBe('right');
    expect(found.lightness).toMatchObject({ size: 'touch', towards: 'light' });
    expect(found.opacity).toMatchObject({ size: expect.stringMatching(/^(too|much)$/), towards: 'clear' });
    expect(found.within).toBe(false);
    expect(found.opacity!.contrast).toBeLessThan(found.opacity!.target);
  });

  test.each([
    ['hue', 'much', 'red', '#a06040', '#8c6840'],
    ['hue', 'much', 'green', '#708048', '#887848'],
    ['lightness', 'much', 'dark', '#604830', '#8c6840'],
    ['vividness', 'much', 'dull', '#887868', '#8c6840'],
    ['vividness', 'much', 'vivid', '#a06c20', '#96704a'],
  ] as const)('verdict(seen, target) judges %s: %s %s', (part, size, towards, seen, target) => {
    expect(judged([seen], [target])[part]).toMatchObject({ size, towards });
  });

  test('verdict(seen, target) of a grey calls a cast by its hue, never dull or vivid', () => {
    const { hue, vividness } = judged(['#7a6f6f'], ['#747474']);
    expect(hue.towards).toBe('red');
    expect(vividness).toEqual({ deltaE: 0, size: 'right' });
  });

  test('verdict(seen, target) of a colour with itself is off to no side', () => {
    const { within, hue, lightness, vividness, opacity } = judged(['#8c6840', '#4a3a28'], ['#8c6840', '#4a3a28']);
    expect(within).toBe(true);
    for (const each of [hue, lightness, vividness, opacity!]) {
      expect(each.size).toBe('right');
      expect(each.towards).toBeUndefined();
    }
  });

  test('verdict(seen, target) of a target that is black over black is as one that is nearly so', () => {
    const seen = ['#5b4327', '#5b4327'] as const;
    const [black, nearly] = ['#000000', '#010101'].map((overBlack) => judged(seen, ['#5b4327', overBlack]));
    expect(black!.opacity).toMatchObject({ size: 'much', towards: 'opaque', contrast: 1, target: 0 });
    expectClose(black!.opacity!.deltaE, nearly!.opacity!.deltaE, 0.6);
    expect(judged(['#5b4327', '#000000'], ['#5b4327', '#000000']).opacity!.size).toBe('right');
    expect(judged(['#000000', '#000000'], ['#000000', '#000000']).opacity!.size).toBe('right');
  });
  test('verdict(seen, target) without a colour over black says nothing of opacity', () => {
    const found = judged(['#8c6840'], ['#8c6840', '#4a3a28']);
    expect(found.opacity).toBeUndefined();
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
  test('verdict(seen, target) with NaN has a fault', () => {
    const result = verdict({ overWhite: { L: Number.NaN, a: 0, b: 0 } }, part('#8c6840'), thresholdsFor(2));
    expect(result).toEqual({ fault: { kind: 'no-colour', over: 'white' } });
  });

  test('verdict(seen, target) with black and white mixed up says so', () => {
    const result = verdict({ overWhite: labFromHex('#403020') }, part('#403020', '#8c6840'), thresholdsFor(2));
    expect(result).toEqual({ fault: { kind: 'reversed' } });
  });

  test('verdict({}, target) asks what was seen', () => {
    const result = verdict({}, part('#403020'), thresholdsFor(2));
    expect(result).toEqual({ fault: { kind: 'not-seen' } });
  });
});
