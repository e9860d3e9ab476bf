import type { Recipe } from '../../../../src/book/model/recipe.ts';
import { required } from '../../../../src/values/required.ts';
import { unseenFile } from '../book/log-text.ts';
import type { MakersBook } from '../book/makers-book.ts';
import { pairDifference, type SeenPair } from '../physics/eye.ts';
import { Chance } from '../world/chance.ts';
import { exactCup, randomMixture } from '../world/mixtures.ts';
import { trueLook } from '../world/true-cup.ts';
import type { World } from '../world/world.ts';

/** How far the colours that a book shows are from the truth. */
export interface Missed {
  /** ΔE00, the larger of both views, of each. */
  readonly deltaE: readonly number[];
  /** What the book says that nine in ten stay within, of each. */
  readonly bound: readonly number[];
}

const PLASTIC_ML = 100;

/** So many hidden mixtures, the same for a seed, set against what the book shows for recipes of them that nobody has looked at. */
export function missedUnseen(world: World, book: MakersBook, seed: number, count: number): Missed {
  const chance = new Chance(7000 + seed);
  const mixtures = Array.from({ length: count }, () => randomMixture(world.shelf, PLASTIC_ML, chance));
  const files = mixtures.map((mixture, index) => unseenFile(`unseen-${index}`, PLASTIC_ML, mixture));
  const { recipes } = book.openedWith(files).book;
  return missed(
    mixtures.map((mixture, index) => ({
      recipe: required(recipes, `unseen-${index}`),
      truth: trueLook(exactCup(mixture, PLASTIC_ML), world),
    })),
  );
}

/** Colours shown of recipes, set against the truth. */
export function missed(shown: readonly { readonly recipe: Recipe; readonly truth: SeenPair }[]): Missed {
  return {
    deltaE: shown.map(({ recipe: { body }, truth }) =>
      pairDifference({ white: body.overWhite.lab, black: body.overBlack.lab }, truth),
    ),
    // Every dose is exact here: what measuring adds does not count.
    bound: shown.map(({ recipe }) => recipe.spread.fromMaterials),
  };
}
