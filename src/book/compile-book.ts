import { CATALOGUE } from '../diagnostics/catalogue.ts';
import { compareDiagnostics, type Diagnostic, hasErrors } from '../diagnostics/diagnostic.ts';
import { type OpticalModel, USUAL_OPTICS } from '../optics/optical-model.ts';
import type { Thing } from '../recipe/read-thing.ts';
import { BOOK_FILE, MEASUREMENTS_FILE, type Source } from '../recipe/source.ts';
import { defined } from '../values/defined.ts';
import { checkDay } from './checks/check-day.ts';
import { checkDeep } from './checks/check-deep.ts';
import { checkPhotos, type PhotoFault } from './checks/check-photos.ts';
import { checkPortable } from './checks/check-portable.ts';
import { checkTitles } from './checks/check-titles.ts';
import { reportWaiting } from './checks/report-waiting.ts';
import { compileChips } from './chips/compile-chips.ts';
import { CompileMemory } from './compile-memory.ts';
import type { Compiled } from './compiled.ts';
import { computedEach } from './computed.ts';
import { type LeftOut, leftOut } from './left-out.ts';
import { compileTarget } from './match/compile-target.ts';
import type { Chip } from './model/chip.ts';
import type { Mold } from './model/shelf.ts';
import type { Target } from './model/target.ts';
import type { Book } from './model.ts';
import { type Prepared, prepareBook } from './prepare-book.ts';
import { checkPublished } from './publish/check-secrets.ts';
import { leftOutSecrets } from './publish/left-out-secrets.ts';
import { needsOf } from './read/needs-of.ts';
import { readThings, type Things } from './read/read-things.ts';
import type { RecipeCore } from './recipes/compile-recipe.ts';
import { compileRecipes } from './recipes/compile-recipes.ts';
import { compareRecipes, joinRecipes, showMaterials, usesOf } from './recipes/join-recipes.ts';
import { type Report, reportInto, reportOnly } from './report.ts';
import type { ShelfFit } from './shelf/shelf-fit.ts';

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
  memory.last = { asked, compiled };
  return compiled;
}

function compileAll(sources: readonly Source[], options: CompileOptions, memory: CompileMemory): Compiled {
  const diagnostics: Diagnostic[] = [];
  const report = reportInto(diagnostics);
  const unread = options.unread ?? [];
  const things = readThings(sources, report, memory.things, unread);
  checkPortable([...sources.map(({ path }) => path), ...(options.photos ?? [])], report);
  if (!things.book && !things.faulty.has('book', 'book')) reportNoBook(report);

  const parts = compileParts(things, memory, report);
  const everything = allThings(things);
  checkFiles(things, everything, options, report);

  const faulty = (): ReadonlySet<string> => new Set([...report.faulty, ...unread, ...things.twins]);
  const needs = needsOf(things, parts, faulty());
  let known: { readonly count: number; readonly out: ReadonlyMap<string, LeftOut> } | undefined;
  const out = (): ReadonlyMap<string, LeftOut> => {
    const paths = faulty();
    // Files are only ever added to them.
    if (known?.count !== paths.size) known = { count: paths.size, out: leftOut(needs, paths, things.faulty.waiting) };
    return known.out;
  };
  const isSound = !hasErrors(diagnostics) && unread.length === 0;
  const book = out().has(BOOK_FILE)
    ? undefined
    : joinBook(things, parts, out, memory, isSound ? report : errorsOnly(report));
  const gone = out();
  reportWaiting(gone, everything, report);
  if (book && isSound) {
    const secrets = leftOutSecrets(everything, (path) => gone.has(path), parts.fields.publish);
    checkPublished(book, everything, secrets, report);
  }

  diagnostics.sort(compareDiagnostics);
  const result = { leftOut: allLeftOut(gone, parts.films, isSound), diagnostics };
  return book && isSound && !hasErrors(diagnostics)
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

/** What the files of a book give, each with what it needs, before they are put together. */
interface Parts extends Prepared {
  /** By what the colours of the book are computed. */
  readonly optics: OpticalModel;
  readonly cores: ReadonlyMap<string, RecipeCore>;
  readonly chips: ReadonlyMap<string, Chip>;
  readonly targets: ReadonlyMap<string, Omit<Target, 'recipes'>>;
}

function compileParts(things: Things, memory: CompileMemory, report: Report): Parts {
  const prepared = prepareBook(things, memory, report);
  checkDeep(things, prepared, report);
  const { fields, settings, shelf, molds, recipes, filledChips } = prepared;
  const optics = USUAL_OPTICS;
  const cores = compileRecipes(recipes, { shelf, optics, molds, settings, kept: memory.cores, report });
  const chips = compileChips(filledChips, { shelf, settings, kept: memory.chips, report });
  const inputs = [settings, fields.publish];
  const targets = computedEach(
    things.targets,
    memory.targets,
    { inputs, shelf: molds },
    report,
    (thing, telling, known) => compileTarget(thing, known, settings, fields.publish, telling),
  );
  return { ...prepared, optics, cores, chips, targets };
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

/** Of a book that has errors already nothing more is told but errors: what else there is may only follow from them. */
function errorsOnly(report: Report): Report {
  return reportOnly(report, (code) => CATALOGUE[code].severity === 'error');
}

/**
 * Puts the parts together that are not left out.
 *
 * @param out what is left out for all that was found until then
 */
function joinBook(
  things: Things,
  parts: Parts,
  out: () => ReadonlyMap<string, LeftOut>,
  memory: CompileMemory,
  report: Report,
): Book | undefined {
  const kept = <T extends { readonly id: string; readonly source: Source }>(
    all: ReadonlyMap<string, T>,
  ): ReadonlyMap<string, T> => {
    const gone = out();
    return gone.size === 0 ? all : new Map([...all].filter(([, { source }]) => !gone.has(source.path)));
  };
  const { fields, settings, optics, filled } = parts;
  // Each step may find that something cannot be computed, and what needs that is left out of the next.
  const shown = kept(showMaterials(kept(parts.shelf), optics, things, memory.shown, report));
  if (out().has(BOOK_FILE)) return undefined;
  const shelf = new Map([...parts.shelf].filter(([id]) => shown.has(id)));
  const [molds, allTargets] = [kept(parts.molds), kept(parts.targets)];
  const context = {
    materials: [...shelf.values()],
    optics,
    settings,
    molds,
    targets: allTargets,
    filled,
    kept: memory.compared,
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
    optics,
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

/** What is left out, with the lines of the table of films that are. */
function allLeftOut(out: ReadonlyMap<string, LeftOut>, films: ShelfFit, isSound: boolean): readonly LeftOut[] {
  const lines = films.leftOut ?? [];
  const table =
    lines.length === 0 || out.has(MEASUREMENTS_FILE)
      ? []
      : [{ path: MEASUREMENTS_FILE, needs: [], why: isSound ? 'to-fill-in' : 'errors', lines } as const];
  return [...out.values(), ...table].sort((one, other) => (one.path < other.path ? -1 : 1));
}
