import { compileFamilies } from './compile-families.ts';
import { lookOnly } from './look-only.ts';
import type { Book, Material, Recipe, Target } from './model.ts';
import { standaloneRecipe } from './standalone-recipe.ts';

/**
 * The book as readers may have it: nothing of a recipe or target that is not published, and only the name and the look of
 * those published as `look`. Every output is made from this value.
 */
export function publishedBook(book: Book): Book {
  const full = new Set(book.recipes.filter(({ publish }) => publish === 'full').map(({ id }) => id));
  const shown = new Set([...full, ...book.recipes.filter(({ publish }) => publish === 'look').map(({ id }) => id)]);
  const targets = book.targets
    .filter(({ publish }) => publish !== 'no')
    .map((target) => ({
      ...(target.publish === 'look' ? lookOfTarget(target) : target),
      recipes: target.recipes.filter((id) => full.has(id)),
    }));
  const shownTargets = new Set(targets.map(({ id }) => id));
  const materials = new Map(book.materials.map((material) => [material.id, material]));
  const standalone = (recipe: Recipe): string =>
    standaloneRecipe(recipe, book.settings, (id): Material => materials.get(id)!);
  const recipes = book.recipes
    .filter(({ id }) => full.has(id))
    .map((recipe) => withoutSecrets(recipe, full, shownTargets, standalone));
  const looks = book.recipes.filter(({ id }) => shown.has(id) && !full.has(id)).map((recipe) => lookOnly(recipe, book));
  const families = compileFamilies([
    ...recipes,
    ...looks.map(({ id, title }) => lookDescendant(id, title, book, looks)),
  ]);
  const familyOf = new Map(families.flatMap((family) => family.members.map((id) => [id, family.id] as const)));
  return {
    ...book,
    edition: 'shared',
    recipes: recipes.map((recipe) => ({ ...recipe, family: familyOf.get(recipe.id)! })),
    looks,
    targets,
    materials: book.materials.map((material) => ({
      ...material,
      usedIn: material.usedIn.filter(({ recipe }) => full.has(recipe)),
    })),
    molds: book.molds.map((mold) => ({ ...mold, usedIn: mold.usedIn.filter((id) => full.has(id)) })),
    families,
  };
}

/**
 * A recipe without what it would tell of others that readers cannot have. That a look-only recipe comes from this one, or this one
 * from it, would tell its materials.
 */
function withoutSecrets(
  recipe: Recipe,
  full: ReadonlySet<string>,
  targets: ReadonlySet<string>,
  standalone: (recipe: Recipe) => string,
): Recipe {
  const cups = recipe.cups.map(({ from, ...cup }) => (from && full.has(from.recipe) ? { ...cup, from } : cup));
  const { parent, target, match, ...rest } = recipe;
  const namesHidden = [parent, ...recipe.cups.map(({ from }) => from?.recipe)].some(
    (id) => id !== undefined && !full.has(id),
  );
  const hidesTarget = target !== undefined && !targets.has(target);
  return {
    ...rest,
    ...(parent !== undefined && full.has(parent) ? { parent } : {}),
    ...(target === undefined || hidesTarget ? {} : { target, ...(match === undefined ? {} : { match }) }),
    cups,
    // A change of dose from a recipe whose amounts are not published would tell them.
    changes: recipe.changes.filter(({ fromRecipe }) => full.has(fromRecipe)),
    children: recipe.children.filter((id) => full.has(id)),
    cupsFrom: recipe.cupsFrom.filter((id) => full.has(id)),
    cupsIn: recipe.cupsIn.filter((id) => full.has(id)),
    source: namesHidden || hidesTarget ? { ...recipe.source, text: standalone(recipe) } : recipe.source,
  };
}

/** A target's name and colours, without notes, photo, file and what was measured. */
function lookOfTarget({ photo: _, parts, ...target }: Target): Target {
  return {
    ...target,
    parts: parts.map(({ reflectance: __, ...part }) => part),
    notes: '',
    source: { ...target.source, text: '' },
  };
}

/** A look in the lineage: that it comes from another look may be told, by which cup and how it changed may not. */
function lookDescendant(
  id: string,
  title: string,
  book: Book,
  looks: readonly { readonly id: string }[],
): Parameters<typeof compileFamilies>[0][number] {
  const { parent } = book.recipes.find((recipe) => recipe.id === id)!;
  const told = looks.some((look) => look.id === parent);
  return { id, title, ...(parent !== undefined && told ? { parent } : {}), cups: [], changes: [] };
}
