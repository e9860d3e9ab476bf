import { differenceCiede2000 } from 'culori';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { colourApart } from '../../src/book/recipes/colour-apart.ts';
import { labFromHex } from '../../src/optics/display.ts';
import { oklabHue } from '../../src/optics/oklab-hue.ts';

/** Another program's, of sRGB under its own white D65. */
const apart = differenceCiede2000();

const hexes = fc.integer({ min: 0, max: 0xffffff }).map((value) => `#${value.toString(16).padStart(6, '0')}`);

test('colourApart(hex, ΔE) is as far from the colour as a screen can show', () => {
  fc.assert(
    fc.property(hexes, fc.double({ min: 0.3, max: 25, noNaN: true }), (hex, deltaE) => {
      // A step of a screen is up to 0.5 where it is dark, and the two reckon with white to four digits.
      expect(Math.abs(apart(hex, colourApart(hex, deltaE)) - deltaE)).toBeLessThan(0.6);
    }),
    { numRuns: 300 },
  );
});

test('it is of the same hue', () => {
  for (const hex of ['#8a6a44', '#3d4a1c', '#d8b54a', '#27468c', '#a23b2c']) {
    const turn = Math.abs(oklabHue(labFromHex(hex)) - oklabHue(labFromHex(colourApart(hex, 8))));
    expect(Math.min(turn, 360 - turn)).toBeLessThan(12);
  }
});

test('no difference is the colour itself', () => {
  expect(colourApart('#8a6a44', 0)).toBe('#8a6a44');
});
