import { OPACITY_CLASSES } from '../tables/opacity-classes.ts';
import { SIDE_BY_SIDE } from '../tables/patterns.ts';
import type { Facets, Lab, Look, Pattern } from './model.ts';

/** Families of hue that readers look by, in the order of the wall. */
export const HUE_FAMILIES = [
  'red',
  'orange',
  'brown',
  'yellow',
  'green',
  'blue',
  'purple',
  'pink',
  'clear',
  'white',
  'grey',
  'black',
] as const;

// Below this chroma a colour is called by its lightness. Convention of this book.
const NEUTRAL_CHROMA = 9;

/** The everyday name of a colour's family. The bounds are a convention of this book. */
export function hueFamily({ L, a, b }: Lab): (typeof HUE_FAMILIES)[number] {
  const chroma = Math.hypot(a, b);
  if (chroma < NEUTRAL_CHROMA) return L < 28 ? 'black' : L > 80 ? 'white' : 'grey';
  const hue = ((Math.atan2(b, a) * 180) / Math.PI + 360) % 360;
  if (hue < 22 || hue >= 335) return L > 60 ? 'pink' : 'red';
  if (hue < 95 && L < 62 && chroma < 52)
    return hue < 38 && chroma > 34 ? 'red' : hue > 86 && chroma > 40 ? 'yellow' : 'brown';
  if (hue < 45) return L > 68 && chroma < 35 ? 'pink' : 'red';
  if (hue < 72) return 'orange';
  if (hue < 100) return 'yellow';
  if (hue < 190) return 'green';
  if (hue < 285) return 'blue';
  return 'purple';
}

/** The family of a look: of its colour over white, or `clear` where it has none and hides next to nothing. */
export function hueFamilyOfLook({ overWhite, contrastRatio }: Look): (typeof HUE_FAMILIES)[number] {
  const family = hueFamily(overWhite.lab);
  return family === 'white' && opacityClass(contrastRatio).word === 'clear' ? 'clear' : family;
}

/** The word for a lightness L*. The bounds are a convention of this book. */
export function lightnessClass(L: number): Facets['lightness'] {
  return L < 40 ? 'dark' : L < 68 ? 'medium' : 'light';
}

/** How much a body of this contrast ratio hides: the word and what it means. */
export function opacityClass(contrastRatio: number): (typeof OPACITY_CLASSES)[number] {
  return OPACITY_CLASSES.findLast(({ from }) => contrastRatio >= from) ?? OPACITY_CLASSES[0];
}

/**
 * What readers search a recipe by, without its materials.
 *
 * @param side the side of the bait that is looked at
 * @param cups the cups by themselves: where they are seen side by side the bait is of all their families, the largest cup's first
 */
export function lookFacets(
  side: Look,
  pattern: Pattern,
  cups: readonly { readonly body: Look; readonly share: number }[],
): Pick<Facets, 'hueFamilies' | 'lightness' | 'opacity'> {
  const { lab } = side.overWhite;
  const looks = SIDE_BY_SIDE.has(pattern)
    ? [...cups].sort((one, other) => other.share - one.share).map(({ body }) => body)
    : [side];
  return {
    hueFamilies: [...new Set(looks.map(hueFamilyOfLook))],
    lightness: lightnessClass(lab.L),
    opacity: opacityClass(side.contrastRatio).word,
  };
}
