import { oklabHue } from '../../optics/oklab-hue.ts';
import { PATTERNS, type Pattern } from '../../patterns/patterns.ts';
import { OPACITY_CLASSES } from '../../tables/opacity-classes.ts';
import type { Appearance, Lab } from '../model/colours.ts';
import type { Facets } from '../model/recipe.ts';

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
// White plastic or card that shows through clear plastic is this light at least. Convention of this book.
const CLEAR_L = 80;

/** Where hues end that have a name, degrees of OKLab. Convention of this book, held against the colours that CSS names. */
export const HUE_ENDS = { red: 35, orange: 72, yellow: 116, green: 190, blue: 284, purple: 340 } as const;

// A dull colour of the hues from red to yellow is a brown, and a dark one from yellow to green an olive, which is found among the greens.
const BROWN_L = 62;
const OLIVE_L = 60;

/** The everyday name of a colour's family. The bounds are a convention of this book. */
export function hueFamily(lab: Lab): (typeof HUE_FAMILIES)[number] {
  const { L } = lab;
  const chroma = Math.hypot(lab.a, lab.b);
  if (chroma < NEUTRAL_CHROMA) return L < 28 ? 'black' : L > 86 ? 'white' : 'grey';
  const hue = oklabHue(lab);
  if (hue < 10 || hue >= HUE_ENDS.purple) return L > 45 ? 'pink' : 'red';
  if (hue < HUE_ENDS.red) return L > BROWN_L && chroma < 55 ? 'pink' : L < BROWN_L && chroma < 34 ? 'brown' : 'red';
  if (hue < 104 && L < BROWN_L && chroma < 58) return 'brown';
  if (hue < HUE_ENDS.orange) return 'orange';
  if (hue < HUE_ENDS.yellow) return hue > 104 && L < OLIVE_L ? 'green' : 'yellow';
  if (hue < HUE_ENDS.green) return 'green';
  if (hue < HUE_ENDS.blue) return 'blue';
  return 'purple';
}

/** The family of a look: of its colour over white, or `clear` where it has next to none and hides next to nothing. */
export function hueFamilyOfAppearance({
  overWhite: { lab },
  contrastRatio,
}: Appearance): (typeof HUE_FAMILIES)[number] {
  const pale = lab.L > CLEAR_L && Math.hypot(lab.a, lab.b) < NEUTRAL_CHROMA;
  return pale && opacityClass(contrastRatio).word === 'clear' ? 'clear' : hueFamily(lab);
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
  side: Appearance,
  pattern: Pattern,
  cups: readonly { readonly body: Appearance; readonly share: number }[],
): Pick<Facets, 'hueFamilies' | 'lightness' | 'opacity'> {
  const { lab } = side.overWhite;
  const looks = PATTERNS[pattern].beside
    ? [...cups].sort((one, other) => other.share - one.share).map(({ body }) => body)
    : [side];
  return {
    hueFamilies: [...new Set(looks.map(hueFamilyOfAppearance))],
    lightness: lightnessClass(lab.L),
    opacity: opacityClass(side.contrastRatio).word,
  };
}
