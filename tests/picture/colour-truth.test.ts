/**
 * The computed layer against the optics of the book, before flake, light and 8 bits.
 *
 * What a recipe's page says of its bait between the flakes comes from `appearance`, band by band; here it has to come out of tables, pixel by pixel.
 */
import { describe, expect, test } from 'vitest';
import type { Appearance } from '../../src/book/model/colours.ts';
import { picturedRecipe } from '../../src/book/pictured/pictured-recipe.ts';
import { type Lab, labOf } from '../../src/optics/cielab.ts';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
import { labFromLinear } from '../../src/optics/display.ts';
import { stackReflectances } from '../../src/optics/stack.ts';
import { sameCupBehind } from '../../src/optics/streaks.ts';
import { BESIDE_GLOSS } from '../../src/optics/surface.ts';
import type { PATTERNS } from '../../src/patterns/patterns.ts';
import { ColourTable } from '../../src/picture/colour/colour-table.ts';
import type { ComputedColour } from '../../src/picture/colour/computed-colour.ts';
import { sideColour } from '../../src/picture/colour/side-colour.ts';
import { coveredInBoth, streakCover } from '../../src/picture/colour/streak-cover.ts';
import type { PicturedBait, PicturedSide } from '../../src/picture/pictured-bait.ts';
import type { BaitField } from '../../src/shapes/bait-field.ts';
import { required } from '../../src/values/required.ts';
import { WHOLE_DEMO_BOOK as BOOK } from '../render/demo-book.ts';
import { plainField } from './plain-field.ts';

const REPEATABLE = BOOK.recipes;
const VIEWS = ['white', 'black'] as const;

const mean = (values: Float32Array, pixels: readonly number[]): Lab => {
  const channel = (at: number): number =>
    pixels.reduce((sum, pixel) => sum + values[3 * pixel + at]!, 0) / pixels.length;
  return labFromLinear({ r: channel(0), g: channel(1), b: channel(2) });
};

/** ΔE00 of the mean of pixels from what the book says, over white or over black, where it is more. */
function off(colour: ComputedColour, pixels: readonly number[], { overWhite, overBlack }: Appearance): number {
  expect(pixels.length).toBeGreaterThan(10);
  return Math.max(
    deltaE00(mean(colour.white, pixels), overWhite.lab),
    deltaE00(mean(colour.black, pixels), overBlack.lab),
  );
}

const pixelsWhere = ({ cover }: BaitField, holds: (pixel: number) => boolean): readonly number[] =>
  Array.from(cover.keys()).filter((pixel) => cover[pixel]! === 1 && holds(pixel));

/** Pixels of the body within 2 % of its thickness. */
const atBody = (field: BaitField, { mold: { bodyMm } }: PicturedBait): readonly number[] =>
  pixelsWhere(field, (pixel) => field.part[pixel] === 0 && Math.abs(field.thicknessMm[pixel]! / bodyMm - 1) <= 0.02);

const byPattern = (...patterns: readonly (keyof typeof PATTERNS)[]): readonly string[] =>
  REPEATABLE.filter(({ pattern }) => patterns.includes(pattern)).map(({ id }) => id);

function painted(id: string): {
  readonly recipe: (typeof REPEATABLE)[number];
  readonly bait: PicturedBait;
  readonly field: BaitField;
  readonly of: (side: PicturedSide) => ComputedColour;
} {
  const recipe = required(REPEATABLE, id);
  const bait = picturedRecipe(recipe, BOOK);
  const field = plainField(bait.mold);
  return { recipe, bait, field, of: (side) => sideColour(bait, side, field).colour };
}

describe.each(byPattern('solid', 'laminate', 'layered'))('%s', (id) => {
  const { recipe, bait, field, of } = painted(id);
  const { between } = recipe;

  test('is of the colour of its page where it is as thick as its body, and as its thin part', () => {
    const near = of(bait.near);
    expect(off(near, atBody(field, bait), between.body)).toBeLessThan(0.3);
    expect(
      off(
        near,
        pixelsWhere(field, (pixel) => field.part[pixel] === 1),
        between.thin,
      ),
    ).toBeLessThan(0.3);
  });

  test('and so is its other side, where it has one', () => {
    expect(bait.far === undefined).toBe(between.other === undefined);
    if (bait.far && between.other) expect(off(of(bait.far), atBody(field, bait), between.other)).toBeLessThan(0.3);
  });

  test('is all in all what the optics gives for its thicknesses, one by one', () => {
    const pixels = pixelsWhere(field, () => true);
    const seen = of(bait.near);
    const [white, black] = meanOfOptics({ ...bait, near: { ...bait.near, taught: [] } }, field, pixels);
    const plain = sideColour(bait, { ...bait.near, taught: [] }, field).colour;
    expect(deltaE00(mean(plain.white, pixels), white!)).toBeLessThan(0.1);
    expect(deltaE00(mean(plain.black, pixels), black!)).toBeLessThan(0.1);
    // What looks have taught moves it, but not far.
    expect(deltaE00(mean(seen.white, pixels), white!)).toBeLessThan(1);
  });
});

