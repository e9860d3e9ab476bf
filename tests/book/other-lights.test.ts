import { expect, test } from 'vitest';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
import { labFromHex } from '../../src/optics/display.ts';
import { bookWith, file } from './sample.ts';

const book = bookWith({
  'shelf/colorants/blue.md': file('title: Blue\nlook: { kind: dye, colour: "#2f5fb3", dose: 10 drops per 100 ml }'),
  'colours/blue-hour.md': file(
    'title: Blue Hour\npattern: solid\ncups:\n  body:\n    plastic: 100 ml supple\n    add: { blue: 5 drops }',
  ),
});

test('a recipe under another light changes by as much as its swatches show', () => {
  let compared = 0;
  for (const { body, lights } of book.recipes) {
    for (const { name, body: other, deltaE } of lights) {
      const views = [body.overWhite, body.overBlack, other.overWhite, other.overBlack];
      if (views.some(({ mapped }) => mapped)) continue;
      // Only one of two is rounded to eight bits: of two dark ones that alone can be ΔE 2.
      const shown = Math.max(
        deltaE00(body.overWhite.lab, labFromHex(other.overWhite.hex)),
        deltaE00(body.overBlack.lab, labFromHex(other.overBlack.hex)),
      );
      expect(Math.abs(shown - deltaE), name).toBeLessThan(0.7);
      compared += 1;
    }
  }
  expect(compared).toBeGreaterThanOrEqual(3);
});

test('a recipe says in words how a light changes it wherever that is to be seen', () => {
  for (const { lights } of book.recipes) {
    for (const { name, deltaE, words } of lights)
      expect([name, deltaE < 1.5 || words.length > 0]).toEqual([name, true]);
  }
});
