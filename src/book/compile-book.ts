import { compareDiagnostics, type Diagnostic, hasErrors } from '../diagnostics/diagnostic.ts';
import type { Thing } from '../recipe/read-thing.ts';
import { BOOK_FILE, MEASUREMENTS_FILE, type Source } from '../recipe/source.ts';
import { checkDay } from './checks/check-day.ts';
import { checkDeep } from './checks/check-deep.ts';
import { checkPhotos, type PhotoFault } from './checks/check-photos.ts';
import { checkPortable } from './checks/check-portable.ts';
import { checkTitles } from './checks/check-titles.ts';
import { reportWaiting } from './checks/report-waiting.ts';
import { CompileMemory } from './compile-memory.ts';
import type { Compiled } from './compiled.ts';
import type { LeftOut } from './left-out.ts';
import { type Prepared, prepareBook } from './prepare-book.ts';
import { checkPublished } from './publish/check-secrets.ts';
import { leftOutSecrets } from './publish/left-out-secrets.ts';
import { readThings, type Things } from './read/read-things.ts';
import { type Report, reportInto } from './report.ts';
import type { ShelfFit } from './shelf/shelf-fit.ts';
import { soundBook } from './sound-book.ts';

/** What a compiler needs besides the texts. */
export interface CompileOptions {
  /** Photos that are there, as `photos/…`. */
  readonly photos?: readonly string[];
  /** What is wrong with photos that are there and cannot be shown, by path. Left out: they were not opened. */
  readonly photoFaults?: ReadonlyMap<string, PhotoFault>;
  /** Files and folders that are there but could not be read: the name of one, or of what may be in one, is not unknown. */
  readonly unread?: readonly string[];
  /** The day, `2026-03-14`: what was made later is told. Left out: it is not looked for. */
  readonly today?: string;
  /** What the last compile of the book has left, for this one to be quicker; of the result it changes nothing. */
  readonly memory?: CompileMemory;
}

/**
 * Compiles a book from its texts: reads and checks every file, keeps the ledger of every cup, computes amounts, colours and
 * lineage, and leaves out what has errors and what needs that.
 *
 * Pure: the same texts give the same book, whatever their order. All mistakes of all files are found in one run, and nothing is compiled
 * twice.
 */
export function compileBook(sources: readonly Source[], options: CompileOptions = {}): Compiled {
  const { memory = new CompileMemory(), ...others } = options;
  const asked = JSON.stringify([sources, others, [...(others.photoFaults ?? [])]]);
  if (memory.last?.asked === asked) return memory.last.compiled;
  memory.begin();
  const compiled = compileAll(sources, others, memory);
  memory.last = { sources, asked, compiled };
  return compiled;
}

/** The files of a book, read and checked, and what hangs on no colour. */
export interface CheckedFiles {
  readonly things: Things;
  readonly prepared: Prepared;
  /** All that was read, also what is sound in files with faults. */
  readonly everything: readonly Thing[];
}

/** Reads and checks every file, and compiles what hangs on no colour. */
export function checkedFiles(
  sources: readonly Source[],
  options: CompileOptions,
  memory: CompileMemory,
  report: Report,
): CheckedFiles {
  const unread = options.unread ?? [];
  const things = readThings(sources, report, memory.things, unread);
  checkPortable([...sources.map(({ path }) => path), ...(options.photos ?? [])], report);
  if (!things.book && !things.faulty.has('book', 'book')) reportNoBook(report);

  const prepared = prepareBook(things, memory, report);
  checkDeep(things, prepared, report);
  const everything = allThings(things);
  checkFiles(things, everything, options, report);
  return { things, prepared, everything };
}

function compileAll(sources: readonly Source[], options: CompileOptions, memory: CompileMemory): Compiled {
  const diagnostics: Diagnostic[] = [];
  const report = reportInto(diagnostics);
  const unread = options.unread ?? [];
  const { things, prepared, everything } = checkedFiles(sources, options, memory, report);
  const { book, gone, wasSound } = soundBook({ things, prepared, unread, told: diagnostics }, memory, report);
  reportWaiting(gone, everything, report);
  if (book && wasSound) {
    const secrets = leftOutSecrets(everything, (path) => gone.has(path), prepared.fields.publish);
    checkPublished(book, everything, secrets, report);
  }

  diagnostics.sort(compareDiagnostics);
  const result = { leftOut: allLeftOut(gone, prepared.films, wasSound), diagnostics };
  return book && wasSound && !hasErrors(diagnostics)
    ? { ...result, complete: true, book }
    : { ...result, complete: false, book };
}

function reportNoBook(report: Report): void {
  report.tell('book/missing', BOOK_FILE, {
    found: `folder without \`${BOOK_FILE}\``,
    expected: `a file \`${BOOK_FILE}\` with at least a \`title\``,
    why: 'it says whose book it is and what the bench measures with',
    fix: `create \`${BOOK_FILE}\` with the lines \`---\`, \`title: …\`, \`---\``,
  });
}

/** All that was read, also what is sound in files with faults. */
function allThings({ book, faulty, recipes, chips, materials, cuts, molds, targets }: Things): readonly Thing[] {
  return [
    ...(book ? [book] : []),
    ...faulty.parts.filter((thing) => thing !== book),
    ...recipes.values(),
    ...chips.values(),
    ...materials.values(),
    ...cuts.values(),
    ...molds.values(),
    ...targets.values(),
  ];
}

/** Checks what no colour and no amount depends on. */
function checkFiles(things: Things, everything: readonly Thing[], options: CompileOptions, report: Report): void {
  const partial = new Set(things.faulty.parts);
  checkTitles(
    everything.filter((thing) => !partial.has(thing)),
    report,
  );
  if (options.today !== undefined)
    for (const made of [...things.recipes.values(), ...things.chips.values()]) checkDay(made, options.today, report);
  const known = {
    photos: options.photos ?? [],
    photoFaults: options.photoFaults ?? new Map<string, PhotoFault>(),
    elsewhere: things.pictures,
    unread: options.unread ?? [],
  };
  checkPhotos(everything, known, !things.faulty.isEmpty, report);
}

/** What is left out, with the lines of the table of films that are. */
function allLeftOut(out: ReadonlyMap<string, LeftOut>, films: ShelfFit, isSound: boolean): readonly LeftOut[] {
  const lines = films.leftOut ?? [];
  const table =
    lines.length === 0 || out.has(MEASUREMENTS_FILE)
      ? []
      : [{ path: MEASUREMENTS_FILE, needs: [], why: isSound ? 'to-fill-in' : 'errors', lines } as const];
  return [...out.values(), ...table].sort((one, other) => (one.path < other.path ? -1 : 1));
}
