/**
 * What the book assumes of a material whose file does not say. Every result that rests on one of these says so.
 *
 * @packageDocumentation
 */

/** Volume of a drop, ml: 20 drops a millilitre. Common practice, no source. */
export const DROP_ML = 0.05;

/** Thickness of a chip of one's own that does not say, mm: enough for a small dose to show, and to be looked at over both cards. Convention of this book. */
export const CHIP_MM = 6;

/** Density of a liquid colorant or scent, g/ml: oils and dyes are near that of water. Common practice, no source. */
export const LIQUID_DENSITY = 1;

/** Density of a white colorant, g/ml: ground white is heavy, 1.3 to 1.9. Common practice, no source. */
export const WHITE_LIQUID_DENSITY = 1.5;

/** Density of liquid plastic, g/ml: plastisol for soft baits lies between 1.0 and 1.1. From memory, no source. */
export const PLASTIC_DENSITY = 1.05;

/** Density of the solid of a powder, g/ml, by how it colours: mica 2.8, titanium dioxide 4.2, others 1.5. From memory. */
export const POWDER_DENSITY = { pearl: 2.8, white: 4.2, pigment: 1.5, dye: 1.5, clear: 1.5 } as const;

/**
 * Mass of a level millilitre of powder, g, as it is spooned, by how it colours: mica 0.2 to 0.35, white 0.5 to 0.9, others as fluorescent ones,
 * 0.35 to 0.5. Common practice, no source.
 */
export const POWDER_BULK = { pearl: 0.3, white: 0.7, pigment: 0.42, dye: 0.42, clear: 0.42 } as const;

/**
 * Mass of a level millilitre of flake, g, as it is spooned, by its longest side, in: the larger, the looser it lies. Common practice, no source:
 * .008 0.5 to 0.65, .040 0.4 to 0.5, .125 0.25 to 0.4.
 */
export const FLAKE_BULK = [
  { inches: 0.008, gramsPerMl: 0.575 },
  { inches: 0.04, gramsPerMl: 0.45 },
  { inches: 0.125, gramsPerMl: 0.325 },
] as const;

/** Density of a solid additive, g/ml: that of salt, 2.16 (from memory). */
export const SOLID_ADDITIVE_DENSITY = 2.16;

/** Mass of a level millilitre of a solid additive, g: that of fine salt. Common practice, no source. */
export const SOLID_ADDITIVE_BULK = 1.2;

/** Share of the light behind a flake that passes it, by finish: metal hides, tinted film does not. Common practice, no source. */
export const FLAKE_TRANSMITTANCE = {
  metallic: 0,
  matte: 0.1,
  pearl: 0.4,
  hologram: 0,
  translucent: 0.6,
  fluorescent: 0.2,
} as const;

/**
 * Heats that plastic, colour and liquids bear, the one in which they go in included: beyond the first it shows, beyond the second they
 * are spent. Common practice, no source: four to six reheats.
 */
export const HEATS = { from: 5, to: 7 } as const;

/**
 * The same of flake, by finish. Common practice, no source: two or three reheats of metal, one or two of a hologram or of what glows.
 * A coloured film is taken to bear what metal does, whose colour is a lacquer, too.
 */
export const FLAKE_HEATS = {
  metallic: { from: 3, to: 4 },
  matte: { from: 3, to: 4 },
  pearl: { from: 3, to: 4 },
  translucent: { from: 3, to: 4 },
  hologram: { from: 2, to: 3 },
  fluorescent: { from: 2, to: 3 },
} as const;

/** Thickness of the step ladder on a material's page, mm: the body of an ordinary bait. Convention of this book. */
export const LADDER_MM = 6;

/**
 * Ordinary load of flake: level millilitres in one of plastic, of .040 and by its size. Common practice, no source: of .040 1/8 to 1/2 tsp in
 * 4 fl oz, and 1 where it is heavy; of .015, which are more flakes for the same weight, half as much by volume.
 */
export const FLAKE_LOAD = {
  inches: 0.04,
  mlPerMl: (0.25 * 4.92892159375) / 118.29411825,
  power: Math.log(2) / Math.log(0.04 / 0.015),
} as const;
