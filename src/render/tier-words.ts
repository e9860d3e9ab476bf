import type { Tier } from '../book/model.ts';

/** How a predicted colour is known, for a reader. */
export const TIER_WORDS: Readonly<Record<Tier, string>> = {
  measured: 'measured: from spectra of every material that colours it',
  photographed: 'photographed: from photos of test chips of every material that colours it',
  estimated: 'estimated: at least one material is known only by one colour and its kind',
};

/** The same for plastic with nothing in it. */
export const PLAIN_PLASTIC_WORDS = 'estimated: plain plastic, known only as clear or milky';

/** The same for one material. */
export const MATERIAL_TIER_WORDS: Readonly<Record<Tier, string>> = {
  measured: 'Measured: spectra of test chips over white and black, at a known dose and thickness.',
  photographed: 'Photographed: test chips over white and black, at a known dose and thickness.',
  estimated: 'Estimated from one colour and its kind.',
};
