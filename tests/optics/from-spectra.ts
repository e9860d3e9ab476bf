import { labOf } from '../../src/optics/cielab.ts';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
import type { OpticalFault } from '../../src/optics/fault.ts';
import { chipFault, fitByBand, type MeasuredChip } from '../../src/optics/fit-by-band.ts';
import { type MixtureConstants, mixtureConstants, type OpticalConstants } from '../../src/optics/mixture.ts';
import { stackReflectance } from '../../src/optics/stack.ts';
import { IN_AIR, type Surface } from '../../src/optics/surface.ts';

interface MeasuredMaterial {
  /** K and S of the plastic, per mm. */
  readonly plastic: OpticalConstants;
  readonly chips: readonly MeasuredChip[];
  /** What the instrument saw; unset: air, gloss included. */
  readonly surface?: Surface;
}

/** `fitByBand` of chips that are checked first, and how far it is from them. */
export function fromSpectra({
  plastic,
  chips,
  surface = IN_AIR,
}: MeasuredMaterial): { readonly constants: MixtureConstants; readonly residual: number } | OpticalFault {
  const fault = chipFault(chips);
  if (fault) return fault;
  const constants = fitByBand(plastic, chips, surface);
  return { constants, residual: residualDeltaE(constants, plastic, chips, surface) };
}

/** Root mean square ΔE00 between chips as they are and as the constants would have them. */
function residualDeltaE(
  constants: OpticalConstants,
  plastic: OpticalConstants,
  chips: readonly MeasuredChip[],
  surface: Surface,
): number {
  let squares = 0;
  for (const { concentration, thickness, overWhite, overBlack, backings } of chips) {
    const layers = [{ ...mixtureConstants(plastic, [{ constants, concentration }]), thickness }];
    const white = labOf(stackReflectance(layers, backings.white, surface));
    const black = labOf(stackReflectance(layers, backings.black, surface));
    squares += deltaE00(white, labOf(overWhite)) ** 2 + deltaE00(black, labOf(overBlack)) ** 2;
  }
  return Math.sqrt(squares / (2 * chips.length));
}
