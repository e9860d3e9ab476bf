import { expect, test } from 'vitest';
import { Belief } from '../../src/learning/belief.ts';
import { learn } from '../../src/learning/learn.ts';
import { learnNearly } from '../../src/learning/learn-nearly.ts';
import type { LearnedShelf } from '../../src/learning/learned-shelf.ts';
import type { LearningData, TaughtLook } from '../../src/learning/learning-data.ts';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
import { simulatedBook } from './simulated-book.ts';

const { data } = simulatedBook({ seed: 3, materials: 8, recipes: 12, rounds: 3 });
const AT = 15;
const LOOK = data.looks[AT]!;
const changed = (change: (look: TaughtLook) => TaughtLook): LearningData => ({
  ...data,
  looks: data.looks.map((look, index) => (index === AT ? change(look) : look)),
});
const greener = (by: number, more: Partial<TaughtLook> = {}): LearningData =>
  changed((look) => ({ ...look, ...more, overWhite: { ...look.overWhite!, a: look.overWhite!.a - by } }));
const without = { ...data, looks: data.looks.filter((_, index) => index !== AT) };
const [whole, before] = [learn(data), learn(without)];

/** How far two shelves are apart in the cup of that look, ΔE00. */
function apart(one: LearnedShelf, other: LearnedShelf): number {
  const [here, there] = [one, other].map((shelf) => new Belief(shelf).mean({ layers: LOOK.layers, cup: LOOK.cup }));
  return Math.max(deltaE00(here!.overWhite, there!.overWhite), deltaE00(here!.overBlack, there!.overBlack));
}

test('of the cup of one look more it believes what learn() does', () => {
  expect(apart(before, whole)).toBeGreaterThan(0.3);
  expect(apart(learnNearly(data, before), whole)).toBeLessThan(0.05);
});

test.each([
  ['one look less', without],
  ['a look that is a little off', greener(1)],
  ['one that is half believed', greener(5)],
  ['one that is far from everything', greener(80)],
  ['one by a camera', greener(1, { camera: '1' })],
])('so it does with %s', (_, now) => {
  const all = learn(now);
  const near = learnNearly(now, whole);
  expect(apart(near, all)).toBeLessThan(0.05);
  for (const [i, weight] of all.weights.looks.entries()) expect(near.weights.looks[i]).toBeCloseTo(weight, 1);
});

test('it may begin with a shelf that lacks a material', () => {
  const gone = LOOK.layers[0]!.contents[0]![0];
  const fewer = {
    materials: data.materials.filter(({ id }) => id !== gone),
    looks: data.looks.filter(({ layers }) => !layers.some(({ contents }) => contents.some(([id]) => id === gone))),
  };
  expect(fewer.looks.length).toBeLessThan(data.looks.length);
  expect(apart(learnNearly(data, learn(fewer)), whole)).toBeLessThan(0.5);
});
