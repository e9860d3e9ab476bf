import type { Facets, Lab, Look } from './model.ts';

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

/** What readers search a recipe by, without its materials. */
export function lookFacets(look: Look): Pick<Facets, 'hueFamily' | 'lightness' | 'opacity'> {
  const { lab } = look.overWhite;
  return {
    hueFamily: hueFamily(lab),
    lightness: lab.L < 40 ? 'dark' : lab.L < 68 ? 'medium' : 'light',
    opacity: look.contrastRatio < 0.35 ? 'clear' : look.contrastRatio < 0.9 ? 'translucent' : 'opaque',
  };
}
