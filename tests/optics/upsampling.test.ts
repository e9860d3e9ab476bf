import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { labOf, tristimulusFromLab } from '../../src/optics/cielab.ts';
import { hexOf, tristimulusFromHex } from '../../src/optics/display.ts';
import { BAND_COUNT, constantSpectrum } from '../../src/optics/spectrum.ts';
import { observerWeights, type Tristimulus, tristimulus, whitePoint } from '../../src/optics/tristimulus.ts';
import { reflectanceFromHex, reflectanceFromTristimulus } from '../../src/optics/upsampling.ts';
import { hex } from './arbitrary.ts';
import { expectClose } from './close.ts';
import { referenceRows, referenceTest } from './reference.ts';

/** Linear RGB of tristimulus values: the inverse of the matrix of sRGB, on the scale of its white. */
function linearRgb({ X, Y, Z }: Tristimulus): number[] {
  const white = whitePoint('D65');
  const x = (X / white.X) * (0.3127 / 0.329);
  const z = (Z / white.Z) * (0.3583 / 0.329);
  return [
    3.2409699419 * x - 1.5373831776 * Y - 0.4986107603 * z,
    -0.9692436363 * x + 1.8759675015 * Y + 0.0415550574 * z,
    0.055630079697 * x - 0.203976958889 * Y + 1.056971514243 * z,
  ];
}

const steepness = (R: ArrayLike<number>): number => {
  let total = 0;
  for (let band = 1; band < R.length; band++)
    total += (Math.atanh(2 * R[band]! - 1) - Math.atanh(2 * R[band - 1]! - 1)) ** 2;
  return total;
};

function checkColour(colour: string): void {
  const R = reflectanceFromHex(colour);
  const [there, back] = [linearRgb(tristimulusFromHex(colour)), linearRgb(tristimulus(R))];
  for (let i = 0; i < 3; i++) expectClose(back[i]!, there[i]!, 1.001e-4, `channel ${i} of ${colour}`);
  expect(hexOf(R)).toEqual({ hex: colour, mapped: false });
  for (const value of R) {
    expect(value).toBeGreaterThan(0);
    expect(value).toBeLessThan(1);
  }
}

describe('round trip', () => {
  test('reflectanceFromHex shows the colour within 1e-4 in linear RGB and lies in (0, 1): 9 × 9 × 9 colours, the corners too', () => {
    const levels = [0, 1, 9, 40, 96, 160, 224, 254, 255];
    for (const r of levels)
      for (const g of levels)
        for (const b of levels)
          checkColour(`#${[r, g, b].map((level) => level.toString(16).padStart(2, '0')).join('')}`);
  });

  test('reflectanceFromHex shows any colour of the screen', () => {
    fc.assert(fc.property(hex, checkColour), { numRuns: 300 });
  });

  test('reflectanceFromTristimulus of a grey is the same in every band', () => {
    const white = whitePoint('D65');
    for (const Y of [0.01, 0.2, 0.5, 0.97]) {
      const R = reflectanceFromTristimulus({ X: Y * white.X, Y, Z: Y * white.Z });
      for (const value of R) expectClose(value, Y * (1 - 2e-4) + 1e-4, 1e-9, `grey ${Y}`);
    }
  });
});

