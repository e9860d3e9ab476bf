import type { Tier } from '../book/model.ts';

/** What a predicted colour rests on, for a reader. */
export const TIER_WORDS: Readonly<Record<Tier, string>> = {
  measured: 'measured: spectra of every material that colours it',
  photographed: 'photographed: chips over white and black of every material that colours it',
  estimated: 'estimated: at least one material is known by one colour and its kind alone',
};

/** The same for plastic with nothing in it. */
export const PLAIN_PLASTIC_WORDS = 'estimated: nothing is in the plastic, which is known as clear or milky alone';

/** The same for one material. */
export const MATERIAL_TIER_WORDS: Readonly<Record<Tier, string>> = {
  measured: 'Measured: spectra over white and black at a known dose and thickness.',
  photographed: 'Photographed: chips over white and black at a known dose and thickness.',
  estimated: 'Estimated from one colour and its kind.',
};
