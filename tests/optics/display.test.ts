import Color from 'colorjs.io';
import { converter, inGamut, modeLab65, modeLrgb, modeOklab, modeOklch, modeRgb, modeXyz65, useMode } from 'culori/fn';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
import {
  hexFromLab,
  hexFromTristimulus,
  hexOf,
  isHex,
  labFromHex,
  labFromLinear,
  tristimulusFromHex,
} from '../../src/optics/display.ts';
import { solveLinear } from '../../src/optics/linear-system.ts';
import { constantSpectrum } from '../../src/optics/spectrum.ts';
import { whitePoint } from '../../src/optics/tristimulus.ts';
import { LIGHTS } from '../../src/tables/lights.ts';
import { SRGB_WHITE } from '../../src/tables/srgb.ts';
import { hex } from './arbitrary.ts';
import { expectClose } from './close.ts';

useMode(modeRgb);
useMode(modeLrgb);
useMode(modeXyz65);
useMode(modeLab65);
useMode(modeOklab);
useMode(modeOklch);

describe('IEC 61966-2-1', () => {
  const chromaticities = { red: [0.64, 0.33], green: [0.3, 0.6], blue: [0.15, 0.06] } as const;

  test('tristimulusFromHex of the primaries follows from their chromaticities and the white', () => {
    // Each primary is s (x/y, 1, z/y), with the three s such that together they make the white.
    const columns = Object.values(chromaticities).map(([x, y]) => [x / y, 1, (1 - x - y) / y]);
    const matrix = Float64Array.from([0, 1, 2].flatMap((row) => columns.map((column) => column[row]!)));
    const white = [SRGB_WHITE.x / SRGB_WHITE.y, 1, (1 - SRGB_WHITE.x - SRGB_WHITE.y) / SRGB_WHITE.y] as const;
    const scale = Float64Array.from(white);
    expect(solveLinear(matrix, scale)).toBe(true);
    const book = whitePoint('D65');
    ['#ff0000', '#00ff00', '#0000ff'].forEach((primary, i) => {
      const { X, Y, Z } = tristimulusFromHex(primary);
      // On the scale of sRGB's own white.
      expectClose((X / book.X) * white[0], scale[i]! * columns[i]![0]!, 1e-9, `X of ${primary}`);
      expectClose(Y, scale[i]!, 1e-9, `Y of ${primary}`);
      expectClose((Z / book.Z) * white[2], scale[i]! * columns[i]![2]!, 1e-9, `Z of ${primary}`);
    });
  });

  test('Y of tristimulusFromHex of the primaries is 0.2126, 0.7152, 0.0722, as the standard prints them', () => {
    expectClose(tristimulusFromHex('#ff0000').Y, 0.2126, 5e-5);
    expectClose(tristimulusFromHex('#00ff00').Y, 0.7152, 5e-5);
    expectClose(tristimulusFromHex('#0000ff').Y, 0.0722, 5e-5);
  });

  test('tristimulusFromHex codes by the curve of the standard: c/12.92, else ((c + 0.055)/1.055)^2.4', () => {
    for (let code = 0; code < 256; code++) {
      const c = code / 255;
      const linear = c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
      const pair = code.toString(16).padStart(2, '0');
      expectClose(tristimulusFromHex(`#${pair}${pair}${pair}`).Y, linear, 1e-12, `grey ${code}`);
    }
  });
});

describe('agreement with two colour libraries', () => {
  test('labFromHex is culori’s lab65 and colorjs.io’s lab-d65', () => {
    const culori = converter('lab65');
    fc.assert(
      fc.property(hex, (colour) => {
        const ours = labFromHex(colour);
        const { l, a, b } = culori(rgb(colour));
        expectClose(ours.L, l, 1e-9, 'L by culori');
        expectClose(ours.a, a, 1e-9, 'a by culori');
        expectClose(ours.b, b, 1e-9, 'b by culori');
        const [L2, a2, b2] = new Color(colour).to('lab-d65').coords as [number, number, number];
        expectClose(ours.L, L2, 1e-3, 'L by colorjs.io');
        expectClose(ours.a, a2, 5e-3, 'a by colorjs.io');
        expectClose(ours.b, b2, 5e-3, 'b by colorjs.io');
      }),
      { numRuns: 500 },
    );
  });

  test('hexFromLab says that a colour is mapped exactly where culori has it out of the gamut', () => {
    const displayable = inGamut('rgb');
    const coordinate = fc.double({ min: -100, max: 100, noNaN: true });
    fc.assert(
      fc.property(fc.double({ min: 1, max: 99, noNaN: true }), coordinate, coordinate, (L, a, b) => {
        const { mapped } = hexFromLab({ L, a, b });
        const { r, g, b: blue } = converter('rgb')({ mode: 'lab65', l: L, a, b });
        // Within rounding of the border either is right.
        const border = Math.min(Math.abs(Math.min(r, g, blue)), Math.abs(Math.max(r, g, blue) - 1));
        fc.pre(border > 1e-3);
        expect(mapped).toBe(!displayable({ mode: 'lab65', l: L, a, b }));
      }),
      { numRuns: 500 },
    );
  });
});

