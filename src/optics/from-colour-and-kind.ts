import { COLOURING_KINDS, DARKEST_BODY, DYE_THICKNESS, PIGMENT_SCATTERING_POWER } from '../tables/colouring-kinds.ts';
import { labOf } from './cielab.ts';
import { deltaE00 } from './delta-e00.ts';
import { isHex, labFromHex } from './display.ts';
import { opticalFault } from './fault.ts';
import { absorptionToScattering, effectiveDepth, layerOver, reflectancesInfinite } from './kubelka-munk.ts';
import { type MaterialResult, materialConstants } from './material-constants.ts';
import { mixtureConstants, type OpticalConstants } from './mixture.ts';
import { type OpticalModel, pathFactor } from './optical-model.ts';
import { plasticConstants } from './plastic.ts';
import { BAND_COUNT, mapSpectrum, type Spectrum } from './spectrum.ts';
import { stackReflectance } from './stack.ts';
import { BESIDE_GLOSS, type Surface, surfaceInward, surfaceOutwardSpectrum } from './surface.ts';
import { tristimulus } from './tristimulus.ts';
import { reflectanceFromHex } from './upsampling.ts';

/** How a material acts on light. */
export type ColouringKind = keyof typeof COLOURING_KINDS;

/** What a maker can say of a material by eye. */
export interface StatedColour {
  /** `#rrggbb` of a typical dose: for a dye or a clear plastic through `thickness` over white, else of a body that hides what is behind it. */
  readonly colour: string;
  readonly kind: ColouringKind;
  /** The typical dose in g/ml; unset: a default by kind (common practice, no source). */
  readonly dose?: number;
  /** mm through which the colour of a dye was seen; unset: 10. */
  readonly thickness?: number;
  /** K and S per mm of the plastic it was seen in; unset: clear plastic. */
  readonly plastic?: OpticalConstants;
  /** How it was looked at; unset: air, beside the gloss. */
  readonly surface?: Surface;
  readonly optics: Pick<OpticalModel, 'backings' | 'path'>;
}

/**
 * K and S of a material from one colour and its kind: tier 'estimated'.
 *
 * S of the typical dose is the same in every band: a default by kind, and of a pigment the less the darker its colour is. K is what the stated colour asks for then. A dye, or
 * a clear plastic's own tint: seen through its thickness over white, light passing twice. A pigment, pearl or white: K = S·KS(R∞), the
 * body that hides what is behind it, and however far light goes there.
 * What the plastic itself absorbs and scatters is taken off first, so that the typical dose in that plastic has the stated
 * colour, except where no such body is possible (darker than `DARKEST_BODY`, or lighter than the plastic itself); then
 * `residual` says by how much it misses.
 * Returns a fault where the colour, the dose or the thickness is none.
 */
export function fromColourAndKind({
  colour,
  kind,
  dose = COLOURING_KINDS[kind].dose,
  thickness = DYE_THICKNESS,
  plastic = plasticConstants('clear'),
  surface = BESIDE_GLOSS,
  optics,
}: StatedColour): MaterialResult {
  if (!isHex(colour)) return opticalFault('out-of-range', `Unexpected colour ${colour}, expected #rrggbb`);
  if (!(dose > 0 && Number.isFinite(dose) && thickness > 0 && Number.isFinite(thickness))) {
    return opticalFault('out-of-range', `Typical dose is ${dose} g/ml at ${thickness} mm, expected numbers above 0`);
  }
  const transparent = kind === 'dye' || kind === 'clear';
  const body = mapSpectrum(reflectanceFromHex(colour), (R) => Math.max(DARKEST_BODY, surfaceInward(R, surface)));
  const scattering = scatteringOf(kind, body);
  const { path } = optics;
  const white = stackReflectance([], optics.backings.white);
  const absorption = mapSpectrum(body, (R, band) => {
    const S = plastic.scattering[band]! + scattering;
    const factor = pathFactor(path, S * thickness);
    const needed = transparent
      ? absorptionOverWhite(R, S * factor, thickness, white[band]!) / factor
      : S * absorptionToScattering(R);
    return Math.max(0, needed - plastic.absorption[band]!) / dose;
  });
  const constants = { absorption, scattering: new Float64Array(BAND_COUNT).fill(scattering / dose) };
  const mix = mixtureConstants(plastic, [{ constants, concentration: dose }]);
  const seen: Spectrum = transparent
    ? stackReflectance([{ ...mix, thickness }], white, surface, path)
    : surfaceOutwardSpectrum(reflectancesInfinite(mix.absorption, mix.scattering), surface);
  return materialConstants(constants, 'estimated', deltaE00(labOf(seen), labFromHex(colour)));
}

/** S of the typical dose, per mm, from the luminance factor inside the plastic of a body of it. */
function scatteringOf(kind: ColouringKind, body: Spectrum): number {
  const { scattering } = COLOURING_KINDS[kind];
  return kind === 'pigment' ? scattering * tristimulus(body).Y ** PIGMENT_SCATTERING_POWER : scattering;
}

/** K′ per mm with which a layer of this S′ over white has the reflectance R: by halving, for R falls as K rises. 0 if even that is too dark. */
export function absorptionOverWhite(R: number, S: number, thickness: number, white: number): number {
  const shows = (K: number): number => layerOver(K, S, effectiveDepth(K, S, thickness), white);
  if (shows(0) <= R) return 0;
  let low = 0;
  let high = 1 / thickness;
  while (shows(high) > R) high *= 2;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (shows(middle) > R) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
