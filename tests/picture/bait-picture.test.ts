import { describe, expect, test } from 'vitest';
import { picturedLook } from '../../src/book/pictured/pictured-look.ts';
import { picturedRecipe } from '../../src/book/pictured/pictured-recipe.ts';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
import { labFromHex } from '../../src/optics/display.ts';
import { baitPicture } from '../../src/picture/bait-picture.ts';
import type { Raster } from '../../src/picture/raster.ts';
import { required } from '../../src/values/required.ts';
import { DEMO_BOOK } from '../render/demo-book.ts';
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
    // 8 bits, a screen that cannot show all, and a thickness between whole pixels.
    const off = (hex: string, asked: string): number => deltaE00(labFromHex(hex), labFromHex(asked));
    expect(off(hexAt(near.overWhite, ...middle), recipe.between.body.overWhite.hex)).toBeLessThan(1);
    expect(off(hexAt(near.overBlack, ...middle), recipe.between.body.overBlack.hex)).toBeLessThan(1);
    expect(off(hexAt(far.overWhite, ...mirrored), recipe.between.other!.overWhite.hex)).toBeLessThan(1);
    expect(off(hexAt(far.overBlack, ...mirrored), recipe.between.other!.overBlack.hex)).toBeLessThan(1);
  });
});

test('look-only recipes are drawn from what is published of them', () => {
  expect(DEMO_BOOK.looks.length).toBeGreaterThan(0);
  for (const look of DEMO_BOOK.looks) {
    const bait = picturedLook(look);
    const field = plainField(bait.mold);
    const { overWhite } = baitPicture(bait, field, 'near');
    const hex = hexAt(overWhite, Math.round(field.noseX + 25 * field.pixelsPerMm), Math.round(field.noseY));
    expect(deltaE00(labFromHex(hex), labFromHex(look.body.overWhite.hex)), look.id).toBeLessThan(1);
  }
});
