import type { Lab } from '../book/model/colours.ts';
import { HUE_ENDS, hueFamily, lightnessClass } from '../book/recipes/facets.ts';
import { labFromHex } from '../optics/display.ts';
import { oklabHue } from '../optics/oklab-hue.ts';

// Below the first a colour is called greyish, above the other vivid. Conventions of this book, chosen by eye, no source.
const GREYISH_CHROMA = 18;
const VIVID_CHROMA = 62;
/** A grey with more chroma than this has a cast that is said. Convention of this book. */
const CAST_CHROMA = 4;

/** What a grey, white or black leans to, by the end of the hues that it is said of, degrees. */
const CASTS: readonly (readonly [until: number, word: string])[] = [
  [HUE_ENDS.red, 'reddish'],
  [HUE_ENDS.orange, 'brownish'],
  [HUE_ENDS.yellow, 'yellowish'],
  [HUE_ENDS.green, 'greenish'],
  [HUE_ENDS.blue, 'bluish'],
  [HUE_ENDS.purple, 'purplish'],
  [360, 'reddish'],
];

/**
 * A colour in plain words for those who don't see it: its lightness, its strength, and the family of hue that it is found by.
 *
 * @example colourWords({ L: 30, a: 12, b: 22 }) // 'dark brown'
 */
export function colourWords(lab: Lab): string {
  const family = hueFamily(lab);
  const chroma = Math.hypot(lab.a, lab.b);
  const lightness = lightnessClass(lab.L);
  const said = lightness === 'medium' || isSaidBy(family) ? [] : [lightness];
  if (isNeutral(family)) return [...said, ...(chroma > CAST_CHROMA ? [cast(lab)] : []), family].join(' ');
  if (chroma > VIVID_CHROMA) return [lightness === 'light' ? 'bright' : 'vivid', family].join(' ');
  return [...said, ...(chroma < GREYISH_CHROMA ? ['greyish'] : []), family].join(' ');
}

/** The words of a colour as a screen shows it, `#rrggbb`. */
export function hexWords(hex: string): string {
  return colourWords(labFromHex(hex));
}

type Family = ReturnType<typeof hueFamily>;

function isNeutral(family: Family): boolean {
  return family === 'grey' || isSaidBy(family);
}

/** Whether a family has its lightness in its name. */
function isSaidBy(family: Family): boolean {
  return family === 'white' || family === 'black';
}

function cast(lab: Lab): string {
  const hue = oklabHue(lab);
  return CASTS.find(([until]) => hue < until)![1];
}
