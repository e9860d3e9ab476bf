import { CATALOGUE } from '../diagnostics/catalogue.ts';
import { type Diagnostic, hasErrors } from '../diagnostics/diagnostic.ts';
import type { LearningData } from '../learning/learning-data.ts';
import { BOOK_FILE } from '../recipe/source.ts';
import { defined } from '../values/defined.ts';
import { compileChips } from './chips/compile-chips.ts';
import type { ColourMemory } from './colour-memory.ts';
import { colouredForReaders, colouredRecipes } from './coloured-recipes.ts';
import type { CompileMemory } from './compile-memory.ts';
import { computedEach } from './computed.ts';
import { type ColouredParts, joinBook } from './join-book.ts';
import { learnShelf } from './learning/learn-shelf.ts';
import { isSameTaught, learningData, type NumberedData } from './learning/learning-data.ts';
import { type LookedThings, looksOfReaders } from './learning/looks-of-readers.ts';
import { type LeftOut, leftOut } from './left-out.ts';
import { compileTarget } from './match/compile-target.ts';
import { withCameraNumbers } from './match/with-camera-numbers.ts';
import type { Book } from './model.ts';
import type { Prepared } from './prepare-book.ts';
import { needsOf } from './read/needs-of.ts';
import type { Things } from './read/read-things.ts';
import type { RecipeCore } from './recipes/compile-recipe.ts';
import { type Report, reportInto, reportOnly } from './report.ts';
import { withDoubts } from './with-doubts.ts';

/** A book as far as it is sound. */
export interface SoundBook {
  readonly book: Book | undefined;
  /** What is left out of it, by path. */
  readonly gone: ReadonlyMap<string, LeftOut>;
  /** Whether nothing had an error before it was put together. */
  readonly wasSound: boolean;
}

/** What is found of the files before any colour is computed. */
interface Found {
  readonly things: Things;
  readonly prepared: Prepared;
  /** Files that could not be read. */
  readonly unread: readonly string[];
  /** All that was told until now. */
  readonly told: readonly Diagnostic[];
}

/** What a pass is made with: what hangs on no colour was compiled before. */
interface Pass extends Found, Pick<ColouredParts, 'chips' | 'targets'> {
  /** What is left out for faults in some files. */
  readonly goneWith: (faulty: ReadonlySet<string>) => SoundBook['gone'];
  readonly looks: CompileMemory['looks'];
}

/**
 * Learns the shelf, computes all colours, and puts the book together without what is left out.
 *
 * What is left out teaches nothing, and some of that is only found while colours are computed. Then all is learned and computed again
 * without it, so that the sound part of a book is what a compile of its sound files gives.
 *
 * @param report what was told of the files before
 */
export function soundBook(found: Found, memory: CompileMemory, report: Report): SoundBook {
  const { prepared } = found;
  const { settings, shelf, filledChips } = prepared;
  const targets = compiledTargets(found, memory, report);
  const chips = compileChips(filledChips, { shelf, settings, kept: memory.chips, report });
  const pass: Pass = { ...found, targets, chips, goneWith: goneOf(found), looks: memory.looks };
  let gone = pass.goneWith(report.faulty);
  for (;;) {
    const numbered = taughtWithout(gone, pass);
    const { data } = numbered;
    const told: Diagnostic[] = [];
    const done = compilePass(pass, { ...numbered, left: gone }, memory.colours, report.faulty, told);
    // A pass that finds no more than the one before would go on for ever.
    const isSame = (): boolean => JSON.stringify(taughtWithout(done.gone, pass).data) === JSON.stringify(data);
    if (done.gone.size <= gone.size || isSame()) {
      report.take(told);
      if (!done.book) return done;
      const telling = done.wasSound ? report : errorsOnly(report);
      const book = withDoubts(done.book, lookedThings(done.gone, pass), shelf, memory.colours, telling);
      return { ...done, book: withReaders(book, data, done.gone, pass, memory, report.faulty) };
    }
    gone = done.gone;
  }
}

/** Every target by itself, before the numbers of its cameras are known. */
export function compiledTargets(
  { things, prepared }: Pick<Found, 'things' | 'prepared'>,
  memory: CompileMemory,
  report: Report,
): Pass['targets'] {
  const { fields, settings, molds } = prepared;
  return computedEach(
    things.targets,
    memory.targets,
    { inputs: [settings, fields.publish], shelf: molds },
    report,
    (thing, telling, known) => compileTarget(thing, known, settings, fields.publish, telling),
  );
}

