import type { LearnedShelf } from '../learning/learned-shelf.ts';
import { BOOK_FILE, type Source } from '../recipe/source.ts';
import { defined } from '../values/defined.ts';
import type { ColourMemory } from './colour-memory.ts';
import { eyeOf } from './learning/eye-of.ts';
import type { LeftOut } from './left-out.ts';
import type { Chip } from './model/chip.ts';
import type { Mold } from './model/shelf.ts';
import type { Target } from './model/target.ts';
import type { Book } from './model.ts';
import type { Prepared } from './prepare-book.ts';
import type { Things } from './read/read-things.ts';
import type { RecipeCore } from './recipes/compile-recipe.ts';
import { compareRecipes, joinRecipes, showMaterials, usesOf } from './recipes/join-recipes.ts';
import type { Report } from './report.ts';

/** What the files of a book give, with their colours, before it is put together. */
export interface ColouredParts extends Prepared {
  readonly learned: LearnedShelf;
  /** Numbers of the cameras in it, by their names. */
  readonly cameras: ReadonlyMap<string, string>;
  readonly cores: ReadonlyMap<string, RecipeCore>;
  readonly chips: ReadonlyMap<string, Chip>;
  readonly targets: ReadonlyMap<string, Omit<Target, 'recipes'>>;
  /** Of a book for readers the recipes that they get nothing of. */
  readonly hidden?: ReadonlyMap<string, RecipeCore>;
}

/**
 * Puts the parts together that are not left out.
 *
 * @param out what is left out for all that was found until then
 */
export function joinBook(
  things: Things,
  parts: ColouredParts,
  out: () => ReadonlyMap<string, LeftOut>,
  memory: ColourMemory,
  report: Report,
): Book | undefined {
  const kept = <T extends { readonly id: string; readonly source: Source }>(
    all: ReadonlyMap<string, T>,
  ): ReadonlyMap<string, T> => {
    const gone = out();
    return gone.size === 0 ? all : new Map([...all].filter(([, { source }]) => !gone.has(source.path)));
  };
  const { fields, settings, filled, learned } = parts;
  const eye = eyeOf(learned);
  const { optics } = eye;
  // Each step may find that something cannot be computed, and what needs that is left out of the next.
  const shown = kept(showMaterials(kept(parts.shelf), eye, things, memory.shown, report));
  if (out().has(BOOK_FILE)) return undefined;
  const shelf = new Map([...parts.shelf].filter(([id]) => shown.has(id)));
  const [molds, allTargets] = [kept(parts.molds), kept(parts.targets)];
  const context = {
    materials: [...shelf.values()],
    eye,
    optics,
    belief: eye.belief,
    settings,
    molds,
    targets: allTargets,
    filled,
    kept: memory.compared,
    ...defined({ hidden: parts.hidden }),
  };
  const compared = compareRecipes(kept(parts.cores), context, things, report);
  const gone = out();
  const { recipes, families } = joinRecipes(compared.filter(({ source }) => !gone.has(source.path)));
  const uses = usesOf(recipes);
  return {
    format: 2,
    edition: 'mine',
    title: fields.title,
    ...defined({ maker: fields.maker }),
    ...(fields.address === undefined
      ? {}
      : { address: fields.address.endsWith('/') ? fields.address : `${fields.address}/` }),
    foreword: things.book!.notes,
    settings,
    ...defined({ measuringCard: parts.measuringCard }),
    ...(parts.cameras.size === 0 ? {} : { cameraNumbers: Object.fromEntries(parts.cameras) }),
    optics,
    learned,
    recipes,
    chips: [...kept(parts.chips).values()],
    looks: [],
    materials: [...shown.values()].map((material) => ({ ...material, usedIn: uses.get(material.id) ?? [] })),
    molds: [...molds.values()].map(
      (mold): Mold => ({ ...mold, usedIn: recipes.filter((recipe) => recipe.mold === mold.id).map(({ id }) => id) }),
    ),
    targets: [...allTargets.values()].map(
      (target): Target => ({
        ...target,
        recipes: recipes.filter((recipe) => recipe.target === target.id).map(({ id }) => id),
      }),
    ),
    families,
  };
}
