import { mapSpectrum, type Spectrum } from './spectrum.ts';
import { BESIDE_GLOSS, type Surface, surfaceInward } from './surface.ts';
import { reflectanceFromHex } from './upsampling.ts';

/**
 * Reflectance of a flake's face inside the plastic, from its colour as seen just below the surface of clear plastic: what a
 * maker would write down for it.
 *
 * Metallized flake flashes and darkens as it turns; the colour to state is the one that a crowd of it has.
 * Throws: RangeError if the text is not `#rgb` or `#rrggbb`.
 */
export function flakeReflectance(colour: string, surface: Surface = BESIDE_GLOSS): Spectrum {
  return mapSpectrum(reflectanceFromHex(colour), (R) => surfaceInward(R, surface));
}