describe('smoothness', () => {
  test('reflectanceFromHex is the flattest: any other reflectance of that colour is steeper', () => {
    const weights = observerWeights(
      Array.from({ length: BAND_COUNT }, (_, band) => 380 + 10 * band),
      'D65',
    );
    fc.assert(
      fc.property(
        hex,
        fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 36, maxLength: 36 }),
        (colour, push) => {
          const R = reflectanceFromHex(colour);
          // Push it, but within what no eye sees: take out what the push does to X, Y and Z (Gram and Schmidt).
          const axes: number[][] = [];
          for (const axis of [weights.x, weights.y, weights.z]) {
            const rest = Array.from(axis);
            for (const other of axes) subtract(rest, other);
            axes.push(rest);
          }
          const unseen = push.slice();
          for (const axis of axes) subtract(unseen, axis);
          const room = Math.min(...R.map((value) => Math.min(value, 1 - value)));
          const other = R.map((value, band) => value + 0.2 * room * unseen[band]!);
          fc.pre(unseen.some((value) => Math.abs(value) > 0.1) && other.every((value) => value > 0 && value < 1));
          expectClose(tristimulus(other).Y, tristimulus(R).Y, 1e-12);
          expect(steepness(other)).toBeGreaterThanOrEqual(steepness(R) - 1e-9);
        },
      ),
      { numRuns: 200 },
    );
  });

  referenceTest(
    'reflectanceFromTristimulus lies within 0.06 of one of the two published smooth reflectances of a colour',
    () => {
      const XYZ = { X: 0.20654008, Y: 0.12197225, Z: 0.05136952 };
      const rows = referenceRows('upsampling_published.csv').slice(1);
      const published = (method: string): Map<number, number> =>
        new Map(rows.filter((row) => row[0] === method).map((row) => [Number(row[1]), Number(row[2])]));
      const meng = published('meng2015_xyz');
      // The published sums run over 360–780 nm at 10 nm, which the tables here know from 380 nm on.
      const grid = [...meng.keys()].filter((wavelength) => wavelength >= 380);
      const { x, y, z, white } = observerWeights(grid, 'D65');
      const sum = (weights: Float64Array): number =>
        grid.reduce((total, wavelength, i) => total + weights[i]! * meng.get(wavelength)!, 0);
      expectClose(sum(x), XYZ.X, 2e-5, 'X of the published reflectance');
      expectClose(sum(y), XYZ.Y, 2e-5, 'Y of the published reflectance');
      expectClose(sum(z), XYZ.Z, 2e-5, 'Z of the published reflectance');
      // On the book's grid the same colour, by its ratio to the white.
      const book = whitePoint('D65');
      const R = reflectanceFromTristimulus({
        X: (XYZ.X / white.X) * book.X,
        Y: XYZ.Y,
        Z: (XYZ.Z / white.Z) * book.Z,
      });
      const jakob = published('jakob2019_xyz');
      // Three ways to be smooth: they agree where the eye looks, and part at the ends of the spectrum.
      for (const wavelength of grid.filter((each) => each >= 440 && each <= 620)) {
        const ours = R[(wavelength - 380) / 10]!;
        const nearest = Math.min(Math.abs(ours - meng.get(wavelength)!), Math.abs(ours - jakob.get(wavelength)!));
        expectClose(nearest, 0, 0.06, `distance to the nearer of the two at ${wavelength} nm`);
      }
    },
  );
});

describe('colours that no reflectance shows', () => {
  test.each([
    ['brighter than white', { L: 120, a: 0, b: 0 }],
    ['darker than black', { L: -5, a: 0, b: 0 }],
    ['a red of impossible strength', { L: 50, a: 150, b: 0 }],
    ['a green of impossible lightness', { L: 99, a: -60, b: 60 }],
    ['a black that is violet', { L: 0, a: 128, b: -128 }],
  ])('reflectanceFromTristimulus of %s is a reflectance of about its lightness', (_, lab) => {
    const R = reflectanceFromTristimulus(tristimulusFromLab(lab));
    for (const value of R) {
      expect(value).toBeGreaterThan(0);
      expect(value).toBeLessThan(1);
    }
    expectClose(labOf(R).L, Math.min(100, Math.max(0, lab.L)), 0.2, 'L');
  });

  test('reflectanceFromTristimulus never gives NaN nor throws for finite numbers', () => {
    const number = fc.double({ min: -2, max: 3, noNaN: true });
    fc.assert(
      fc.property(number, number, number, (X, Y, Z) => {
        for (const value of reflectanceFromTristimulus({ X, Y, Z })) expect(value > 0 && value < 1).toBe(true);
      }),
      { numRuns: 200 },
    );
  });

  test('reflectanceFromTristimulus refuses what is no number', () => {
    expect(() => reflectanceFromTristimulus({ X: Number.NaN, Y: 1, Z: 1 })).toThrow(RangeError);
  });
});

test('reflectanceFromHex gives a new array each time', () => {
  expect(reflectanceFromHex('#808080')).not.toBe(reflectanceFromHex('#808080'));
  expect(constantSpectrum(1)).toHaveLength(reflectanceFromHex('#808080').length);
});

/** Takes out of `from` its part along `axis`. */
function subtract(from: number[], axis: readonly number[]): void {
  const dot = (one: readonly number[], other: readonly number[]): number =>
    one.reduce((total, value, i) => total + value * other[i]!, 0);
  const share = dot(from, axis) / dot(axis, axis);
  for (let i = 0; i < from.length; i++) from[i]! -= share * axis[i]!;
}
