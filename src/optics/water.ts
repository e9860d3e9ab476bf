/**
 * What is left of a colour at depth: daylight loses its red first, and in turbid or stained water its blue as well.
 */
import { HUMUS } from '../tables/stained-water.ts';
import { WATER_TYPES, WATER_WAVELENGTHS } from '../tables/water-types.ts';
import { type Lab, labFromTristimulus } from './cielab.ts';
import { brightestShown, hexFromTristimulus } from './display.ts';
import { mapSpectrum, requireBands, resampleSpectrum, type Spectrum, WAVELENGTHS } from './spectrum.ts';
import { type Tristimulus, tristimulus, whitePoint } from './tristimulus.ts';

/** A type of sea water after Jerlov: I to III of the open ocean, 1C to 9C of coasts; or clear water stained by humus. */
export type WaterType = keyof typeof WATER_TYPES | 'stained';

/** The types of water there are: Jerlov's, clearest first, then the stained one. */
export const WATERS: readonly WaterType[] = ['I', 'IA', 'IB', 'II', 'III', '1C', '3C', '5C', '7C', '9C', 'stained'];

/** A colour as it is seen at depth from close by. */
export interface SeenAtDepth {
  /** Share of the surface's daylight that is left there, weighted as an eye weights it, 0..1. */
  readonly lightLeft: number;
  /** Tristimulus values relative to the daylight of the surface: Y falls with depth. */
  readonly tristimulus: Tristimulus;
  /** As a camera set to daylight sees it, exposed for the depth: a white has Y = 1 and the colour of the water's light. */
  readonly lab: Lab;
  /**
   * For the screen, exposed so that it can show a white: strongly coloured light has less than the screen's Y of 1, and whatever were
   * made brighter than that would have to bleach.
   */
  readonly hex: string;
  /** Whether the screen can't show it, and a nearby colour stands for it. */
  readonly mapped: boolean;
}

/**
 * Diffuse attenuation of a water, per m. That of stained water is the clearest water's and the humus's absorption: daylight
 * comes down aslant, so in a real lake it is somewhat more.
 */
function attenuationOf(water: WaterType): Spectrum {
  const stained = water === 'stained';
  const attenuation = WATER_TYPES[stained ? 'I' : water];
  if (!attenuation) throw new RangeError(`Unknown water ${water}; give one of ${WATERS.join(', ')}`);
  const K = resampleSpectrum(WATER_WAVELENGTHS, attenuation);
  return stained
    ? mapSpectrum(
        K,
        (clear, band) => clear + HUMUS.absorption * Math.exp(-HUMUS.slope * (WAVELENGTHS[band]! - HUMUS.at)),
      )
    : K;
}

/**
 * Share of daylight that gets down to a depth, band by band: e^(−K depth).
 *
 * Units: depth in m, 0..1000. The table ends at 700 nm; beyond, its last value is held.
 * Throws: RangeError if there is no such water, or the depth is not in range.
 *
 * @example lightAtDepth('3C', 5)[18] // 0.372, to 3 decimals: at 560 nm
 */
export function lightAtDepth(water: WaterType, depth: number): Spectrum {
  const attenuation = attenuationOf(water);
  if (!(depth >= 0 && depth <= 1000)) throw new RangeError(`Depth is ${depth} m; give a number from 0 to 1000`);
  return mapSpectrum(attenuation, (K) => Math.exp(-K * depth));
}

/**
 * How a reflectance looks at a depth under daylight (D65) from above.
 *
 * Only the way down is counted: whoever looks is close. Fluorescence is not in it.
 * Shape: R is a reflectance as seen in water (see `IN_WATER`), a spectrum.
 * Throws: RangeError as `lightAtDepth`, or if R has not 36 bands.
 */
export function seenAtDepth(R: ArrayLike<number>, water: WaterType, depth: number): SeenAtDepth {
  requireBands(R, 'reflectance');
  const light = lightAtDepth(water, depth);
  const lightLeft = tristimulus(light).Y;
  const XYZ = tristimulus(mapSpectrum(light, (share, band) => share * R[band]!));
  const exposed = scaled(XYZ, 1 / lightLeft);
  return {
    lightLeft,
    tristimulus: XYZ,
    lab: labFromTristimulus(exposed, whitePoint('D65')),
    ...hexFromTristimulus(scaled(exposed, brightestShown(scaled(tristimulus(light), 1 / lightLeft)))),
  };
}

function scaled({ X, Y, Z }: Tristimulus, by: number): Tristimulus {
  return { X: X * by, Y: Y * by, Z: Z * by };
}
