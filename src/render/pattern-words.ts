import type { Pattern } from '../book/model.ts';

/** How cups are arranged in the bait, for a reader. */
export const PATTERN_WORDS: Readonly<Record<Pattern, string>> = {
  solid: 'one cup',
  laminate: 'two cups, one behind the other',
  swirl: 'two cups poured together, unmixed',
  layered: 'cups in layers',
  core: 'one cup inside another',
  tipped: 'a body and a tip',
};
