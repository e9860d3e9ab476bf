import { type Diagnostic, hasErrors } from '../diagnostics/diagnostic.ts';
import { MOST_IN_FULL } from '../learning/folded-looks.ts';
import { learnNearly } from '../learning/learn-nearly.ts';
import type { Source } from '../recipe/source.ts';
import { defined } from '../values/defined.ts';
import { ColourMemory } from './colour-memory.ts';
import { type CheckedFiles, type CompileOptions, checkedFiles } from './compile-book.ts';
import type { CompileMemory } from './compile-memory.ts';
import type { ColouredParts } from './join-book.ts';
import { eyeOf } from './learning/eye-of.ts';
import { learnShelf, type TaughtShelf } from './learning/learn-shelf.ts';
import { isSameTaught } from './learning/learning-data.ts';
import { withCameraNumbers } from './match/with-camera-numbers.ts';
import type { Recipe } from './model/recipe.ts';
import type { Book } from './model.ts';
import { compileRecipes } from './recipes/compile-recipes.ts';
import { compareRecipes, showMaterials } from './recipes/join-recipes.ts';
import { type Report, reportInto } from './report.ts';
import { compiledTargets, taughtWithout } from './sound-book.ts';

/** A recipe computed before all others. */
export interface RecipeAnew {
  readonly id: string;
  /** The book that was shown, with the recipe and its materials as they are nearly now; all else is as it was. */
  readonly book: Book;
}

/**
 * A recipe as an edit of its looks leaves it, before the whole book is compiled anew: of the book that a memory has, with a shelf that is
 * learned nearly. For a page that its maker sees at once, until that of the whole book is there; never for readers.
 *
 * Undefined where there is something else to do first: more was changed than that recipe's file, no look was, the book has errors or had
 * some, it has so many looks that little time would be won, or something cannot be computed. What is told of the files is told by the
 * compile that follows, and so is what is doubted of its looks.
 *
 * @param options as for `compileBook`; its memory is left as that compile needs it
 * @param shown the edition of the last book that is shown
 */
export function recipeAnew(
  sources: readonly Source[],
  { memory, ...options }: CompileOptions & { readonly memory: CompileMemory },
  shown: Book,
): RecipeAnew | undefined {
  const last = memory.last;
  const before = last?.compiled.complete ? changedRecipe(last.sources, sources, shown) : undefined;
  if (!before || (options.unread ?? []).length > 0) return undefined;
  const diagnostics: Diagnostic[] = [];
  const report = reportInto(diagnostics);
  const files = checkedFiles(sources, options, memory, report);
  if (hasErrors(diagnostics) || files.things.faulty.waiting.size > 0) return undefined;
  const { data, cameras } = taughtWithout(new Map(), { ...files, looks: memory.looks });
  const { learned } = shown;
  if (isSameTaught(data, learned.data) || data.looks.length > MOST_IN_FULL) return undefined;
  const taught = learnShelf(data, files.prepared.shelf, new ColourMemory(), report, 'nearly', (taughtBy) =>
    learnNearly(taughtBy, learned),
  );
  const targets = withCameraNumbers(compiledTargets(files, memory, report), cameras, new ColourMemory());
  const book = taught && withRecipe(shown, before, files, { ...taught, targets }, report);
  return book && !hasErrors(diagnostics) ? { id: before.id, book } : undefined;
}

/** The recipe whose file alone has another text than before. */
function changedRecipe(before: readonly Source[], now: readonly Source[], shown: Book): Recipe | undefined {
  const texts = new Map(before.map(({ path, text }) => [path, text]));
  const changed = now.filter(({ path, text }) => texts.get(path) !== text);
  if (before.length !== now.length || changed.length !== 1 || !texts.has(changed[0]!.path)) return undefined;
  return shown.recipes.find(({ source }) => source.path === changed[0]!.path);
}

function withRecipe(
  shown: Book,
  before: Recipe,
  { things, prepared }: CheckedFiles,
  { learned, shelf, targets }: TaughtShelf & Pick<ColouredParts, 'targets'>,
  report: Report,
): Book | undefined {
  const parts = prepared.recipes.filter(({ recipe }) => recipe.id === before.id);
  const eye = eyeOf(learned);
  const { molds, settings, filled } = prepared;
  const memory = new ColourMemory();
  const [core] = compileRecipes(parts, { shelf, eye, molds, settings, kept: memory.cores, report }).values();
  if (!core) return undefined;
  const context = {
    materials: [...shelf.values()],
    eye,
    optics: eye.optics,
    belief: eye.belief,
    settings,
    molds,
    targets,
    filled,
    kept: memory.compared,
  };
  // What it comes from is only compared with, so nothing is asked of it.
  const from = new Set([core.parent, ...core.cupsFrom]);
  const known = shown.recipes.filter(({ id }) => from.has(id)).map(({ target: _, ...others }) => others);
  const cores = new Map([core, ...known].map((each) => [each.id, each] as const));
  const [recipe] = compareRecipes(cores, context, things, report);
  if (!recipe) return undefined;
  const used = new Set(
    core.cups.flatMap(({ plastics, contents }) => [...plastics, ...contents]).map(({ material }) => material),
  );
  const materials = showMaterials(shelf, eye, things, memory.shown, report);
  // Found last, by what all looks say.
  const doubted = shown.doubted?.filter(({ of, id }) => of !== 'recipe' || id !== before.id);
  const { children, cupsIn, family } = before;
  return {
    ...shown,
    ...defined({ doubted }),
    learned,
    optics: eye.optics,
    recipes: shown.recipes.map((each) => (each.id === recipe.id ? { ...recipe, children, cupsIn, family } : each)),
    materials: shown.materials.map((each) => (used.has(each.id) ? { ...each, ...materials.get(each.id) } : each)),
  };
}
