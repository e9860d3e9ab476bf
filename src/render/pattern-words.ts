import type { Pattern } from '../book/model.ts';

/** How cups are arranged in the bait, for a reader. */
export const PATTERN_WORDS: Readonly<Record<Pattern, string>> = {
  solid: 'solid: one cup',
  laminate: 'laminate: two cups, one behind the other',
  swirl: 'swirl: two cups poured together, unmixed',
  layered: 'layered: cups in layers',
  core: 'core: one cup inside another',
  tipped: 'tipped: a body and a tip',
};
