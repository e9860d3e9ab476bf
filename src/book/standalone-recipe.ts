import { formatDecimal } from '../units/format-quantity.ts';
import type { Recipe } from './model.ts';

/**
 * The file of a recipe that needs no other recipe: its cups as they really are, in grams per 100 ml.
 *
 * For readers who cannot have the recipes that it comes from. `check` accepts it beside the same shelf and molds.
 */
export function standaloneRecipe(
  recipe: Pick<Recipe, 'title' | 'made' | 'pattern' | 'mold' | 'cups' | 'notes' | 'tags'>,
): string {
  const lines = [
    '---',
    `title: ${JSON.stringify(recipe.title)}`,
    ...(recipe.made === undefined ? [] : [`made: ${recipe.made}`]),
    `pattern: ${recipe.pattern}`,
    `mold: ${recipe.mold}`,
    ...(recipe.tags.length === 0 ? [] : [`tags: ${JSON.stringify(recipe.tags)}`]),
    'cups:',
    ...recipe.cups.flatMap((cup) => [
      `  ${cup.name}:`,
      `    share: ${formatDecimal(cup.share * 100, 6)}%`,
      `    plastic: [${cup.plastics.map(({ material, fraction }) => `${formatDecimal(fraction * 100, 6)} ml ${material}`).join(', ')}]`,
      ...(cup.contents.length === 0 ? [] : ['    add:']),
      ...cup.contents.map(
        ({ material, gramsPerMl }) => `      ${material}: ${formatDecimal(gramsPerMl * 100, 5)} g per 100 ml`,
      ),
    ]),
    '---',
    recipe.notes,
    '',
  ];
  return lines.join('\n');
}
