/**
 * What is taken of a material of which only one colour and its kind are known.
 *
 * Source: common practice, no source, unless a figure names one.
 */
export interface ColouringKindDefaults {
  /** S of the typical dose in plastic, per mm; of a pigment that of one which reflects all light (see `PIGMENT_SCATTERING_POWER`). */
  readonly scattering: number;
  /** g/ml, what "typical dose" means where the shelf doesn't say. */
  readonly dose: number;
}

/**
 * The kinds. A dye hardly scatters, a dark pigment less than a light one, white pigment most. The dose of dyes, pigments and whites is 20 drops of 0.05 ml at about 1 g/ml in 4 fl oz; that of
 * pearl is 1 % by mass, full effect in thick objects (a pearl pigment maker's leaflet). S of a pearl is near what measured and photographed ones
 * of the demo book have (`tests/book/common-practice.test.ts`): gram for gram a little less than a light pigment's.
 */
export const COLOURING_KINDS: Readonly<Record<'dye' | 'pigment' | 'pearl' | 'white' | 'clear', ColouringKindDefaults>> =
  {
    dye: { scattering: 0.002, dose: 0.0085 },
    pigment: { scattering: 0.6, dose: 0.0085 },
    pearl: { scattering: 0.65, dose: 0.01 },
    white: { scattering: 2.5, dose: 0.0085 },
    clear: { scattering: 0.0005, dose: 0.0085 },
  };

/**
 * S of a pigment grows with this power of its body's luminance factor Y: S = 0.6 Y^0.7 per mm, where that of white is 2.5.
 *
 * Found on 19 paints of published K and S (R. S. Berns, Artist Paint Spectral Database, Rochester Institute of Technology): of their
 * pairs, predicted from one colour each, half are within ΔE00 8.6; by one S for all pigments, 0.8, half were within 12.3. Chosen on
 * half of the paints alone, both figures come out near these (0.5 to 0.8, 0.3 to 0.9), and the pairs of the other half gain as much.
 */
export const PIGMENT_SCATTERING_POWER = 0.7;

/** Reflectance inside the plastic of the darkest body there is; K/S of 99. Common practice, no source: strong blacks have K/S of about 100. */
export const DARKEST_BODY = 0.005;

/** mm through which the colour of a dye is stated, over white, where the shelf doesn't say. */
export const DYE_THICKNESS = 10;

/**
 * ΔE00 to expect of the colour of a mix that rests on a tier, beyond what its chips show themselves: medians of what
 * `npm run bench uncertainty` finds, rounded.
 *
 * Measured: 2.8 for 44 views of films of several paints, each film left out. Photographed: 4.3 and 4.0 for 513 pairs among 19
 * published paints, from one chip a paint and from two, with a camera's noise. Estimated: 8.6 for the same pairs.
 */
export const EXPECTED_DELTA_E: Readonly<Record<'measured' | 'photographed' | 'estimated', number>> = {
  measured: 2.8,
  photographed: 5,
  estimated: 9,
};
