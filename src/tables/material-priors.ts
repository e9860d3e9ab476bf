/**
 * What is believed of a colouring material of which only the kind is known, before anything was seen of it.
 *
 * Source of every figure of dye, pigment, pearl and white: our own study on simulated benches whose physics are not this book's
 * (`npm run bench foreign` holds what it comes to); the doubts are wide on purpose, and moderate changes of them changed little there.
 */
export interface MaterialPrior {
  /** K of the typical dose per mm: its median, and standard deviations of ln K, of the level and of the shape over the spectrum. */
  readonly absorption: { readonly median: number; readonly levelSd: number; readonly shapeSd: number };
  /** S of the typical dose per mm at 550 nm: its median and the deviation of ln S; S goes as (550 nm/wavelength) to a power. */
  readonly scattering: {
    readonly median: number;
    readonly levelSd: number;
    readonly power: number;
    readonly powerSd: number;
    /** Standard deviation of what ln S has of a shape besides; unset: none. */
    readonly shapeSd?: number;
  };
}

/** By kind; `twoViewPearl` is a pearl whose label shows it over white and over black. */
export const MATERIAL_PRIORS: Readonly<
  Record<'dye' | 'pigment' | 'pearl' | 'twoViewPearl' | 'white' | 'unknown', MaterialPrior>
> = {
  dye: {
    absorption: { median: 0.06, levelSd: 1.3, shapeSd: 1.3 },
    scattering: { median: 0.002, levelSd: 1.6, power: 1, powerSd: 0.7 },
  },
  pigment: {
    absorption: { median: 0.25, levelSd: 1, shapeSd: 1.2 },
    scattering: { median: 0.3, levelSd: 1.3, power: 0.8, powerSd: 0.7 },
  },
  pearl: {
    absorption: { median: 0.02, levelSd: 1.2, shapeSd: 0.9 },
    scattering: { median: 0.4, levelSd: 1, power: 0.3, powerSd: 0.5 },
  },
  // An interference pearl, of one hue over black and another over white, throws back some bands far more than others. Only a chip over both
  // can tell: of other pearls the shape would be guessed, and what is tested of their looks be less true. Convention of this book.
  twoViewPearl: {
    absorption: { median: 0.02, levelSd: 1.2, shapeSd: 0.9 },
    scattering: { median: 0.4, levelSd: 1, power: 0.3, powerSd: 0.5, shapeSd: 0.6 },
  },
  white: {
    absorption: { median: 0.004, levelSd: 1, shapeSd: 0.8 },
    scattering: { median: 2.5, levelSd: 1, power: 0.6, powerSd: 0.4 },
  },
  // Wide enough to take in any of the four: convention of this book.
  unknown: {
    absorption: { median: 0.06, levelSd: 1.6, shapeSd: 1.3 },
    scattering: { median: 0.1, levelSd: 2.2, power: 0.8, powerSd: 0.7 },
  },
};

/** nm over which the shape of ln K hangs together: the 1/√e width of its covariance. From the same study: 28 to 70 did nearly as well. */
export const SHAPE_RANGE_NM = 55;

/** Curves that ln K of a material is made of. From the same study: 6, 9 and 14 did nearly as well. */
export const SHAPE_MODES = 7;

/** Curves of them that the shape of ln S is made of: it is vaguer in what is seen. Convention of this book. */
export const SCATTERING_SHAPE_MODES = 4;

/** Standard deviation of ln of how much stronger a maker's own bottle and drops are than what the label shows. From the same study. */
export const BOTTLE_SD = 0.3;

/** Standard deviations, in ln, of a base plastic: of its K, of how much it has yellowed, of its S. From the same study. */
export const PLASTIC_SD = { absorption: 0.5, yellowing: 0.7, scattering: 0.6 } as const;

/** What is not known of the bench and of the theory, about `USUAL_OPTICS`. From the same study. */
export const OPTICS_SD = {
  /** Of the white card's reflectance, and of how much less it is in the blue. */
  white: 0.04,
  whiteYellowing: 0.04,
  /** Of ln of the black card's reflectance. */
  black: 0.5,
  /** Of the crowding, ml/g. */
  crowding: 5,
  /** Of the path's `d`, and of ln of its `s0`. */
  pathD: 0.08,
  pathS0: 0.7,
} as const;

/**
 * Standard deviation of what one camera's colours are off by, always alike: ΔE00 along each of three axes. A quarter of what a photo of
 * ΔE 2 is off by, in squares; a wider one takes up what the theory is off by, and shows colours worse. From the same study.
 */
export const CAMERA_SD = 0.6;
