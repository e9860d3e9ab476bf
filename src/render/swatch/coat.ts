/**
 * What a surface of a drawing is coated with: two colours, over white and over black, and the flake in it.
 *
 * @packageDocumentation
 */
import type { Appearance, Cup, Mold, Recipe, RecipeLook } from '../../book/model.ts';
import type { Depth, FlakeKind } from './flake-field.ts';
import { BLACK_CARD, luminance, WHITE_CARD } from './tint.ts';

export interface Coat {
  readonly white: string;
  readonly black: string;
  readonly flakes: readonly FlakeKind[];
  readonly depth: Depth;
  /** Flake of the next cup, seen through this one. */
  readonly behind?: { readonly flakes: readonly FlakeKind[]; readonly depth: Depth; readonly seen: number };
}

/** A coat of a look alone, without flake to be drawn. */
export function plainCoat(look: Appearance, thicknessMm: number): Coat {
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

/** A cup by itself at the thickness of the thin part: as a whole, its flake in its colour and not drawn once more. */
export function thinCupCoat(cup: Cup, mold: Pick<Mold, 'thinMm'>): Coat {
  return plainCoat(cup.thin, mold.thinMm);
}

/** A recipe as it is drawn: the side that is looked at, the thin part, and what else there is to see. */
export interface Coats {
  readonly body: Coat;
  /** Second cup of a swirl, in streaks over the body. */
  readonly streaks?: { readonly coat: Coat; readonly share: number };
  /** The other side, the tip, or the core alone. */
  readonly other?: Coat;
  /** Absent of a look-only recipe with two sides. */
  readonly thin?: Coat;
}

/** Flake behind a layer that leaves it less light than this is not drawn: it changes the whole by less than ΔE00 2. */
const SEEN_THROUGH = 0.5;

/**
 * Light that goes through a layer and back, as thick as its share of the body: what a white card behind it adds to a black
 * one, by the same for the bare cards. A dark dye hides flake without hiding a card's edge, so contrast would not do.
 */
function lightThrough({ white, black }: Coat, share: number): number {
  const added = (luminance(white) - luminance(black)) / (luminance(WHITE_CARD) - luminance(BLACK_CARD));
  return Math.min(1, Math.max(0, added)) ** share;
}

/** Depth of the near part of a body, as thick as its share. */
function nearDepth({ thicknessMm, contrastRatio }: Depth, share: number): Depth {
  return { thicknessMm: thicknessMm * share, contrastRatio: 1 - Math.max(1 - contrastRatio, 1e-6) ** share };
}

/**
 * The coats of a recipe. Where cups are seen through one another, the colour is the whole bait's and the flake the near cup's.
 *
 * The colours are those between the flakes: laid over colours that hold the flake already, it would count twice.
 */
export function recipeCoats(recipe: Recipe, mold: Pick<Mold, 'bodyMm' | 'thinMm'>): Coats & { readonly thin: Coat } {
  const { between, pattern } = recipe;
  const cups = recipe.cups.map((cup) => cupCoat(cup, mold));
  const [near, second] = cups;
  const thin = plainCoat(between.thin, mold.thinMm);
  if (near === undefined) return { body: plainCoat(between.body, mold.bodyMm), thin };
  const thinNear: Coat = { ...thin, flakes: near.flakes };
  switch (pattern) {
    case 'solid':
      return { body: near, thin: thinNear };
    case 'swirl':
      return second === undefined
        ? { body: near, thin: thinNear }
        : { body: near, streaks: { coat: second, share: recipe.cups[1]!.share }, thin: thinNear };
    case 'tipped':
      return second === undefined ? { body: near, thin: thinNear } : { body: near, other: second, thin: thinNear };
    default: {
      const shares = recipe.cups.map(({ share }, index) => (pattern === 'core' && index === 0 ? share / 2 : share));
      /** A side's colour with the flake of a cup in its layer, and that of the next cup behind it. */
      const side = (ground: Coat, at: number, next: number): Coat => {
        const depth = nearDepth(cups[at]!.depth, shares[at]!);
        const seen = lightThrough(cups[at]!, shares[at]!);
        const behind = cups[next];
        const shown = behind !== undefined && behind.flakes.length > 0 && seen >= SEEN_THROUGH;
        return {
          ...ground,
          flakes: cups[at]!.flakes,
          depth,
          ...(shown ? { behind: { flakes: behind.flakes, depth: nearDepth(behind.depth, shares[next]!), seen } } : {}),
        };
      };
      const body = side(plainCoat(between.body, mold.bodyMm), 0, 1);
      const thinLayer: Coat = { ...thinNear, depth: nearDepth(thin.depth, shares[0]!) };
      if (between.other === undefined) return { body, thin: thinLayer };
      const ground = plainCoat(between.other, mold.bodyMm);
      const last = cups.length - 1;
      // A core is shown alone; the far layer of others lies there as thick as its share, the one before it behind it.
      const other =
        pattern === 'core'
          ? { ...ground, flakes: cups[last]!.flakes, depth: cups[last]!.depth }
          : side(ground, last, last - 1);
      return { body, thin: thinLayer, other };
    }
  }
}

/** The coats of a recipe of which only the look is published: its flake is in their colours and not drawn. */
export function lookCoats({ pattern, body, thin, other }: RecipeLook): Coats {
  const second = other && plainCoat(other, 1);
  return {
    body: plainCoat(body, 1),
    ...(thin === undefined ? {} : { thin: plainCoat(thin, 1) }),
    ...(second === undefined
      ? {}
      : pattern === 'swirl'
        ? { streaks: { coat: second, share: 1 / 2 } }
        : { other: second }),
  };
}
