import sharp from 'sharp';
import { expect, test } from 'vitest';
import type { Appearance } from '../../src/book/model/colours.ts';
import type { Recipe } from '../../src/book/model/recipe.ts';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
import { labFromHex } from '../../src/optics/display.ts';
import { recipeCoats } from '../../src/render/swatch/coat.ts';
import { pour } from '../../src/render/swatch/pour.ts';
import { SAMPLE_BOOK } from './sample-book.ts';

const [WIDTH, HEIGHT] = [720, 480];

/** Mean light of a part of a picture of the recipe's card, as a colour; the part in per cent of its width and height. */
async function meanColour(
  recipe: Recipe,
  [left, right]: readonly [number, number],
  [top, bottom]: readonly [number, number],
): Promise<string> {
  const mold = SAMPLE_BOOK.molds.find(({ id }) => id === recipe.mold)!;
  const drawing = pour(recipeCoats(recipe, mold), { seed: recipe.id, budget: 2000 }).toString();
  const svg = drawing.replace('width="100%" height="100%"', `width="${WIDTH}" height="${HEIGHT}"`);
  const at = (percent: number, size: number): number => Math.round((percent / 100) * size);
  const { data, info } = await sharp(Buffer.from(svg))
    .removeAlpha()
    .extract({
      // A pixel on each edge is a mixture of two parts.
      left: at(left, WIDTH) + 1,
      top: at(top, HEIGHT) + 1,
      width: at(right - left, WIDTH) - 2,
      height: at(bottom - top, HEIGHT) - 2,
    })
    .raw()
    .toBuffer({ resolveWithObject: true });
  const sums = [0, 0, 0];
  for (let pixel = 0; pixel < data.length; pixel += info.channels) {
    for (const channel of [0, 1, 2]) sums[channel]! += linear(data[pixel + channel]!);
  }
  const pixels = data.length / info.channels;
  return `#${sums.map((sum) => coded(sum / pixels)).join('')}`;
}

/** IEC 61966-2-1, of a code 0..255. */
function linear(code: number): number {
  const part = code / 255;
  return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
}

/** Its inverse, as two hexadecimal digits. */
function coded(light: number): string {
  const code = light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055;
  return Math.round(255 * code)
    .toString(16)
    .padStart(2, '0');
}

/** Streaks are not even over a card, so a swirl is not averaged. */
const flaked = SAMPLE_BOOK.recipes.filter(
  ({ pattern, cups }) => pattern !== 'swirl' && cups.some(({ flakes }) => flakes.length > 0),
);

test('there are colours with flake to look at, of one cup and of two', () => {
  expect(new Set(flaked.map(({ cups }) => cups.length)).size).toBeGreaterThan(1);
});

test.each(flaked.map((recipe) => [recipe.id, recipe] as const))(
  'flake and the colour between it are together what %s looks like, on each side, thick and thin',
  async (_, recipe) => {
    const { body, other, thin } = recipe;
    const parts: readonly (readonly [Appearance, readonly [number, number]])[] =
      other === undefined
        ? [
            [body, [0, 72]],
            [thin, [72, 93]],
          ]
        : [
            [body, [0, 48]],
            [other, [48, 76]],
            [thin, [76, 93]],
          ];
    for (const [look, across] of parts) {
      const white = await meanColour(recipe, across, [9, 50]);
      const black = await meanColour(recipe, across, [50, 91]);
      // A screen lays flake over its ground, plastic lies over and under it: near, not the same.
      expect(deltaE00(labFromHex(white), look.overWhite.lab)).toBeLessThan(5);
      expect(deltaE00(labFromHex(black), look.overBlack.lab)).toBeLessThan(5);
    }
  },
);