/** Mean colours of pixels of a solid bait or one in layers, over white and over black, from the optics at thicknesses of a 200th of the body's. */
function meanOfOptics(bait: PicturedBait, field: BaitField, pixels: readonly number[]): readonly Lab[] {
  const step = bait.mold.bodyMm / 200;
  const counts = new Map<number, number>();
  for (const pixel of pixels) {
    const bin = Math.round(field.thicknessMm[pixel]! / step);
    counts.set(bin, (counts.get(bin) ?? 0) + 1);
  }
  const sums = [new Float64Array(36), new Float64Array(36)];
  for (const [bin, count] of counts) {
    const layers = bait.near.cups.map(({ cup, share }) => ({
      ...bait.cups[cup]!,
      flakes: [],
      thickness: share * bin * step,
    }));
    const { backings, path } = bait.optics;
    for (const [view, R] of stackReflectances(layers, [backings.white, backings.black], BESIDE_GLOSS, path).entries())
      for (let band = 0; band < 36; band++) sums[view]![band]! += (count * R[band]!) / pixels.length;
  }
  return sums.map((R) => labOf(R));
}

test.each(byPattern('core'))('%s shows its core on the middle line, and its shell alone in the tail', (id) => {
  const { recipe, bait, field, of } = painted(id);
  const colour = of(bait.near);
  const middle = atBody(field, bait).filter(
    (pixel) =>
      Math.abs(field.across[pixel]!) < 0.1 &&
      field.alongMm[pixel]! > bait.mold.bodyMm &&
      field.alongMm[pixel]! < 3 * bait.mold.bodyMm,
  );
  expect(off(colour, middle, recipe.between.body)).toBeLessThan(0.3);
  expect(
    off(
      colour,
      pixelsWhere(field, (pixel) => field.part[pixel] === 1),
      recipe.between.thin,
    ),
  ).toBeLessThan(0.3);
});

test.each(byPattern('striped'))('%s shows its back, and turned round its belly', (id) => {
  const { recipe, bait, field, of } = painted(id);
  const middle = atBody(field, bait).filter((pixel) => Math.abs(field.across[pixel]!) < 0.1);
  expect(off(of(bait.near), middle, recipe.between.body)).toBeLessThan(0.3);
  expect(off(of(bait.far!), middle, recipe.between.other!)).toBeLessThan(0.3);
});

test.each(byPattern('tipped'))('%s has a tip that is its share of the plastic', (id) => {
  const { recipe, bait, field } = painted(id);
  const { colour, runsAt } = sideColour(bait, bait.near, field);
  const all = pixelsWhere(field, () => true);
  const volume = (pixels: readonly number[]): number =>
    pixels.reduce((sum, pixel) => sum + field.thicknessMm[pixel]!, 0);
  const tip = all.filter((pixel) => runsAt(pixel)[0]!.cup === 1);
  expect(volume(tip) / volume(all)).toBeCloseTo(recipe.cups[1]!.share, 2);
  const body = atBody(field, bait).filter((pixel) => field.alongMm[pixel]! < 2 * bait.mold.bodyMm);
  expect(off(colour, body, recipe.between.body)).toBeLessThan(0.3);
  expect(
    off(
      colour,
      all.filter((pixel) => field.part[pixel] === 1 && field.alongMm[pixel]! > 0.9 * bait.mold.lengthMm!),
      recipe.between.thin,
    ),
  ).toBeLessThan(0.3);
});

test.each(byPattern('swirl'))(
  '%s has as much of each cup as it says, near and far, and both in one place as often as its streaks end',
  (id) => {
    const { bait, field } = painted(id);
    const [, { share } = { share: 0 }] = bait.near.cups;
    const { near, far } = streakCover(field, { seed: bait.seed, share, streakMm: bait.streakMm });
    let [all, inNear, inFar, inBoth, expected] = [0, 0, 0, 0, 0];
    for (const [pixel, cover] of field.cover.entries()) {
      const plastic = cover * field.thicknessMm[pixel]!;
      all += plastic;
      inNear += plastic * near[pixel]!;
      inFar += plastic * far[pixel]!;
      inBoth +=
        plastic * coveredInBoth(near[pixel]!, far[pixel]!, sameCupBehind(field.thicknessMm[pixel]!, bait.streakMm));
      expected +=
        plastic * (share ** 2 + sameCupBehind(field.thicknessMm[pixel]!, bait.streakMm) * share * (1 - share));
    }
    expect(Math.abs(inNear / all - share)).toBeLessThan(0.005);
    expect(Math.abs(inFar / all - share)).toBeLessThan(0.005);
    expect(Math.abs(inBoth / all - expected / all)).toBeLessThan(0.005);
  },
);

test('a table is off by no more than ΔE00 0.15 from the optics, for every cup, at any thickness', () => {
  for (const recipe of REPEATABLE) {
    const bait = picturedRecipe(recipe, BOOK);
    const { backings, path } = bait.optics;
    for (const [cup, body] of bait.cups.entries()) {
      const table = new ColourTable(bait, [{ cup, part: 1 }], [], 13);
      const colour = { white: new Float32Array(3), black: new Float32Array(3) };
      for (let mm = 0.1; mm < 13; mm *= 1.037) {
        table.write(mm, colour, 0);
        const exact = stackReflectances(
          [{ ...body, flakes: [], thickness: mm }],
          [backings.white, backings.black],
          BESIDE_GLOSS,
          path,
        );
        for (const [view, name] of VIEWS.entries())
          expect(
            deltaE00(mean(colour[name], [0]), labOf(exact[view]!)),
            `${recipe.id} ${cup} at ${mm} mm over ${name}`,
          ).toBeLessThan(0.15);
      }
    }
  }
});
