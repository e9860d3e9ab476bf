import { describe, expect, test } from 'vitest';
import { picturedLook } from '../../src/book/pictured/pictured-look.ts';
import { picturedRecipe } from '../../src/book/pictured/pictured-recipe.ts';
import { lookOnly } from '../../src/book/publish/look-only.ts';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
import { labFromHex, labFromLinear } from '../../src/optics/display.ts';
import { baitPicture } from '../../src/picture/bait-picture.ts';
import { sideColour } from '../../src/picture/colour/side-colour.ts';
import type { Raster } from '../../src/picture/raster.ts';
import { required } from '../../src/values/required.ts';
import { DEMO_BOOK, WHOLE_DEMO_BOOK } from '../render/demo-book.ts';
import { plainField } from './plain-field.ts';

const hexAt = ({ rgb, columns }: Raster, column: number, row: number): string =>
  `#${[0, 1, 2].map((channel) => rgb[3 * (row * columns + column) + channel]!.toString(16).padStart(2, '0')).join('')}`;

describe('a laminate', () => {
  const recipe = required(DEMO_BOOK.recipes, 'crowfoot');
  const bait = picturedRecipe(recipe, DEMO_BOOK);
  const field = plainField(bait.mold);
  const middle = [Math.round(field.noseX + 25 * field.pixelsPerMm), Math.round(field.noseY)] as const;

  test('shows its first side, and turned round the other', () => {
    const near = baitPicture(bait, field, 'near');
    const far = baitPicture(bait, field, 'far');
    const mirrored = [field.columns - 1 - middle[0], middle[1]] as const;
    // Light moves a colour, but not as far as from one side to the other.
    const { body, other } = recipe.between;
    const off = (hex: string, asked: string): number => deltaE00(labFromHex(hex), labFromHex(asked));
    for (const view of ['overWhite', 'overBlack'] as const) {
      const [shown, turned] = [hexAt(near[view], ...middle), hexAt(far[view], ...mirrored)];
      expect(off(shown, body[view].hex)).toBeLessThan(off(shown, other![view].hex));
      expect(off(turned, other![view].hex)).toBeLessThan(off(turned, body[view].hex));
    }
  });
});

describe('a look-only recipe', () => {
  test('is of the colours that are published of it, before light', () => {
    expect(DEMO_BOOK.looks.length).toBeGreaterThan(0);
    for (const look of DEMO_BOOK.looks) {
      const bait = picturedLook(look);
      const field = plainField(bait.mold);
      const { colour } = sideColour(bait, bait.near, field);
      const at = 3 * (Math.round(field.noseY) * field.columns + Math.round(field.noseX + 25 * field.pixelsPerMm));
      const [r, g, b] = colour.white.subarray(at, at + 3);
      const lab = labFromLinear({ r: r!, g: g!, b: b! });
      expect(deltaE00(lab, labFromHex(look.body.overWhite.hex)), look.id).toBeLessThan(1);
    }
  });

  test.each(WHOLE_DEMO_BOOK.recipes.map(({ id }) => id))('%s hangs on nothing else of its recipe', (id) => {
    const recipe = required(WHOLE_DEMO_BOOK.recipes, id);
    const look = lookOnly(recipe, WHOLE_DEMO_BOOK);
    const cups = recipe.cups.map((cup) => ({
      ...cup,
      share: 1 / recipe.cups.length,
      contents: cup.contents.map((content) => ({ ...content, gramsPerMl: 2 * content.gramsPerMl })),
    }));
    const other = lookOnly({ ...recipe, cups, notes: '', streakMm: 7 }, WHOLE_DEMO_BOOK);
    expect(picturedLook(other)).toEqual(picturedLook(look));
    // Nor has it any of the numbers of the shelf.
    const told = new Set(
      picturedRecipe(recipe, WHOLE_DEMO_BOOK).cups.flatMap(({ absorption, scattering }) => [
        ...absorption,
        ...scattering,
      ]),
    );
    told.delete(0);
    const shown = picturedLook(look).cups.flatMap(({ absorption, scattering }) => [...absorption, ...scattering]);
    expect(shown.filter((value) => told.has(value))).toEqual([]);
  });
});
