import { describe, expect, test } from 'vitest';
import type { Appearance } from '../../src/book/model/colours.ts';
import type { Recipe } from '../../src/book/model/recipe.ts';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
import { PATTERN_NAMES, PATTERNS, type Pattern } from '../../src/patterns/patterns.ts';
import { bookWith, file, projectFile, recipeOf } from './sample.ts';

const CLOUDY = '{ peat: 5 drops, frost: 1/8 tsp }';
const DARK = '{ peat: 60 drops }';

/** A bait of a pattern, of two cups: the second a fifth of it. */
function poured(pattern: Pattern, first: string, second: string): Recipe {
  const cups =
    PATTERNS[pattern].cups.most === 1
      ? `  one: { plastic: 80 ml supple, add: ${first} }`
      : `  one: { plastic: 80 ml supple, add: ${first} }\n  two: { share: 20 %, plastic: 80 ml supple, add: ${second} }`;
  const front = `title: Smoke\nmold: minnow\npattern: ${pattern}\ncups:\n${cups}`;
  return recipeOf(bookWith({ 'colours/smoke.md': file(front) }), 'smoke');
}

const apart = (one: Appearance, other: Appearance): number =>
  Math.max(deltaE00(one.overWhite.lab, other.overWhite.lab), deltaE00(one.overBlack.lab, other.overBlack.lab));

const MANY = PATTERN_NAMES.filter((pattern) => PATTERNS[pattern].cups.most > 1);

describe('a bait', () => {
  test.each(MANY)('%s of two cups that are the same looks as a solid one', (pattern) => {
    const solid = poured('solid', CLOUDY, CLOUDY);
    const { body, other, thin } = poured(pattern, CLOUDY, CLOUDY);
    for (const side of [body, ...(other ? [other] : [])]) expect(apart(side, solid.body)).toBeLessThan(0.02);
    expect(apart(thin, solid.thin)).toBeLessThan(0.02);
  });

  test.each(MANY)('%s shows its second cup somewhere', (pattern) => {
    const { body, other } = poured(pattern, CLOUDY, DARK);
    const alike = poured(pattern, CLOUDY, CLOUDY);
    expect(Math.max(apart(body, alike.body), other && alike.other ? apart(other, alike.other) : 0)).toBeGreaterThan(
      1.5,
    );
  });

  test.each(MANY.filter((pattern) => PATTERNS[pattern].thin !== 'body'))('%s has a thin part of one cup', (pattern) => {
    const { thin } = PATTERNS[pattern];
    const { thin: seen, cups } = poured(pattern, CLOUDY, DARK);
    expect(thin === 'body' ? undefined : apart(seen, cups[thin.cup]!.thin)).toBeLessThan(0.02);
  });
});

test('a stripe lies under the body from above, and before it from below', () => {
  const clear = '{ peat: 1 drop }';
  const { body, other, cups } = poured('striped', clear, DARK);
  const [own, stripe] = cups;
  // Through a clear body one sees the stripe from both sides.
  expect(body.overWhite.lab.L).toBeLessThan(own!.body.overWhite.lab.L - 10);
  // Of a body that hides, the back shows nothing of it, and the belly shows it in front.
  const hiding = '{ frost: 4 tsp }';
  const covered = poured('striped', hiding, DARK);
  expect(apart(covered.body, covered.cups[0]!.body)).toBeLessThan(1);
  expect(apart(covered.other!, covered.cups[0]!.body)).toBeGreaterThan(10);
  expect(stripe!.share).toBeCloseTo(0.2, 9);
  expect(other!.overWhite.lab.L).toBeLessThan(own!.body.overWhite.lab.L);
});

test('the manual lists every pattern', () => {
  const row = /^\| `pattern` \|([^|]*)\|/m.exec(projectFile('site/manual/files.md'))![1]!;
  expect(row.match(/[a-z]+/g)).toEqual([...PATTERN_NAMES]);
});
