import { compileBook } from '../book/compile-book.ts';
import type { Book } from '../book/model.ts';
import { photoPath } from '../book/photo-of.ts';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import { type LoadedBook, loadBook } from '../eleventy/load-book.ts';
import { printable } from '../eleventy/printable.ts';
import { readBook } from '../eleventy/read-book.ts';
import { Refusal } from '../eleventy/refusal.ts';
import { reportText } from '../eleventy/report.ts';
import { BOOK_FILE, FOLDERS, kindOfPath, MEASUREMENTS_FILE, SLUG, type Source } from '../recipe/source.ts';

/** What can be worked with of a book, whatever is wrong elsewhere in it. */
export interface SoundBook {
  readonly book: Book;
  /** Paths of the files that were left out: they have errors, or need one that has. */
  readonly leftOut: readonly string[];
  /** The book as it is. */
  readonly loaded: LoadedBook;
}

/** Stands for a plastic or a mold that was left out, so that nothing is taken for the only one that there is. */
const STAND_IN = 'stand-in-for-what-was-left-out';

/**
 * The book of a folder without what has errors and without what needs it: a cup that is hot cannot wait until another recipe is
 * mended. What was left out is said on the error output.
 *
 * Throws: Refusal where nothing is left, since `book.md` itself has errors; the errors are shown first.
 */
export function soundBook(folder: string): SoundBook {
  const loaded = loadBook(folder);
  if (loaded.book) return { book: loaded.book, leftOut: [], loaded };
  const photos = new Set(readBook(folder).photos);
  const leftOut = new Set<string>();
  const leaveOut = (found: readonly Diagnostic[]): boolean => {
    const before = leftOut.size + photos.size;
    for (const path of missingPhotos(found)) photos.add(path);
    for (const path of faultyFiles(found)) leftOut.add(path);
    return leftOut.size + photos.size > before && !leftOut.has(BOOK_FILE);
  };
  for (let more = leaveOut(loaded.diagnostics); more; ) {
    const left = loaded.sources
      .filter(({ path }) => !leftOut.has(path))
      .map((source) => (source.path === MEASUREMENTS_FILE ? withoutFilmsOf(leftOut, source) : source));
    const { book, diagnostics } = compileBook([...left, ...standIns(leftOut)], { photos: [...photos] });
    if (book) {
      if (leftOut.size > 0) console.error(leftOutText(faultyFiles(loaded.diagnostics), [...leftOut]));
      return { book: withoutStandIns(book), leftOut: [...leftOut], loaded };
    }
    more = leaveOut(diagnostics);
  }
  console.error(reportText(loaded));
  throw new Refusal('The book has errors, and nothing can be worked out from it. Mend what is listed above.');
}

/** Photos that are named and not there: that changes no amount and no colour. */
function missingPhotos(diagnostics: readonly Diagnostic[]): readonly string[] {
  return diagnostics.flatMap(({ code, found }) => {
    const [, file] = /`(.+)`/.exec(code === 'photo/missing' ? found : '') ?? [];
    return file === undefined ? [] : [photoPath(file)];
  });
}

/** Files that have errors; of two materials of one name both, since either could be meant. */
function faultyFiles(diagnostics: readonly Diagnostic[]): readonly string[] {
  return diagnostics
    .filter(({ code, severity }) => severity === 'error' && code !== 'photo/missing')
    .flatMap(({ file, code, related = [] }) =>
      code === 'file/same-name' ? [file, ...related.map((other) => other.file)] : [file],
    );
}

/** The table of measured films without those that hold a material that was left out. */
function withoutFilmsOf(leftOut: ReadonlySet<string>, { path, text }: Source): Source {
  const names = [...leftOut].flatMap((each) => kindOfPath(each)?.id ?? []).filter((id) => SLUG.test(id));
  if (names.length === 0) return { path, text };
  const holds = new RegExp(`(?:^|[,;"\\s])(?:${names.join('|')})\\s*=`);
  return {
    path,
    text: text
      .split('\n')
      .filter((line) => !holds.test(line))
      .join('\n'),
  };
}

function standIns(leftOut: ReadonlySet<string>): readonly Source[] {
  const stand = (kind: 'plastic' | 'mold', fields: string): readonly Source[] =>
    [...leftOut].some((path) => path.startsWith(`${FOLDERS[kind]}/`))
      ? [{ path: `${FOLDERS[kind]}/${STAND_IN}.md`, text: `---\ntitle: Left out\n${fields}---\n` }]
      : [];
  return [...stand('plastic', ''), ...stand('mold', 'cavity: 1 ml\nbody: 2 mm\nthin: 1 mm\n')];
}

function withoutStandIns(book: Book): Book {
  const real = <T extends { readonly id: string }>(things: readonly T[]): readonly T[] =>
    things.filter(({ id }) => id !== STAND_IN);
  return { ...book, materials: real(book.materials), molds: real(book.molds) };
}

function leftOutText(faulty: readonly string[], leftOut: readonly string[]): string {
  const needing = leftOut.filter((path) => !faulty.includes(path));
  const besides = needing.length === 0 ? '' : `, and with it what needs it: ${[...needing].sort().join(', ')}`;
  return printable(
    `Left out for errors, which npx cupbook check shows: ${[...new Set(faulty)].sort().join(', ')}${besides}.`,
  );
}
