/**
 * What is published of a recipe with `publish: look`, so that its look can be shown and its amounts cannot be reckoned back from it
 * further than from the bait itself.
 *
 * @packageDocumentation
 */

import { tristimulusFromLab } from '../../optics/cielab.ts';
import { hexFromLab } from '../../optics/display.ts';
import { PATTERNS } from '../../patterns/patterns.ts';
import { defined } from '../../values/defined.ts';
import { required } from '../../values/required.ts';
import type { Appearance, Colour, Lab } from '../model/colours.ts';
import type { Cup } from '../model/cup.ts';
import type { FlakeLoad, Recipe, RecipeLook } from '../model/recipe.ts';
import type { Book } from '../model.ts';
import { lookFacets } from '../recipes/facets.ts';

/**
 * Step that L, a and b of a look-only recipe are rounded to.
 *
 * Chosen by `npm run bench look-secrets`, over the 21 solid and laminated recipes of the demo book as if only their look were known. At 6 only
 * one stays open, a strong pigment in plastic, which 8 does not close either (tried on 20 of them, without `thunder-over-chapel`); at 4 there are two. No two tiles fall together
 * up to 8. A colour that is shown is off by ΔE00 2.0 in the mean and 3.0 at most; at 8 it would be 2.7 and 4.1.
 */
export const LOOK_STEP = 6;

/** Part of the lines of sight through the body that meets flake, from which on it is heavy. Common practice, no source. */
export const HEAVY_FLAKE = 0.25;

/** A recipe's name, its four colours in coarse steps, a word for its flake, and nothing that is made from anything else. */
export function lookOnly(recipe: Recipe, { molds }: Pick<Book, 'molds'>, step: number = LOOK_STEP): RecipeLook {
  const { id, title, pattern } = recipe;
  const { shape } = required(molds, recipe.mold);
  const { body, thin, other } = fourColours(recipe, step);
  const parts = other === undefined ? [body] : [body, other];
  return {
    id,
    title,
    pattern,
    shape,
    body,
    ...defined({ thin, other }),
    flake: flakeLoad(recipe.cups),
    facets: lookFacets(
      body,
      pattern,
      parts.map((part) => ({ body: part, share: 1 / parts.length })),
    ),
  };
}

/** The colours that one sees: two sides of the body, or the body and its thin part. A core by itself is not among them. */
function fourColours(
  { pattern, cups, body, thin, other }: Recipe,
  step: number,
): Pick<RecipeLook, 'body' | 'thin' | 'other'> {
  const coarse = (look: Appearance): Appearance => coarseAppearance(look, step);
  const [first, second] = cups;
  const { beside, faces } = PATTERNS[pattern];
  if (beside && first && second) return { body: coarse(first.body), other: coarse(second.body) };
  const [, far] = faces;
  const seen = far !== undefined && 'from' in far ? other : undefined;
  return { body: coarse(body), ...(seen === undefined ? { thin: coarse(thin) } : { other: coarse(seen) }) };
}

/** A look of which everything is made from its rounded colours. */
function coarseAppearance({ overWhite, overBlack }: Appearance, step: number): Appearance {
  const [white, black] = [coarseLab(overWhite.lab, step), coarseLab(overBlack.lab, step)];
  const lightOfWhite = tristimulusFromLab(white).Y;
  const ratio = lightOfWhite > 0 ? tristimulusFromLab(black).Y / lightOfWhite : 1;
  return { overWhite: colourOfLab(white), overBlack: colourOfLab(black), contrastRatio: Number(ratio.toFixed(4)) };
}

/** A colour rounded to the step. */
export function coarseLab({ L, a, b }: Lab, step: number): Lab {
  // Without −0, which JSON does not keep.
  const rounded = (value: number): number => step * Math.round(value / step) + 0;
  return { L: rounded(L), a: rounded(a), b: rounded(b) };
}

const colourOfLab = (lab: Lab): Colour => ({ lab, ...hexFromLab(lab) });

function flakeLoad(cups: readonly Pick<Cup, 'flakes'>[]): FlakeLoad {
  const flakes = cups.flatMap((cup) => cup.flakes);
  if (flakes.length === 0) return 'none';
  const past = flakes.reduce((light, { coverage }) => light * (1 - coverage), 1);
  return 1 - past >= HEAVY_FLAKE ? 'heavy' : 'light';
}
