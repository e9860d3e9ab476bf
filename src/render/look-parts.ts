import type { Appearance } from '../book/model/colours.ts';
import type { RecipeLook } from '../book/model/recipe.ts';
import { PATTERNS } from '../patterns/patterns.ts';

/** What is seen of a look-only recipe, and what it is called, the body first. */
export function lookParts({ pattern, body, thin, other }: RecipeLook): readonly { name: string; look: Appearance }[] {
  const { second } = PATTERNS[pattern];
  return [
    { name: 'body', look: body },
    ...(other === undefined || second === undefined ? [] : [{ name: second.name, look: other }]),
    ...(thin === undefined ? [] : [{ name: 'thin part', look: thin }]),
  ];
}
