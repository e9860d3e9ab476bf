import { compileBook } from '../book/compile-book.ts';
import { dayOf } from '../book/day-of.ts';
import type { Book } from '../book/model.ts';
import { compareDiagnostics, type Diagnostic, hasErrors } from '../diagnostics/diagnostic.ts';
import type { Source } from '../recipe/source.ts';
import type { OpenPhotos } from './open-photos.ts';
import { type BookFolder, readBook } from './read-book.ts';

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
 * Reads and compiles the book of a folder; what is wrong with its texts comes back as diagnostics. Photos are not opened: no amount and no
 * colour depends on them.
 *
 * @param more texts to compile as if they were in the folder
 */
export function loadBook(folder: string, more: readonly Source[] = []): LoadedBook {
  return compiled(readBook(folder), more);
}

/** The same, with its photos opened: what can be built of this is built. */
export async function loadWholeBook(folder: string, openPhotos: OpenPhotos): Promise<LoadedBook> {
  const read = readBook(folder);
  return compiled(read, [], await openPhotos(folder, read.photos));
}

function compiled(
  read: BookFolder,
  more: readonly Source[],
  photoFaults?: Awaited<ReturnType<OpenPhotos>>,
): LoadedBook {
  const sources = [...read.sources, ...more];
  const { book, diagnostics: found } = compileBook(sources, {
    photos: read.photos,
    today: dayOf(new Date()),
    ...(photoFaults && { photoFaults }),
    unread: read.diagnostics.map(({ file }) => file),
  });
  const diagnostics = [...read.diagnostics, ...found].sort(compareDiagnostics);
  return { book: hasErrors(diagnostics) ? undefined : book, diagnostics, sources, photos: read.photos };
}
