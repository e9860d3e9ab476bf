import { type CompileOptions, compileBook } from '../book/compile-book.ts';
import type { CompileMemory } from '../book/compile-memory.ts';
import type { CompiledBook } from '../book/compiled.ts';
import { dayOf } from '../book/day-of.ts';
import type { LeftOut } from '../book/left-out.ts';
import type { Book } from '../book/model.ts';
import { type RecipeAnew, recipeAnew } from '../book/recipe-anew.ts';
import { compareDiagnostics, type Diagnostic, hasErrors } from '../diagnostics/diagnostic.ts';
import type { Source } from '../recipe/source.ts';
import { defined } from '../values/defined.ts';
import type { OpenPhotos } from './open-photos.ts';
import { type BookFolder, readBook } from './read-book.ts';

/** A book's folder after reading and compiling. */
export type LoadedBook = CompiledBook & {
  /** Files that are not in the book for their errors, or since they wait to be filled in, or for what they need. */
  readonly leftOut: readonly LeftOut[];
  /** All findings, in the order of the files. */
  readonly diagnostics: readonly Diagnostic[];
  readonly sources: readonly Source[];
  /** Every picture, `photos/…`, by path. */
  readonly photos: readonly string[];
};

/**
 * Reads and compiles the book of a folder; what is wrong with its texts comes back as diagnostics. Photos are not opened: no amount and no
 * colour depends on them.
 *
 * @param more texts to compile as if they were in the folder
 */
export function loadBook(folder: string, more: readonly Source[] = []): LoadedBook {
  return compiled(readBook(folder), more);
}

/**
 * The same, with its photos opened: what can be built of this is built.
 *
 * @param memory what the last time has left, so that this one is quicker
 */
export async function loadWholeBook(
  folder: string,
  openPhotos: OpenPhotos,
  memory?: CompileMemory,
): Promise<LoadedBook> {
  const read = readBook(folder);
  const photoFaults = await openPhotos(folder, read.photos);
  return compiled(read, [], { photoFaults, ...defined({ memory }) });
}

/**
 * The recipe whose looks were changed since the book of a memory was compiled, nearly as it will be: see `recipeAnew`. Photos are not opened.
 *
 * @param shown the edition of that book that is shown
 */
export function loadRecipeAnew(folder: string, memory: CompileMemory, shown: Book): RecipeAnew | undefined {
  const { sources, photos, diagnostics } = readBook(folder);
  return recipeAnew(sources, { photos, memory, unread: diagnostics.map(({ file }) => file) }, shown);
}

function compiled(
  read: BookFolder,
  more: readonly Source[],
  options: Pick<CompileOptions, 'photoFaults' | 'memory'> = {},
): LoadedBook {
  const sources = [...read.sources, ...more];
  const { diagnostics: found, ...compiledBook } = compileBook(sources, {
    photos: read.photos,
    today: dayOf(new Date()),
    ...options,
    unread: read.diagnostics.map(({ file }) => file),
  });
  const diagnostics = [...read.diagnostics, ...found].sort(compareDiagnostics);
  const loaded = { ...compiledBook, diagnostics, sources, photos: read.photos };
  return hasErrors(diagnostics) ? { ...loaded, complete: false } : loaded;
}
