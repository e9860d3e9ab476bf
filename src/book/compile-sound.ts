import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import { BOOK_FILE, FOLDERS, kindOfPath, MEASUREMENTS_FILE, SLUG, type Source } from '../recipe/source.ts';
import { compileBook } from './compile-book.ts';
import type { Book } from './model.ts';
import { photoPath } from './photo-of.ts';

/** What is sound of a book that has errors. */
export interface SoundPart {
  readonly book: Book;
  /** Paths of the files that have errors. */
  readonly faulty: readonly string[];
  /** Paths of all files that were left out: those, and what needs them. */
  readonly leftOut: readonly string[];
}

/** Stands for a plastic or a mold that was left out, so that nothing is taken for the only one that there is. */
const STAND_IN = 'stand-in-for-what-was-left-out';

/**
 * Compiles a book without the files that have errors and without those that need them; undefined where `book.md` is one of
 * them, and nothing can be worked out.
 *
 * @param photos those that are there, as `photos/…`
 * @param found what the whole book's reading and compiling found, errors among it
 */
export function compileSound(
  sources: readonly Source[],
  photos: readonly string[],
  found: readonly Diagnostic[],
): SoundPart | undefined {
  const known = new Set(photos);
  const leftOut = new Set<string>();
  const leaveOut = (diagnostics: readonly Diagnostic[]): boolean => {
    const before = leftOut.size + known.size;
    for (const path of missingPhotos(diagnostics)) known.add(path);
    for (const path of faultyFiles(diagnostics)) leftOut.add(path);
    return leftOut.size + known.size > before && !leftOut.has(BOOK_FILE);
  };
  // Each round leaves out what needs what the round before left out, until nothing more does.
  for (let more = leaveOut(found); more; ) {
    const left = sources
      .filter(({ path }) => !leftOut.has(path))
      .map((source) => (source.path === MEASUREMENTS_FILE ? withoutFilmsOf(leftOut, source) : source));
    const { book, diagnostics } = compileBook([...left, ...standIns(leftOut)], { photos: [...known] });
    if (book) return { book: withoutStandIns(book), faulty: faultyFiles(found), leftOut: [...leftOut] };
    more = leaveOut(diagnostics);
  }
  return undefined;
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
    .filter(({ code, severity }) => severity === 'error' && code !== 'photo/missing' && code !== 'photo/unreadable')
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
