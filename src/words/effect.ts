import type { Material } from '../book/model/shelf.ts';

/** What a material or target does beside being of a colour. */
export const EFFECT_WORDS: Readonly<Record<NonNullable<Material['effect']>, string>> = {
  fluorescent: 'fluorescent',
  glow: 'glows in the dark',
  shift: 'shifts its colour',
};
