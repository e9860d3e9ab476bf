/**
 * What happens to light at the boundary of the bait.
 *
 * Edition: none, single figures. Step: none.
 * Checked: against Fresnel's equations by `tests/optics/surface.test.ts`, first on 2026-11-25.
 */

/** Reflection at normal incidence for n = 1.5: ((n − 1)/(n + 1))² = 0.04 exactly (Fresnel). */
export const SURFACE_K1 = 0.04;

/**
 * Internal diffuse reflection. Saunderson (1942), J. Opt. Soc. Am. 32:727, measures values of 0.4 to 0.6 in plastics;
 * Fresnel's equations give 0.596 for n = 1.5. (Saunderson's range: from memory.)
 */
export const SURFACE_K2 = 0.6;

/** Refractive index of plasticised PVC. From memory: rigid PVC 1.54, phthalate plasticisers 1.49. */
export const INDEX_PLASTIC = 1.5;

/** Refractive index of water at 20 °C and 589 nm: 1.333 (from memory, any table of physical constants). */
export const INDEX_WATER = 1.333;
