import type { Appearance } from '../book/model/colours.ts';
import { opacityClass } from '../book/recipes/facets.ts';

/** How much a body hides: the word that it is found by, and what that means. `thick: light comes through, shapes don’t` */
export function opacityWords({ contrastRatio }: Pick<Appearance, 'contrastRatio'>): string {
  const { word, meaning } = opacityClass(contrastRatio);
  return `${word}: ${meaning}`;
}