describe('laws', () => {
  test('hexFromTristimulus undoes tristimulusFromHex for every colour of the screen', () => {
    fc.assert(
      fc.property(hex, (colour) => {
        expect(hexFromTristimulus(tristimulusFromHex(colour))).toEqual({ hex: colour, mapped: false });
        expect(hexFromLab(labFromHex(colour))).toEqual({ hex: colour, mapped: false });
      }),
      { numRuns: 1000 },
    );
  });

  test.each(LIGHTS)('hexOf a perfect reflector is #ffffff, of nothing #000000, of a grey a grey: %s', (light) => {
    expect(hexOf(constantSpectrum(1), light)).toEqual({ hex: '#ffffff', mapped: false });
    expect(hexOf(constantSpectrum(0), light)).toEqual({ hex: '#000000', mapped: false });
    expect(hexOf(constantSpectrum(0.3), light)).toEqual(hexOf(constantSpectrum(0.3)));
    expect(hexOf(constantSpectrum(0.3)).hex).toMatch(/^#(..)\1\1$/);
  });

  test('hexFromLab always gives a colour of the screen, of its own lightness where it is mapped', () => {
    const coordinate = fc.double({ min: -150, max: 150, noNaN: true });
    fc.assert(
      fc.property(fc.double({ min: 5, max: 95, noNaN: true }), coordinate, coordinate, (L, a, b) => {
        const { hex: shown, mapped } = hexFromLab({ L, a, b });
        expect(isHex(shown)).toBe(true);
        if (!mapped) expectClose(deltaE00(labFromHex(shown), { L, a, b }), 0, 1.2, 'eight bits');
        else {
          // CSS Color 4 keeps the lightness of OKLCh, but for the last step, a clip within 0.02.
          const lightness = converter('oklch');
          expectClose(lightness(rgb(shown)).l, lightness({ mode: 'lab65', l: L, a, b }).l, 0.06, 'OKLCh lightness');
        }
      }),
      { numRuns: 500 },
    );
  });

  test('hexOf under incandescent light keeps a yellow yellow: the eye has adapted', () => {
    const yellow = constantSpectrum(0.05).map((low, band) => (band > 13 ? 0.8 : low));
    const difference = deltaE00(labFromHex(hexOf(yellow, 'A').hex), labFromHex(hexOf(yellow).hex));
    expect(difference).toBeGreaterThan(1);
    expect(difference).toBeLessThan(15);
  });
});

test.each(['d9c48f', '#d9c4', '#d9c48g', '', '#d9c48f00', 'red', ' #d9c48f'])(
  'tristimulusFromHex refuses %j',
  (text) => {
    expect(isHex(text)).toBe(false);
    expect(() => tristimulusFromHex(text)).toThrow(RangeError);
  },
);

test('tristimulusFromHex takes three digits and capitals', () => {
  expect(tristimulusFromHex('#fA0')).toEqual(tristimulusFromHex('#ffaa00'));
});

test('hexFromTristimulus refuses what is no number', () => {
  expect(() => hexFromTristimulus({ X: Number.NaN, Y: 0, Z: 0 })).toThrow(/NaN, 0, 0; give finite numbers/);
});

test('labFromLinear of linear light is that of its hex, and as far outside sRGB as a colour library says', () => {
  const linear = converter('lrgb')(rgb('#3a7f55'));
  for (const axis of ['L', 'a', 'b'] as const)
    expect(labFromLinear({ r: linear.r, g: linear.g, b: linear.b })[axis]).toBeCloseTo(labFromHex('#3a7f55')[axis], 9);
  const strong = { r: 0.2, g: 0.8, b: -0.05 };
  const other = converter('lab65')({ mode: 'lrgb', ...strong })!;
  // Both whites are D65; the library's is rounded.
  expect(labFromLinear(strong).a).toBeCloseTo(other.a, 1);
  expect(labFromLinear(strong).b).toBeCloseTo(other.b, 1);
});

function rgb(colour: string): { mode: 'rgb'; r: number; g: number; b: number } {
  const channel = (i: number): number => Number.parseInt(colour.slice(1 + 2 * i, 3 + 2 * i), 16) / 255;
  return { mode: 'rgb', r: channel(0), g: channel(1), b: channel(2) };
}
