/**
 * What a surface of a drawing is coated with: two colours, over white and over black, and the flake in it.
 *
 * @packageDocumentation
 */
import type { Cup, Look, Mold, Recipe, RecipeLook } from '../../book/model.ts';
import type { Depth, FlakeKind } from './flake-field.ts';

export interface Coat {
  readonly white: string;
  readonly black: string;
  readonly flakes: readonly FlakeKind[];
  readonly depth: Depth;
}

/** A coat of a look alone, without flake to be drawn. */
export function plainCoat(look: Look, thicknessMm: number): Coat {
  return {
    white: look.overWhite.hex,
    black: look.overBlack.hex,
    flakes: [],
    depth: { thicknessMm, contrastRatio: look.contrastRatio },
  };
}

/** A cup by itself at the thickness of the body: the colour between its flakes, and the flakes. */
export function cupCoat(cup: Cup, mold: Pick<Mold, 'bodyMm'>): Coat {
  return { ...plainCoat(cup.between, mold.bodyMm), flakes: cup.flakes };
}

/** A cup by itself at the thickness of the thin part. */
export function thinCupCoat(cup: Cup, mold: Pick<Mold, 'thinMm'>): Coat {
  return { ...plainCoat(cup.thin, mold.thinMm), flakes: cup.flakes };
}

/** A recipe as it is drawn: the side that is looked at, the thin part, and what else there is to see. */
export interface Coats {
  readonly body: Coat;
  /** Second cup of a swirl, in streaks over the body. */
  readonly streaks?: { readonly coat: Coat; readonly share: number };
  /** The other side, the tip, or the core alone. */
  readonly other?: Coat;
  readonly thin: Coat;
}

/** Depth of the near part of a body, as thick as its share. */
function nearDepth({ thicknessMm, contrastRatio }: Depth, share: number): Depth {
  return { thicknessMm: thicknessMm * share, contrastRatio: 1 - Math.max(1 - contrastRatio, 1e-6) ** share };
}

/** The coats of a recipe. Where cups are seen through one another, the colour is the whole bait's and the flake the near cup's. */
export function recipeCoats(recipe: Recipe, mold: Mold): Coats {
  const cups = recipe.cups.map((cup) => cupCoat(cup, mold));
  const [near, second] = cups;
  const thin = { ...plainCoat(recipe.thin, mold.thinMm) };
  if (near === undefined) return { body: plainCoat(recipe.body, mold.bodyMm), thin };
  const thinFlakes = { ...thin, flakes: near.flakes };
  const other = recipe.other === undefined ? undefined : plainCoat(recipe.other, mold.bodyMm);
  switch (recipe.pattern) {
    case 'solid':
      return { body: near, thin: thinFlakes };
    case 'swirl':
      return second === undefined
        ? { body: near, thin: thinFlakes }
        : { body: near, streaks: { coat: second, share: recipe.cups[1]!.share }, thin: thinFlakes };
    case 'tipped':
      return second === undefined ? { body: near, thin: thinFlakes } : { body: near, other: second, thin: thinFlakes };
    default: {
      const share = recipe.pattern === 'core' ? recipe.cups[0]!.share / 2 : recipe.cups[0]!.share;
      const body: Coat = {
        ...plainCoat(recipe.body, mold.bodyMm),
        flakes: near.flakes,
        depth: nearDepth(near.depth, share),
      };
      if (other === undefined) return { body, thin: thinFlakes };
      return { body, thin: thinFlakes, other: { ...other, flakes: cups.at(-1)!.flakes, depth: cups.at(-1)!.depth } };
    }
  }
}

/** The coats of a recipe of which only the look is published: its flake is not. */
export function lookCoats(look: RecipeLook): Coats {
  return {
    body: plainCoat(look.body, 1),
    thin: plainCoat(look.thin, 1),
    ...(look.other === undefined ? {} : { other: plainCoat(look.other, 1) }),
  };
}
