import { labOf } from './cielab.ts';
import { deltaE00 } from './delta-e00.ts';
import { opticalFault } from './fault.ts';
import { chipFault, fitByBand } from './fit-by-band.ts';
import { type MaterialResult, materialConstants } from './material-constants.ts';
import { mixtureConstants, type OpticalConstants } from './mixture.ts';
import type { Backings, OpticalModel } from './optical-model.ts';
import { type ColourView, smoothFit } from './smooth-fit.ts';
import { stackReflectance } from './stack.ts';
import { isColour, reflectanceOfColour, type StatedColour, seenUnder } from './stated-colour.ts';
import { BESIDE_GLOSS, type Surface } from './surface.ts';

/** A chip or bait of plastic with one material in it, photographed over both backings. */
export interface PhotographedChip {
  /** g/ml, above 0. */
  readonly concentration: number;
  /** mm, above 0. */
  readonly thickness: number;
  /** As seen over white and over black. */
  readonly overWhite: StatedColour;
  readonly overBlack: StatedColour;
  /** Unset: those of the optics. */
  readonly backings?: Backings;
}

/** What `fromChips` takes. */
export interface PhotographedMaterial {
  /** K and S of the plastic, per mm. */
  readonly plastic: OpticalConstants;
  readonly chips: readonly PhotographedChip[];
  /** What the camera saw; unset: air, beside the gloss. */
  readonly surface?: Surface;
  readonly optics: Pick<OpticalModel, 'backings' | 'path'>;
}

/**
 * K and S of a material from photographed chips: tier 'photographed'.
 *
 * The two colours of each chip are upsampled to smooth reflectances and fitted band by band, as if measured; then K and S
 * are drawn to the smoothest that show the colours themselves. Chips of two or three doses tell more than one.
 * Returns a fault where a colour is none, a figure is out of range, every chip hides its backing, or a chip is darker over
 * white.
 */
export function fromChips({ plastic, chips, optics, surface = BESIDE_GLOSS }: PhotographedMaterial): MaterialResult {
  for (const [i, { overWhite, overBlack }] of chips.entries()) {
    for (const colour of [overWhite, overBlack]) {
      if (isColour(colour)) continue;
      const found = typeof colour === 'string' ? colour : Object.values(colour.lab).join(' ');
      return opticalFault('out-of-range', `Chip ${i + 1} has colour ${found}, expected #rrggbb or Lab`);
    }
  }
  const upsampled = chips.map((chip) => ({
    ...chip,
    backings: chip.backings ?? optics.backings,
    overWhite: reflectanceOfColour(chip.overWhite),
    overBlack: reflectanceOfColour(chip.overBlack),
  }));
  const fault = chipFault(upsampled);
  if (fault) return fault;
  const guess = fitByBand(plastic, upsampled, surface, optics.path);
  const views = chips.flatMap(({ concentration, thickness, overWhite, overBlack, backings = optics.backings }) => [
    { concentration, thickness, backing: stackReflectance([], backings.white), ...seenUnder(overWhite) },
    { concentration, thickness, backing: stackReflectance([], backings.black), ...seenUnder(overBlack) },
  ]);
  const constants = smoothFit(views, plastic, guess, surface, optics.path);
  return materialConstants(constants, 'photographed', residualOf(views, constants, plastic, surface, optics));
}

/** Root mean square ΔE00 between what was seen and what the constants show. */
function residualOf(
  views: readonly ColourView[],
  constants: OpticalConstants,
  plastic: OpticalConstants,
  surface: Surface,
  { path }: Pick<OpticalModel, 'path'>,
): number {
  let squares = 0;
  for (const { concentration, thickness, backing, lab, light } of views) {
    const layer = { ...mixtureConstants(plastic, [{ constants, concentration }]), thickness };
    squares += deltaE00(lab, labOf(stackReflectance([layer], backing, surface, path), light)) ** 2;
  }
  return Math.sqrt(squares / views.length);
}
