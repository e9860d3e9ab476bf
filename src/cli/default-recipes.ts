import { resolve } from 'node:path';

/** The book's folder where the command line names none: that of CUPBOOK_RECIPES, or the demo book. */
export function defaultRecipes(root: string, from: string): string {
  const named = process.env.CUPBOOK_RECIPES;
  return named ? resolve(from, named) : resolve(root, 'recipes');
}
