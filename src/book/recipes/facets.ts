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

/** Where hues end that have a name, degrees of OKLab. Convention of this book, held against the colours that CSS names. */
export const HUE_ENDS = { red: 36, orange: 74, yellow: 116, green: 190, blue: 284, purple: 340 } as const;

type Family = (typeof HUE_FAMILIES)[number];

/** A colour as people name it: lightness L*, chroma of CIELAB, hue of OKLab in degrees. */
interface Named {
  readonly L: number;
  readonly chroma: number;
  readonly hue: number;
}

/** The everyday name of a colour's family. The bounds are a convention of this book. */
export function hueFamily(lab: Lab): Family {
  const colour = { L: lab.L, chroma: Math.hypot(lab.a, lab.b), hue: oklabHue(lab) };
  const { L, hue } = colour;
  const neutral = neutralFamily(colour);
  if (neutral !== undefined) return neutral;
  if (hue < 10) return L > PINK_L ? 'pink' : 'red';
  if (hue < HUE_ENDS.red) return isSalmon(colour) ? 'pink' : colour.chroma < 14 + 0.9 * (hue - 10) ? 'brown' : 'red';
  if (hue < OLIVE_FROM && isBrown(colour)) return 'brown';
  if (hue < HUE_ENDS.orange) return 'orange';
  if (hue < HUE_ENDS.yellow) return isOlive(colour) ? 'green' : 'yellow';
  if (hue < HUE_ENDS.green) return 'green';
  if (hue < HUE_ENDS.blue) return 'blue';
  return purpleOrPink(colour);
}

// All that follows are conventions of this book.

/** From here a cool red is a pink, below it a wine red. */
const PINK_L = 47;

/**
 * White, grey or black, where a colour is one. What is cool passes for grey with more chroma than what is warm, which is beige soon;
 * a black keeps a cast, and so does the lightest cream.
 */
function neutralFamily({ L, chroma, hue }: Named): Family | undefined {
  if (L < 25 && chroma < 12 + 0.2 * (25 - L)) return 'black';
  if (L > 86)
    return chroma < Math.min(9 + 1.5 * Math.max(0, L - 90), 14) && !isCoolTint(hue, chroma) ? 'white' : undefined;
  const isCool = hue > HUE_ENDS.yellow && hue < HUE_ENDS.purple;
  return chroma < (isCool ? 12 : 9) ? 'grey' : undefined;
}

/** A pale blue or violet is told from white sooner than a cream. */
const isCoolTint = (hue: number, chroma: number): boolean => hue > HUE_ENDS.yellow && hue < 360 && chroma > 9;

/** A light red that isn't strong. */
const isSalmon = ({ L, chroma }: Named): boolean => L > 48 + 0.25 * chroma;

/** L* + 0.6 chroma up to which an orange or a yellow is a brown, by hue: what is redder must be darker. */
const BROWN_BELOW: readonly (readonly [hue: number, sum: number])[] = [
  [35, 74],
  [50, 84],
  [60, 94],
  [80, 97],
  [88, 95],
  [100, 85],
];

function isBrown({ L, chroma, hue }: Named): boolean {
  const after = BROWN_BELOW.findIndex(([at]) => at >= hue);
  const [[from, low], [to, high]] = [BROWN_BELOW[after - 1]!, BROWN_BELOW[after]!];
  return L + 0.6 * chroma < low + ((high - low) * (hue - from)) / (to - from);
}

/** From this hue a dark yellow is an olive, found among the greens, and no brown. */
const OLIVE_FROM = 98.5;

const isOlive = ({ L, hue }: Named): boolean => hue >= OLIVE_FROM && L < hue - 41;

/** Between purple and red: the light ones are pinks, the dark ones purples for longer. */
function purpleOrPink({ L, hue }: Named): Family {
  if (L > 65) return hue < 333 ? 'purple' : 'pink';
  if (L > PINK_L) return hue < HUE_ENDS.purple ? 'purple' : 'pink';
  return hue < 350 ? 'purple' : 'red';
}

// White plastic or card that shows through clear plastic is this light at least. Convention of this book.
const CLEAR_L = 80;

/** The family of a look: of its colour over white, or `clear` where it has next to none and hides next to nothing. */
export function hueFamilyOfAppearance({ overWhite: { lab }, contrastRatio }: Appearance): Family {
  const family = hueFamily(lab);
  const isPale = lab.L > CLEAR_L && (family === 'white' || family === 'grey');
  return isPale && opacityClass(contrastRatio).word === 'clear' ? 'clear' : family;
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
  const families = [...new Set(looks.map(hueFamilyOfAppearance))];
  return {
    // Nobody looks for a bait under the plastic without colour between its colours.
    hueFamilies: [
      ...families.filter((family) => family !== 'clear'),
      ...families.filter((family) => family === 'clear'),
    ],
    lightness: lightnessClass(lab.L),
    opacity: opacityClass(side.contrastRatio).word,
  };
}
