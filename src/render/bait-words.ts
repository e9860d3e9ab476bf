import type { Recipe, RecipeLook } from '../book/model/recipe.ts';
import type { Mold } from '../book/model/shelf.ts';
import { opacityClass } from '../book/recipes/facets.ts';
import { faceNames, PATTERNS } from '../patterns/patterns.ts';
import { hexWords } from '../words/colour.ts';
import { type Coat, type Coats, lookCoats, recipeCoats } from './swatch/coat.ts';
import { luminance } from './swatch/tint.ts';

/** A part of a bait and its coat. */
type Part = readonly [name: string, coat: Coat];

/** A coat in words, over both backings: "clear brown over white, dark brown over black". */
function coatWords(coat: Coat): string {
  const { word } = opacityClass(luminance(coat.black) / luminance(coat.white));
  const said = (hex: string): string => `${word === 'clear' ? 'clear ' : ''}${hexWords(hex)}`;
  const [white, black] = [said(coat.white), said(coat.black)];
  return white === black ? `${white} over white and black` : `${white} over white, ${black} over black`;
}

/** What is seen of a bait from one side, its body before its thin part. */
function partsOf(
  { body, other, thin, streaks }: Coats,
  { pattern }: Recipe | RecipeLook,
  thinPart: string,
  side: 'near' | 'far',
): readonly Part[] {
  const [, far] = PATTERNS[pattern].faces;
  const [nearName = 'body', farName = 'other side'] = faceNames(pattern, other !== undefined);
  const thinParts: readonly Part[] = thin === undefined ? [] : [[thinPart, thin]];
  if (other !== undefined && side === 'far') return [[farName, other], ...thinParts];
  // Neither what lies on the other side nor what lies within is seen from here.
  const isSeen = far !== undefined && 'from' in far && far.from === 'near';
  return [
    [nearName, body],
    ...streaks.map(({ coat }): Part => ['streaks', coat]),
    ...(other !== undefined && isSeen ? [[farName, other] as const] : []),
    ...thinParts,
  ];
}

/**
 * The colours of a side of a bait in words, for those who don’t see its picture: "body clear brown over white, dark brown over black;
 * tail …".
 *
 * @param mold unset where only the look is published
 */
export function baitInWords(thing: Recipe | RecipeLook, mold: Mold | undefined, side: 'near' | 'far'): string {
  const coats = 'cups' in thing && mold !== undefined ? recipeCoats(thing, mold) : lookCoats(thing as RecipeLook);
  const parts = partsOf(coats, thing, mold?.thinPart ?? 'thin part', side);
  return [...new Set(parts.map(([name, coat]) => `${name} ${coatWords(coat)}`))].join('; ');
}
