import { expect, test } from 'vitest';
import { learn } from '../../src/learning/learn.ts';
import type { LearnedShelf } from '../../src/learning/learned-shelf.ts';
import type { TaughtLook } from '../../src/learning/learning-data.ts';
import { packedShelf, unpackedShelf } from '../../src/learning/packed-shelf.ts';
import { shelfInFull } from '../../src/learning/shelf-in-full.ts';
import { shelfUnknowns } from '../../src/learning/shelf-unknowns.ts';
import { USUAL_OPTICS } from '../../src/optics/optical-model.ts';
import { keptBook } from './kept-book.ts';

/** A look of every sort: over one card, of two layers, of cups side by side, by cameras, and looked at again. */
function everySort(looks: readonly TaughtLook[]): readonly TaughtLook[] {
  return looks.map((look, index): TaughtLook => {
    const { overBlack, overWhite, ...others } = look;
    const layers = [...look.layers, { ...look.layers[0]!, thicknessMm: 2 }];
    switch (index % 7) {
      case 0:
        return { ...others, overWhite: overWhite! };
      case 1:
        return { ...others, overBlack: overBlack! };
      case 2:
        return { ...look, layers };
      case 3:
        return { ...look, layers, streaks: [0.25, 0.75], ...(index % 2 === 0 ? { streakMm: 3 } : {}) };
      case 4:
        return { ...look, means: 'screen', camera: index % 2 === 0 ? '1' : '2', axisSd: 1.15 };
      case 5:
        return { ...look, checked: true };
      default:
        return look;
    }
  });
}

const unpacked = (shelf: LearnedShelf): LearnedShelf =>
  unpackedShelf(JSON.parse(JSON.stringify(packedShelf(shelf))), shelf);

test('unpackedShelf(packedShelf(shelf)) is the shelf, but for what cups and looks are called', () => {
  const data = keptBook({ seed: 5, materials: 5, recipes: 14, rounds: 3 });
  const shelf = learn({ ...data, looks: everySort(data.looks) });
  const doubted = { ...shelf, weights: { ...shelf.weights, cups: { [shelf.data.looks[4]!.cup]: { 1: 0.5 } } } };
  const again = unpacked(doubted);
  const renamed = new Map(again.data.looks.map(({ cup }, place) => [cup, doubted.data.looks[place]!.cup]));
  expect(renamed.size).toBe(new Set(shelf.data.looks.map(({ cup }) => cup)).size);
  const named = again.data.looks.map((look, place) => ({
    ...look,
    key: doubted.data.looks[place]!.key,
    cup: renamed.get(look.cup)!,
  }));
  const cups = Object.entries(again.weights.cups).map(([cup, rounds]) => [renamed.get(cup)!, rounds] as const);
  expect({
    ...again,
    data: { ...again.data, looks: named },
    weights: { ...again.weights, cups: Object.fromEntries(cups) },
  }).toEqual(doubted);
  expect(JSON.stringify(packedShelf(doubted))).not.toMatch(/r00\d\d/);
});

test('what is learned from an unpacked shelf is what is learned from the shelf', () => {
  const data = keptBook({ seed: 6, materials: 4, recipes: 10, rounds: 2 });
  const shelf = learn({ ...data, looks: everySort(data.looks) });
  const again = learn(unpacked(shelf).data);
  expect(again.theta).toEqual(shelf.theta);
  expect(again.constants).toEqual(shelf.constants);
});

test('a shelf of 40 materials takes at most 150 kB, of 300 looks and of 5,000', () => {
  for (const [recipes, count] of [
    [100, 300],
    [1667, 600],
  ] as const) {
    const data = keptBook({ seed: 7, materials: 40, recipes, rounds: 3 });
    const theta = Array.from({ length: shelfUnknowns(data).count }, (_, at) => Number(Math.sin(at).toFixed(4)));
    const weights = data.looks.map(() => 1);
    const labels = Object.fromEntries(data.materials.map(({ id, labels }) => [id, labels.map(() => 1)]));
    const shelf: LearnedShelf = {
      data,
      theta,
      weights: { looks: weights, looksAlone: weights, cups: {}, labels },
      optics: USUAL_OPTICS,
      constants: {},
    };
    const inFull = shelfInFull(shelf);
    expect(inFull.data.looks.length).toBeGreaterThan(count - 10);
    expect(inFull.data.looks.length).toBeLessThanOrEqual(count);
    expect(inFull.weights.looks.length).toBe(inFull.data.looks.length);
    expect(JSON.stringify(packedShelf(inFull)).length).toBeLessThanOrEqual(150_000);
  }
});
