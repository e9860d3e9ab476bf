import type { LookMeans } from '../optics/look-doubt.ts';

/**
 * Correlation of what a look is off by over white and over black, by how it was made: a photo has one light and one camera for both,
 * an instrument measures twice. The figure for photos is from our own study of simulated photos.
 */
export const VIEWS_ALIKE: Readonly<Record<LookMeans, number>> = { instrument: 0, screen: 0.64 };
