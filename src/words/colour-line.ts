import type { Recipe } from '../book/model/recipe.ts';
import { opacityClass } from '../book/recipes/facets.ts';
import { LEAST_CONTRAST } from '../optics/seen-coverage.ts';
import { hexWords } from './colour.ts';
import { listText, sentence } from './sentence-text.ts';

/** Below this share of its face no flake is named in a line. Convention of this book. */
const WORTH_NAMING = 0.01;

/**
 * A recipe in a line: its colours, how much it hides, its flake with the share of the face that shows it, how its cups lie; such as “Light brown,
 * cloudy; 20 % Black hexagon; laminate”.
 */
export function colourLine(
  { pattern, cups, body }: Pick<Recipe, 'pattern' | 'cups' | 'body'>,
  title: (material: string) => string,
): string {
  const hexes = cups.length === 1 ? [body.overWhite.hex] : cups.map((cup) => cup.body.overWhite.hex);
  const flakes = cups
    .flatMap((cup) => cup.flakes)
    .filter(({ seen, contrast }) => seen >= WORTH_NAMING && contrast >= LEAST_CONTRAST)
    .map(({ material, seen }) => `${Math.round(100 * seen)} % ${title(material)}`);
  const parts = [
    `${listText([...new Set(hexes.map(hexWords))])}, ${opacityClass(body.contrastRatio).said}`,
    ...(flakes.length === 0 ? [] : [listText(flakes)]),
    ...(cups.length === 1 ? [] : [pattern]),
  ];
  return sentence(parts.join('; '));
}
