import type { ColourMemory } from './colour-memory.ts';
import { eyeOf } from './learning/eye-of.ts';
import { learnShelf, type TaughtShelf } from './learning/learn-shelf.ts';
import { learningData } from './learning/learning-data.ts';
import type { LeftOut } from './left-out.ts';
import type { Prepared } from './prepare-book.ts';
import type { Things } from './read/read-things.ts';
import type { RecipeCore } from './recipes/compile-recipe.ts';
import { compileRecipes } from './recipes/compile-recipes.ts';
import type { RecipeParts } from './recipes/recipe-parts.ts';
import type { Report } from './report.ts';

/** What recipes are coloured with. */
export interface Colouring {
  readonly taught: TaughtShelf;
  /** What is left out of what was learned. */
  readonly left: ReadonlyMap<string, LeftOut>;
  readonly memory: ColourMemory;
  readonly report: Report;
}

/**
 * All recipes with their colours. Those that are left out are compiled too, so that their mistakes are told; what they are made of was not
 * learned with the rest, and they are looked at with what the labels of all that there is say.
 */
export function colouredRecipes(
  { materials }: Things,
  prepared: Prepared,
  colouring: Colouring,
): ReadonlyMap<string, RecipeCore> {
  const { recipes, shelf } = prepared;
  const { taught, left, memory, report } = colouring;
  const isLeft = ({ recipe }: RecipeParts): boolean => left.has(recipe.source.path);
  const soundOnes = recipes.filter((parts) => !isLeft(parts));
  const sound = compiledBy(taught, soundOnes, prepared, colouring);
  const others = recipes.filter(isLeft);
  if (others.length === 0) return sound;
  const { data: labels } = learningData(materials, shelf, [], []);
  const byLabels = learnShelf(labels, shelf, memory, report, 'labels') ?? taught;
  return new Map([...sound, ...compiledBy(byLabels, others, prepared, colouring)]);
}

/**
 * The recipes that are not left out with the colours that readers see. Those of which readers get nothing stay as they are: nobody looks
 * at them.
 *
 * @param hidden those, as their maker has them
 */
export function colouredForReaders(
  prepared: Prepared,
  hidden: ReadonlyMap<string, RecipeCore>,
  colouring: Colouring,
): ReadonlyMap<string, RecipeCore> {
  const kept = prepared.recipes.filter(({ recipe }) => !colouring.left.has(recipe.source.path));
  const theirs = kept.filter(({ recipe }) => !hidden.has(recipe.id));
  const compiled = compiledBy(colouring.taught, theirs, prepared, colouring);
  // In the order of the book.
  return new Map(
    kept.flatMap(({ recipe: { id } }) => {
      const core = hidden.get(id) ?? compiled.get(id);
      return core ? [[id, core] as const] : [];
    }),
  );
}

function compiledBy(
  taught: TaughtShelf,
  recipes: readonly RecipeParts[],
  { molds, settings }: Prepared,
  { memory, report }: Colouring,
): ReadonlyMap<string, RecipeCore> {
  return compileRecipes(recipes, {
    ...taught,
    eye: eyeOf(taught.learned),
    molds,
    settings,
    kept: memory.cores,
    report,
  });
}
