/**
 * What a surface of a drawing is coated with: two colours, over white and over black, and the flake in it.
 *
 * @packageDocumentation
 */

import type { Appearance } from '../../book/model/colours.ts';
import type { Cup } from '../../book/model/cup.ts';
import type { Recipe, RecipeLook } from '../../book/model/recipe.ts';
import type { Mold } from '../../book/model/shelf.ts';
import type { Face } from '../../patterns/pattern.ts';
import { faceRuns, PATTERNS } from '../../patterns/patterns.ts';
import type { Run } from '../../patterns/place.ts';
import { defined } from '../../values/defined.ts';
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

/** A cup in streaks: `share` is the part of what lies below that they cover. */
export interface Streak {
  readonly coat: Coat;
  readonly share: number;
}

/** A recipe as it is drawn: the side that is looked at, the thin part, and what else there is to see. */
export interface Coats {
  readonly body: Coat;
  /** Cups of a swirl after the first, in streaks over the body and over one another. */
  readonly streaks: readonly Streak[];
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
  const { faces, thin: thinOf, flank } = PATTERNS[pattern];
  const shares = recipe.cups.map(({ share }) => share);
  const cups = recipe.cups.map((cup) => cupCoat(cup, mold));
  const [near, far] = faces;
  const ground = plainCoat(between.body, mold.bodyMm);
  const body = faceCoat(near, ground, cups, faceRuns(pattern, near, shares));
  const [first] = thinOf === 'body' ? faceRuns(pattern, near, shares) : [{ cup: thinOf.cup, part: 1 }];
  const thinGround = plainCoat(between.thin, mold.thinMm);
  const thin: Coat = {
    ...thinGround,
    flakes: (first && cups[first.cup])?.flakes ?? [],
    depth: nearDepth(thinGround.depth, first?.part ?? 1),
  };
  const streaks = flank === 'streaks' ? streaksOf(cups, shares) : [];
  const other = between.other && plainCoat(between.other, mold.bodyMm);
  return {
    body,
    thin,
    streaks,
    ...defined({ other: far && other && faceCoat(far, other, cups, faceRuns(pattern, far, shares)) }),
  };
}

/** Streaks of the cups after the first. Later ones lie over earlier ones, whose part is so much larger before they do. */
function streaksOf(cups: readonly Coat[], shares: readonly number[]): readonly Streak[] {
  return cups.slice(1).map((coat, index) => {
    const upToIt = shares.slice(0, index + 2).reduce((sum, share) => sum + share, 0);
    return { coat, share: shares[index + 1]! / upToIt };
  });
}

/** A face as it is drawn: its colour with the flake of the cup that lies in front, and that of the next cup behind it. */
function faceCoat(face: Face, ground: Coat, cups: readonly Coat[], runs: readonly Run[]): Coat {
  const [front, next] = runs;
  const cup = front && cups[front.cup];
  if (front === undefined || cup === undefined) return ground;
  // Streaks are drawn over the first cup, not over what they make together.
  if ('mean' in face) return cup;
  const seen = lightThrough(cup, front.part);
  const behind = next && flakesBehind(cups[next.cup], next.part);
  return {
    ...ground,
    flakes: cup.flakes,
    depth: nearDepth(cup.depth, front.part),
    ...(behind !== undefined && seen >= SEEN_THROUGH ? { behind: { ...behind, seen } } : {}),
  };
}

/** The flake of a cup that another is looked at through; undefined where it has none. */
function flakesBehind(cup: Coat | undefined, part: number): Pick<Coat, 'flakes' | 'depth'> | undefined {
  return cup === undefined || cup.flakes.length === 0
    ? undefined
    : { flakes: cup.flakes, depth: nearDepth(cup.depth, part) };
}

/** The coats of a recipe of which only the look is published: its flake is in their colours and not drawn. */
export function lookCoats({ pattern, body, thin, other }: RecipeLook): Coats {
  const coat = other && plainCoat(other, 1);
  const { flank, second } = PATTERNS[pattern];
  const inStreaks = coat !== undefined && second !== undefined && flank === 'streaks';
  return {
    body: plainCoat(body, 1),
    ...defined({ thin: thin && plainCoat(thin, 1), other: inStreaks ? undefined : coat }),
    streaks: inStreaks ? [{ coat, share: second.share }] : [],
  };
}
