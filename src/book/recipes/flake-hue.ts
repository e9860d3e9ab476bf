import { labFromHex } from '../../optics/display.ts';
import type { Material } from '../model/shelf.ts';
import { type HUE_FAMILIES, hueFamily } from './facets.ts';

/** The family of hue that a flake is found by: that of its face. */
export function flakeHue({ colour }: Pick<NonNullable<Material['flake']>, 'colour'>): (typeof HUE_FAMILIES)[number] {
  return hueFamily(labFromHex(colour));
}