/** What is left out for faults in some files, worked out again only if there are others than were asked for last. */
function goneOf({ things, prepared, unread }: Found): Pass['goneWith'] {
  let last: { readonly faulty: ReadonlySet<string>; readonly gone: SoundBook['gone'] } | undefined;
  return (faulty) => {
    if (!last || !isSameSet(last.faulty, faulty)) {
      const paths = new Set([...faulty, ...unread, ...things.twins]);
      last = { faulty: new Set(faulty), gone: leftOut(needsOf(things, prepared, paths), paths, things.faulty.waiting) };
    }
    return last.gone;
  };
}

function isSameSet(one: ReadonlySet<string>, other: ReadonlySet<string>): boolean {
  return one.size === other.size && [...one].every((path) => other.has(path));
}

/** What there is to learn from without what is left out: labels alone where the book is not to learn. */
export function taughtWithout(
  gone: SoundBook['gone'],
  pass: Pick<Pass, 'things' | 'prepared' | 'looks'>,
  looked?: LookedThings,
): NumberedData {
  const { things, prepared, looks } = pass;
  const shelf = new Map([...prepared.shelf].filter(([, { source }]) => !gone.has(source.path)));
  const { recipes, chips } = lookedThings(gone, pass, looked);
  return learningData(things.materials, shelf, recipes, chips, looks);
}

/** Things whose looks are learned from, without what is left out. */
function lookedThings(
  gone: SoundBook['gone'],
  { prepared }: Pick<Found, 'prepared'>,
  looked?: LookedThings,
): LookedThings {
  const { recipes, chips } = looked ?? { recipes: prepared.recipes, chips: [...prepared.filledChips.values()] };
  if (!prepared.fields.learn) return { recipes: [], chips: [] };
  return {
    recipes: recipes.filter(({ recipe }) => !gone.has(recipe.source.path)),
    chips: chips.filter(({ spec }) => !gone.has(spec.recipe.source.path)),
  };
}

/** What there is to learn from, and what is left out of it. */
interface Taught extends NumberedData {
  readonly left: SoundBook['gone'];
  /** Of a pass for readers the recipes that they get nothing of, as their maker has them: they are not looked at again. */
  readonly hidden?: ReadonlyMap<string, RecipeCore>;
}

/** Computes all that hangs on what these data teach. */
function compilePass(
  pass: Pass,
  { data, cameras, left, hidden }: Taught,
  memory: ColourMemory,
  before: ReadonlySet<string>,
  told: Diagnostic[],
): SoundBook {
  const { things, prepared, unread, goneWith } = pass;
  const report = reportInto(told);
  const gone = (): SoundBook['gone'] => goneWith(new Set([...before, ...report.faulty]));
  const taught = learnShelf(data, prepared.shelf, memory, report);
  if (!taught) return { book: undefined, gone: gone(), wasSound: false };
  const asked = { taught, left, memory, report };
  const cores = hidden ? colouredForReaders(prepared, hidden, asked) : colouredRecipes(things, prepared, asked);
  const targets = withCameraNumbers(pass.targets, cameras, memory);
  const wasSound = !hasErrors([...pass.told, ...told]) && unread.length === 0;
  const book = gone().has(BOOK_FILE)
    ? undefined
    : joinBook(
        things,
        { ...pass, ...prepared, ...taught, cameras, targets, cores, ...defined({ hidden }) },
        gone,
        memory,
        wasSound ? report : errorsOnly(report),
      );
  return { book, gone: gone(), wasSound };
}

/** Of a book that has errors already nothing more is told but errors: what else there is may only follow from them. */
function errorsOnly(report: Report): Report {
  return reportOnly(report, (code) => CATALOGUE[code].severity === 'error');
}

/** A book with what readers get of it in its place, where that is learned from fewer looks. */
function withReaders(
  book: Book,
  data: LearningData,
  gone: SoundBook['gone'],
  pass: Pass,
  memory: CompileMemory,
  faulty: ReadonlySet<string>,
): Book {
  const published = taughtWithout(gone, pass, looksOfReaders(pass.prepared));
  if (isSameTaught(published.data, data)) return book;
  const hidden = new Map(book.recipes.flatMap((recipe) => (recipe.publish === 'no' ? [[recipe.id, recipe]] : [])));
  const { book: readers } = compilePass(pass, { ...published, left: gone, hidden }, memory.readersColours, faulty, []);
  return { ...book, ...defined({ readers }) };
}
