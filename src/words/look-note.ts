import type { Recipe } from '../book/model/recipe.ts';

/** What a maker must know who shows a look: some looks can be matched however coarse their colours are. */
export const LOOK_WARNING = 'anyone with your materials can match what they see; `publish: no` keeps it to yourself';

/** The warning for a whole book, once; undefined where no recipe shows its look alone. */
export function lookNote(recipes: readonly Pick<Recipe, 'publish' | 'title'>[]): string | undefined {
  const shown = recipes.filter(({ publish }) => publish === 'look').map(({ title }) => title);
  const [first] = shown;
  if (first === undefined) return undefined;
  const which = shown.length === 1 ? `of ${first}` : `of ${first} and ${shown.length - 1} more`;
  return `readers see only the look ${which}: ${LOOK_WARNING}`;
}
