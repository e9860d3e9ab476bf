import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { GREY_VALUES } from '../../../src/measuring-card/measuring-card.ts';
import type { CardSignals } from '../../../src/photo/card/card-signals.ts';
import type { CardValues } from '../../../src/photo/card-values.ts';
import { byChannel, CHANNELS } from '../../../src/photo/channels.ts';
import type { LinearRgb } from '../../../src/photo/pixels.ts';
import { printedValues } from '../../../src/photo/tone/printed-values.ts';
import { toneOf } from '../../../src/photo/tone/tone.ts';
import { expectClose } from '../../optics/close.ts';

const grey = (R: number): LinearRgb => byChannel(() => R);
const NOMINAL: CardValues = { scaleMm: 80 };
const CERTIFIED: CardValues = {
  scaleMm: 80,
  paper: { r: 0.86, g: 0.87, b: 0.9 },
  black: grey(0.045),
  greys: [0.5, 0.3, 0.17, 0.09, 0.055].map((R) => ({ r: R, g: R * 1.02, b: R * 0.97 })),
};

/** What a phone makes of a print: each channel's light bent by itself. */
function signalsOf(values: CardValues, phone: (ofPaper: number) => number): CardSignals {
  const { paper, black, greys } = printedValues(values);
  const seen = (R: LinearRgb): LinearRgb => byChannel((channel) => phone(R[channel] / paper[channel]));
  return {
    greys: greys.flatMap((R, step) => [0, 1].map(() => ({ step, signal: seen(R) }))),
    black: seen(black),
  };
}

/** A shoulder: what is light is pressed together, paper stays paper. */
const shoulder = (a: number) => (x: number) => (x * (1 + a)) / (1 + a * x);

describe('toneOf', () => {
  test('a phone that bends nothing: all three tell the same, whether the greys are known or not', () => {
    for (const values of [NOMINAL, CERTIFIED]) {
      const tone = toneOf(
        signalsOf(values, (x) => x),
        values,
      );
      const { paper } = printedValues(values);
      fc.assert(
        fc.property(fc.double({ min: 0, max: 1.2, noNaN: true }), (s) => {
          for (const channel of CHANNELS) {
            expectClose(tone.of(grey(s))[channel], paper[channel] * s, 0.005, `${s}`);
            expectClose(tone.untoned(grey(s))[channel], paper[channel] * s, 1e-12, `${s}`);
          }
        }),
      );
    }
  });

  test('known greys come out as they are, however the phone bends', () => {
    for (const phone of [shoulder(0.9), shoulder(1.5), (x: number) => x ** 0.8, (x: number) => x ** 1.3]) {
      const signals = signalsOf(CERTIFIED, phone);
      const tone = toneOf(signals, CERTIFIED);
      for (const { step, signal } of signals.greys)
        for (const channel of CHANNELS)
          expectClose(tone.of(signal)[channel] / CERTIFIED.greys![step]![channel], 1, 0.03, `${step} ${channel}`);
      expect(tone.trust).toBe(1);
    }
  });

  test('greys between the known ones come out within 2 % behind a shoulder', () => {
    const phone = shoulder(0.9);
    const tone = toneOf(signalsOf({ ...CERTIFIED, paper: grey(0.87) }, phone), { ...CERTIFIED, paper: grey(0.87) });
    for (const R of [0.8, 0.6, 0.4, 0.23, 0.13, 0.07])
      expectClose(tone.of(grey(phone(R / 0.87))).g / R, 1, 0.02, `${R}`);
  });

  test('greys that nobody measured: a strong bend is believed nearly whole, a slight one by half or less', () => {
    const strong = toneOf(signalsOf(NOMINAL, shoulder(3)), NOMINAL);
    const slight = toneOf(
      signalsOf(NOMINAL, (x) => x ** 0.9),
      NOMINAL,
    );
    expect(strong.trust).toBeGreaterThan(0.8);
    expect(slight.trust).toBeLessThan(0.5);
    for (const tone of [strong, slight]) {
      const [of, untoned, curved] = [tone.of, tone.untoned, tone.curved].map((each) => each(grey(0.4)).g) as [
        number,
        number,
        number,
      ];
      expectClose(of, untoned ** (1 - tone.trust) * curved ** tone.trust, 1e-9);
    }
  });

  test('it rises throughout, also where greys are mixed up or clipped, and gives numbers of any light', () => {
    const signal = fc.record({
      r: fc.double({ min: 0, max: 1.05, noNaN: true }),
      g: fc.double({ min: 0, max: 1.05, noNaN: true }),
      b: fc.double({ min: 0, max: 1.05, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(signal, { minLength: 5, maxLength: 5 }), signal, fc.boolean(), (greys, black, certified) => {
        const tone = toneOf(
          { greys: greys.map((each, step) => ({ step, signal: each })), black },
          certified ? CERTIFIED : NOMINAL,
        );
        let before = Number.NEGATIVE_INFINITY;
        for (let s = -0.1; s < 1.3; s += 0.02) {
          const { g } = tone.of(grey(s));
          expect(Number.isFinite(g)).toBe(true);
          expect(g).toBeGreaterThan(before);
          before = g;
        }
      }),
    );
  });

  test('light below nothing, as colours of wide screens have it, stays so', () => {
    const tone = toneOf(signalsOf(CERTIFIED, shoulder(0.9)), CERTIFIED);
    const { r, g, b } = tone.of({ r: -0.05, g: 0.6, b: 0.1 });
    expect(r).toBeLessThan(0);
    expect(Math.min(g, b)).toBeGreaterThan(0);
  });

  test('a grey that the print has not is a fault of the caller', () => {
    expect(() => toneOf({ greys: [{ step: 7, signal: grey(0.4) }], black: grey(0.05) }, NOMINAL)).toThrow(
      /none of the 5/,
    );
  });
});

test('printedValues: paper and black are where a file’s 255 and 0 come out, and the greys in their order between', () => {
  const { paper, black, greys, certified } = printedValues({ scaleMm: 80, paper: grey(0.9) });
  expect(certified).toBe(false);
  expect(greys).toHaveLength(GREY_VALUES.length);
  const falling = [paper, ...greys, black].map(({ g }) => g);
  expect(falling).toEqual([...falling].sort((one, other) => other - one));
  expect(paper.g).toBe(0.9);
});
