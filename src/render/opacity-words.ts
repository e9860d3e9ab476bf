import type { Appearance } from '../book/model/colours.ts';
import { opacityClass } from '../book/recipes/facets.ts';
import { OPACITY_CLASSES, type OpacityWord } from '../tables/opacity-classes.ts';

/** What a class of opacity is called on pages and in the search. */
export const opacityName = (word: OpacityWord): string => OPACITY_CLASSES.find((each) => each.word === word)!.said;

/** How much a body hides: the word that it is found by, and what that means. `cloudy: light comes through, shapes don’t` */
export function opacityWords({ contrastRatio }: Pick<Appearance, 'contrastRatio'>): string {
  const { said, meaning } = opacityClass(contrastRatio);
  return `${said}: ${meaning}`;
}
