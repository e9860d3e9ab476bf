import { compileBook } from '../book/compile-book.ts';
import type { Book } from '../book/model.ts';
import { compareDiagnostics, type Diagnostic, hasErrors } from '../diagnostics/diagnostic.ts';
import type { Source } from '../recipe/source.ts';
import { readBook } from './read-book.ts';

/** A book's folder after reading and compiling. */
export interface LoadedBook {
  /** Absent where the folder has errors. */
  readonly book: Book | undefined;
  /** All findings, in the order of the files. */
  readonly diagnostics: readonly Diagnostic[];
  readonly sources: readonly Source[];
  /** Every picture, `photos/…`, by path. */
  readonly photos: readonly string[];
}

/**
 * Reads and compiles the book of a folder; what is wrong with its texts comes back as diagnostics.
 *
 * @param more texts to compile as if they were in the folder
 */
export function loadBook(folder: string, more: readonly Source[] = []): LoadedBook {
  const read = readBook(folder);
  const sources = [...read.sources, ...more];
  const compiled = compileBook(sources, { photos: read.photos, unread: read.diagnostics.map(({ file }) => file) });
  const diagnostics = [...read.diagnostics, ...compiled.diagnostics].sort(compareDiagnostics);
  return { book: hasErrors(diagnostics) ? undefined : compiled.book, diagnostics, sources, photos: read.photos };
}
