/**
 * K and S per mm of the base plastic by its look, for shelves that have no measured ones.
 *
 * Source: common practice, no source. Chosen so that 10 mm of clear plastic over white is a shade off white and yellowish, and
 * that milky plastic all but hides print behind 10 mm of it.
 */
export interface PlasticLook {
  /** K in the reds and greens, per mm. */
  readonly absorption: number;
  /** What K rises by toward 400 nm, per mm: plastisol yellows with heat and age. */
  readonly yellowness: number;
  /** S at 550 nm, per mm; it falls with wavelength, as small droplets and bubbles scatter. */
  readonly scattering: number;
}

/** The looks that there are. */
export const PLASTIC_LOOKS: Readonly<Record<'clear' | 'milky', PlasticLook>> = {
  clear: { absorption: 0.0015, yellowness: 0.006, scattering: 0.003 },
  milky: { absorption: 0.0025, yellowness: 0.008, scattering: 0.12 },
};

/** nm within which the yellowness falls to 1/e, from 400 nm on. Common practice, no source. */
export const YELLOWNESS_RANGE = 40;

/** S goes as wavelength to this power. Common practice, no source: between 0 (large particles) and −4 (Rayleigh's). */
export const PLASTIC_SCATTERING_POWER = -1;
