import { type Lab, tristimulusFromLab } from '../../optics/cielab.ts';
import { isOpticalFault } from '../../optics/fault.ts';
import { absorptionToScattering, invertTwoBackings } from '../../optics/kubelka-munk.ts';
import type { MixtureConstants } from '../../optics/mixture.ts';
import { type OpticalModel, pathFactor, scatteredBefore } from '../../optics/optical-model.ts';
import { BAND_COUNT, mapSpectrum, type Spectrum } from '../../optics/spectrum.ts';
import { stackReflectance } from '../../optics/stack.ts';
import { BESIDE_GLOSS, surfaceInward } from '../../optics/surface.ts';
import { reflectanceFromTristimulus } from '../../optics/upsampling.ts';
import type { TargetPart } from './target-part.ts';

// Scattering depth S·X that is taken where the two views don't tell it: enough to hide a backing.
const HIDING_DEPTH = 8;
const DARKEST = 0.003;

/**
 * K and S per mm that a body of the target's thickness would have if it showed the target: a smooth reflectance for each
 * view, inside the surface, and Kubelka's inversion band by band.
 *
 * A place to start from, not a truth: of the many spectra that show a colour the smoothest is taken. Where no layer shows both
 * views in a band, or the target was not seen over black, the body is taken to hide its backing.
 */
export function targetConstants(
  { overWhite, overBlack, thicknessMm }: TargetPart,
  { backings, path }: OpticalModel,
): MixtureConstants {
  const [Rwhite, Rblack] = [stackReflectance([], backings.white), stackReflectance([], backings.black)];
  const white = insideOf(overWhite);
  const black = overBlack && insideOf(overBlack);
  const absorption = new Float64Array(BAND_COUNT);
  const scattering = new Float64Array(BAND_COUNT);
  for (let band = 0; band < BAND_COUNT; band++) {
    const R = white[band]!;
    const found =
      black &&
      invertTwoBackings({
        R0: black[band]!,
        Rblack: Rblack[band]!,
        R,
        Rwhite: Rwhite[band]!,
        thickness: thicknessMm,
      });
    if (found && !isOpticalFault(found) && found.S * thicknessMm < 100 && found.K * thicknessMm < 100) {
      absorption[band] = found.K;
      scattering[band] = found.S;
    } else {
      const body = Math.min(0.98, Math.max(DARKEST, black ? Math.min(R, black[band]!) : R));
      scattering[band] = HIDING_DEPTH / thicknessMm;
      absorption[band] = scattering[band]! * absorptionToScattering(body);
    }
    // What was found so far is K′ and S′.
    const factor = pathFactor(path, scatteredBefore(path, scattering[band]! * thicknessMm));
    absorption[band]! /= factor;
    scattering[band]! /= factor;
  }
  return { absorption, scattering };
}

function insideOf(lab: Lab): Spectrum {
  return mapSpectrum(reflectanceFromTristimulus(tristimulusFromLab(lab)), (R) => surfaceInward(R, BESIDE_GLOSS));
}
