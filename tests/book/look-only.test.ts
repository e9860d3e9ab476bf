import { describe, expect, test } from 'vitest';
import type { Appearance } from '../../src/book/model/colours.ts';
import type { Recipe } from '../../src/book/model/recipe.ts';
import type { Book } from '../../src/book/model.ts';
import { coarseLab, HEAVY_FLAKE, LOOK_STEP, lookOnly } from '../../src/book/publish/look-only.ts';
import { publishedBook } from '../../src/book/publish/published-book.ts';
import { labFromHex } from '../../src/optics/display.ts';
import { bookWith, file, recipeOf } from './sample.ts';

const BOOK = bookWith({
  'shelf/flakes/dust.md': file('title: Dust\nsize: 0.015 in\nlook: { colour: "#b46a3c" }'),
  'colours/veil.md': file(
    'title: Veil\nmold: minnow\ncups:\n  body:\n    plastic: 90 ml supple\n    add: { frost: 2 %, peat: 3 drops }',
  ),
  'colours/pair.md': file(
    'title: Pair\nmold: minnow\npattern: laminate\ncups:\n  back:\n    plastic: 90 ml supple\n    add: { peat: 20 drops }\n  belly:\n    plastic: 90 ml supple\n    add: { frost: 3 % }',
  ),
});
const PATTERNS = ['laminate', 'layered', 'swirl', 'tipped', 'core'] as const;
const withPattern = (pattern: Recipe['pattern']): Recipe =>
  recipeOf(
    bookWith({
      'colours/pair.md': recipeOf(BOOK, 'pair').source.text.replace('laminate', pattern),
    }),
    'pair',
  );
const looksOf = (look: ReturnType<typeof lookOnly>): readonly Appearance[] =>
  [look.body, look.thin, look.other].filter((part) => part !== undefined);

describe('lookOnly(recipe, book)', () => {
  test('gives four colours: a body and its thin part, or the two sides', () => {
    const veil = lookOnly(recipeOf(BOOK, 'veil'), BOOK);
    expect(Object.keys(veil).sort()).toEqual(['body', 'facets', 'flake', 'id', 'pattern', 'shape', 'thin', 'title']);
    for (const pattern of PATTERNS) {
      const look = lookOnly(withPattern(pattern), BOOK);
      expect([pattern, looksOf(look).length]).toEqual([pattern, 2]);
      // A core by itself is seen by nobody.
      expect([pattern, look.other !== undefined]).toEqual([pattern, pattern !== 'core']);
    }
  });
  test('shows each of two cups that lie beside one another, not the mean that no eye sees', () => {
    for (const pattern of ['swirl', 'tipped'] as const) {
      const recipe = withPattern(pattern);
      const look = lookOnly(recipe, BOOK);
      expect([look.body, look.other].map((part) => part!.overWhite.lab)).toEqual(
        recipe.cups.map(({ body }) => coarseLab(body.overWhite.lab, LOOK_STEP)),
      );
    }
  });
  test('rounds L, a and b to the step, no further than half of it, and hex and contrast follow', () => {
    expect(LOOK_STEP).toBeGreaterThanOrEqual(2);
    for (const recipe of BOOK.recipes) {
      const look = lookOnly(recipe, BOOK);
      for (const part of looksOf(look)) {
        for (const { lab, hex, mapped } of [part.overWhite, part.overBlack]) {
          for (const value of [lab.L, lab.a, lab.b]) expect(Number.isInteger(value / LOOK_STEP)).toBe(true);
          if (mapped) continue;
          const drawn = labFromHex(hex);
          for (const axis of ['L', 'a', 'b'] as const) expect(Math.abs(drawn[axis] - lab[axis])).toBeLessThan(1);
        }
        expect(part.contrastRatio).toBeGreaterThan(0);
        expect(part.contrastRatio).toBeLessThanOrEqual(1);
      }
      for (const view of ['overWhite', 'overBlack'] as const) {
        for (const axis of ['L', 'a', 'b'] as const) {
          expect(Math.abs(look.body[view].lab[axis] - recipe.body[view].lab[axis])).toBeLessThanOrEqual(LOOK_STEP / 2);
        }
      }
    }
    // JSON keeps no −0.
    expect(Object.is(coarseLab({ L: 1, a: -0.2, b: 0 }, LOOK_STEP).a, 0)).toBe(true);
  });
  test('has one word for the flake, from a quarter of the lines of sight on another', () => {
    const recipe = recipeOf(BOOK, 'veil');
    const flaked = (...coverages: readonly number[]): string => {
      const flakes = coverages.map((coverage) => ({ coverage }) as Recipe['cups'][number]['flakes'][number]);
      return lookOnly({ ...recipe, cups: [{ ...recipe.cups[0]!, flakes }] }, BOOK).flake;
    };
    expect(flaked()).toBe('none');
    expect(flaked(HEAVY_FLAKE - 0.01)).toBe('light');
    expect(flaked(HEAVY_FLAKE)).toBe('heavy');
    expect(flaked(0.14, 0.14)).toBe('heavy');
  });
});

describe('a recipe with publish: look', () => {
  const published = (front: string, more: Readonly<Record<string, string>> = {}): Book =>
    publishedBook(bookWith({ 'colours/veil.md': file(`title: Veil\npublish: look\n${front}`), ...more }));
  const plain = 'mold: minnow\ncups:\n  body:\n    plastic: 90 ml supple\n    add: { frost: 2 %, peat: 3 drops }';

  test('tells by no byte of the book what does not change its look', () => {
    const told = JSON.stringify(published(plain));
    for (const other of [
      'mold: minnow\ncups:\n  body:\n    plastic: 90 ml supple\n    add: { peat: 3 drops, frost: 2.01 % }',
      'mold: minnow\nmade: 2026-04-01\ntags: [quiet]\ncups:\n  first:\n    plastic: 180 ml supple\n    add: { frost: 2 %, peat: 6 drops }',
      'mold: minnow\ncups:\n  body:\n    plastic: 90 ml supple\n    log:\n      - { add: { frost: 2 % }, heat: 170 °C }\n      - { seen: { over-white: "#b09468" } }\n      - { add: { peat: 3 drops } }',
    ]) {
      expect(JSON.stringify(published(other))).toBe(told);
    }
    expect(JSON.stringify(published(plain.replace('3 drops', '30 drops')))).not.toBe(told);
  });
  test('is tied to none that tells its amounts: not by what it comes from, what comes from it, nor a cup', () => {
    const book = published('from: smoke\ncups:\n  body:\n    from: smoke/body\n    add: { frost: 1 % }');
    expect(recipeOf(book, 'smoke').children).toEqual([]);
    expect(recipeOf(book, 'smoke').cupsIn).toEqual([]);
    expect(book.families.every(({ members }) => members.length === 1)).toBe(true);
    const child = published(plain, {
      'colours/child.md': file('title: Child\nfrom: veil\npublish: full\ncups:\n  body: { add: { peat: 1 drop } }'),
    });
    expect(recipeOf(child, 'child').parent).toBeUndefined();
    expect(recipeOf(child, 'child').cups[0]!.from).toBeUndefined();
    expect(recipeOf(child, 'child').source.text).not.toMatch(/from: *veil/);
    expect(child.families.every(({ members }) => members.length === 1)).toBe(true);
  });
});
