import type { Book, Recipe, RecipeLook } from './model.ts';

/** What is published of a recipe with `publish: look`: its name and how it looks. */
export function lookOnly(recipe: Recipe, book: Book): RecipeLook {
  const { id, title, pattern, body, thin, other, facets } = recipe;
  const { hueFamilies, lightness, opacity } = facets;
  const { shape } = book.molds.find((mold) => mold.id === recipe.mold)!;
  return {
    id,
    title,
    pattern,
    shape,
    body,
    thin,
    ...(other === undefined ? {} : { other }),
    facets: { hueFamilies, lightness, opacity },
  };
}
