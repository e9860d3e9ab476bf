import { compareDiagnostics, type Diagnostic, hasErrors } from '../diagnostics/diagnostic.ts';
import type { Thing } from '../recipe/read-thing.ts';
import { SCHEMAS } from '../recipe/schema.ts';
import { BOOK_FILE, type Kind, MEASUREMENTS_FILE, type Source } from '../recipe/source.ts';
import { changesFromParent, type KnownCup } from './changes-from-parent.ts';
import { checkDay } from './check-day.ts';
import { checkKept } from './check-kept.ts';
import { checkPartial } from './check-partial.ts';
import { checkPhotos, type PhotoFault } from './check-photos.ts';
import { checkPortable } from './check-portable.ts';
import { checkReferences } from './check-references.ts';
import { checkPublished } from './check-secrets.ts';
import { checkTitles } from './check-titles.ts';
import { compileFamilies } from './compile-families.ts';
import { compileMaterial, type MaterialCore } from './compile-material.ts';
import { compileMold } from './compile-mold.ts';
import { compileRecipe, patternOf, type RecipeContext, type RecipeCore, sharesOf } from './compile-recipe.ts';
import { compileTarget } from './compile-target.ts';
import { computed, computedOf } from './computed.ts';
import type { CupShelf } from './cup-shelf.ts';
import { type CupSpec, cupKey, cupSpecs } from './cup-specs.ts';
import { doseLadder, markColour } from './dose-ladder.ts';
import { faultyKey, idOfKey, isMaterialKind } from './file-names.ts';
import { type FilledCup, fillCup } from './fill-cup.ts';
import { inheritedFields } from './inherited-field.ts';
import { type MatchContext, matchRounds } from './match-rounds.ts';
import type { Book, Material, Mold, Recipe, Target } from './model.ts';
import { publishOf } from './publish-of.ts';
import { readThings, type Things } from './read-things.ts';
import { type Report, reportInto } from './report.ts';
import { reportNoPart } from './report-no-part.ts';
import { settingsOf, withRoom } from './settings.ts';
import { fitShelf } from './shelf-fit.ts';
import { unusedMaterials } from './unused-materials.ts';
import { usualMold, usualPlastic } from './usual-things.ts';

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
}

/** A compiled book, and everything that was found on the way. With errors there is no book. */
export interface Compiled {
  readonly book: Book | undefined;
  readonly diagnostics: readonly Diagnostic[];
}

/**
 * Compiles a book from its texts: reads and checks every file, keeps the ledger of every cup, computes amounts, colours and
 * lineage.
 *
 * Pure: the same texts give the same book, whatever their order. All mistakes of all files are found in one run.
 */
export function compileBook(sources: readonly Source[], options: CompileOptions = {}): Compiled {
  const diagnostics: Diagnostic[] = [];
  const report = reportInto(diagnostics);
  const things = readThings(sources, report, options.unread);
  checkPortable([...sources.map(({ path }) => path), ...(options.photos ?? [])], report);
  if (!things.book && !things.faulty.has(faultyKey('book', 'book'))) {
    report.tell('book/missing', BOOK_FILE, {
      found: `folder without \`${BOOK_FILE}\``,
      expected: `a file \`${BOOK_FILE}\` with at least a \`title\``,
      why: 'it says whose book it is and what the bench measures with',
      fix: `create \`${BOOK_FILE}\` with the lines \`---\`, \`title: …\`, \`---\``,
    });
  }
  const book = joinThings(things, options, report, diagnostics);
  diagnostics.sort(compareDiagnostics);
  return { book: hasErrors(diagnostics) ? undefined : book, diagnostics };
}

function joinThings(
  things: Things,
  options: CompileOptions,
  report: Report,
  diagnostics: Diagnostic[],
): Book | undefined {
  // Without a `book.md` there is no book, but the recipes can be checked.
  const fields = things.book?.fields ?? SCHEMAS.book.parse({ title: BOOK_FILE });
  const measured =
    computedOf(MEASUREMENTS_FILE, report, () => fitShelf(things.measurements, things, report)) ??
    ((): 'unreadable' => 'unreadable');
  const shelf = collect(things.materials, report, (thing) =>
    compileMaterial(thing, measured(thing.id), fields.units.temperature, report),
  );
  const molds = collect(things.molds, report, (thing) => compileMold(thing, report));
  const specs = cupSpecs(things, report);
  checkReferences(things, report);
  const plastic = usualPlastic(things, shelf, report);
  const cupShelf = {
    materials: shelf,
    plastic,
    faulty: faultyMaterials(things, shelf),
    unused: unusedMaterials(things),
    isHidden: [...things.hidden].some(isMaterialKind),
  };
  const filled = fillCups(specs.cups, cupShelf, report);
  for (const cup of filled.values()) checkKept(cup, filled, report);
  checkPartial(things, specs.lost, cupShelf, report);

  const settings = withRoom(things.book, settingsOf(fields), report);

  const publish = publishOf(things.recipes, specs.ofRecipe, fields.publish);
  const context = { shelf, molds, settings, report };
  const inherited = inheritedFields(things.recipes);
  const cores = new Map<string, RecipeCore>();
  for (const recipe of things.recipes.values()) {
    const cups = specs.ofRecipe.get(recipe.id);
    if (!cups) continue;
    const pattern = patternOf(recipe, inherited, cups, report);
    const shares = sharesOf(recipe, cups, report);
    const mold = usualMold(recipe, inherited, things, report);
    const full = cups.flatMap((cup) => filled.get(cupKey(recipe.id, cup.name)) ?? []);
    if (!pattern || !shares || !mold || !molds.has(mold) || full.length < cups.length) continue;
    const [baits, target, streak] = [inherited(recipe, 'baits'), recipe.fields.for, inherited(recipe, 'streak')];
    const parts = {
      pattern,
      mold,
      ...(baits === undefined ? {} : { baits }),
      ...(target === undefined ? {} : { target }),
      ...(streak === undefined ? {} : { streak }),
    };
    const core = computed(
      recipe as Thing,
      report,
      () => compileRecipe(recipe, parts, full, shares, { ...context, publish: publish(recipe.id) }).recipe,
    );
    if (core) cores.set(recipe.id, core);
  }
  const targets = collect(things.targets, report, (thing) =>
    compileTarget(thing, molds, settings, fields.publish, report),
  );
  const everything: readonly Thing[] = [
    ...(things.book ? [things.book] : []),
    ...things.partial.filter((thing) => thing !== things.book),
    ...things.recipes.values(),
    ...things.materials.values(),
    ...things.molds.values(),
    ...things.targets.values(),
  ] as Thing[];
  const known = {
    photos: options.photos ?? [],
    photoFaults: options.photoFaults ?? new Map<string, PhotoFault>(),
    elsewhere: things.pictures,
    unread: options.unread ?? [],
  };
  const partial = new Set(things.partial);
  checkTitles(
    everything.filter((thing) => !partial.has(thing)),
    report,
  );
  if (options.today !== undefined)
    for (const recipe of things.recipes.values()) checkDay(recipe, options.today, report);
  checkPhotos(everything, known, things.faulty.size + things.hidden.size > 0, report);
  if (hasErrors(diagnostics)) return undefined;

  const recipes = withMatches(
    withFamilies(cores, filled, things, context),
    targets,
    { materials: [...shelf.values()], settings, molds },
    things,
    report,
  );
  for (const { id, cups, target: wanted, match } of recipes) {
    const target = wanted === undefined ? undefined : targets.get(wanted);
    if (target && !match) reportNoPart(things.recipes.get(id)!, { cups }, target, report);
  }
  const book: Book = {
    format: 2,
    edition: 'mine',
    title: fields.title,
    ...(fields.maker === undefined ? {} : { maker: fields.maker }),
    ...(fields.address === undefined
      ? {}
      : { address: fields.address.endsWith('/') ? fields.address : `${fields.address}/` }),
    foreword: things.book!.notes,
    settings,
    recipes,
    looks: [],
    materials: [...shelf.values()].flatMap(
      (material) =>
        computed(things.materials.get(material.id) as Thing, report, () => withUse(material, recipes)) ?? [],
    ),
    molds: [...molds.values()].map(
      (mold): Mold => ({ ...mold, usedIn: recipes.filter((recipe) => recipe.mold === mold.id).map(({ id }) => id) }),
    ),
    targets: [...targets.values()].map(
      (target): Target => ({
        ...target,
        recipes: recipes.filter((recipe) => recipe.target === target.id).map(({ id }) => id),
      }),
    ),
    families: compileFamilies(recipes),
  };
  checkPublished(book, everything, report);
  return book;
}

/** Materials whose files have faults, by themselves or once they are compiled. */
function faultyMaterials(things: Things, shelf: CupShelf['materials']): CupShelf['faulty'] {
  const uncompiled = [...things.materials.values()].filter(({ id }) => !shelf.has(id));
  return new Map<string, Kind>([
    ...[...things.faulty].flatMap(([key, kind]): [string, Kind][] =>
      isMaterialKind(kind) ? [[idOfKey(key), kind]] : [],
    ),
    ...uncompiled.map(({ id, kind }): [string, Kind] => [id, kind]),
  ]);
}

function collect<T extends Thing<Kind>, R>(
  things: ReadonlyMap<string, T>,
  report: Report,
  compile: (thing: T) => R | undefined,
): ReadonlyMap<string, R> {
  return new Map(
    [...things].flatMap(([id, thing]): [string, R][] => {
      const compiled = computed(thing as Thing, report, () => compile(thing));
      return compiled === undefined ? [] : [[id, compiled]];
    }),
  );
}

function fillCups(cups: readonly CupSpec[], shelf: CupShelf, report: Report): ReadonlyMap<string, FilledCup> {
  const filled = new Map<string, FilledCup>();
  for (const spec of cups) {
    const parent = spec.from && filled.get(cupKey(spec.from.recipe, spec.from.cup));
    const cup = computed(spec.recipe as Thing, report, () => fillCup(spec, parent, shelf, report));
    if (cup) filled.set(cupKey(spec.recipe.id, spec.name), cup);
  }
  return filled;
}

function withMatches(
  recipes: readonly Recipe[],
  targets: ReadonlyMap<string, Omit<Target, 'recipes'>>,
  context: MatchContext,
  things: Things,
  report: Report,
): readonly Recipe[] {
  return recipes.map((recipe) => {
    const target = recipe.target === undefined ? undefined : targets.get(recipe.target);
    const match =
      target && computed(things.recipes.get(recipe.id) as Thing, report, () => matchRounds(recipe, target, context));
    return match ? { ...recipe, match } : recipe;
  });
}

function withFamilies(
  cores: ReadonlyMap<string, RecipeCore>,
  filled: ReadonlyMap<string, FilledCup>,
  things: Things,
  { shelf, molds, report }: Pick<RecipeContext, 'shelf' | 'molds' | 'report'>,
): readonly Recipe[] {
  const known = (recipe: string, name: string): KnownCup | undefined => {
    const cup = cores.get(recipe)?.cups.find((each) => each.name === name);
    return cup && { cup, contents: filled.get(cupKey(recipe, name))!.contents };
  };
  const changed = [...cores.values()].map((core) => ({
    ...core,
    changes:
      computed(things.recipes.get(core.id) as Thing, report, () =>
        changesFromParent(core, known, (id) => shelf.get(id)!, molds.get(core.mold)!.bodyMm),
      ) ?? [],
  }));
  const familyOf = new Map(
    compileFamilies(changed).flatMap((family) => family.members.map((id) => [id, family.id] as const)),
  );
  const children = new Map(changed.map(({ id }) => [id, [] as string[]]));
  const cupsIn = new Map(changed.map(({ id }) => [id, [] as string[]]));
  for (const { id, parent, cupsFrom } of changed) {
    if (parent !== undefined) children.get(parent)?.push(id);
    for (const origin of new Set(cupsFrom)) cupsIn.get(origin)?.push(id);
  }
  return changed.map((core) => ({
    ...core,
    children: children.get(core.id) ?? [],
    cupsIn: cupsIn.get(core.id) ?? [],
    family: familyOf.get(core.id)!,
  }));
}

function withUse(material: MaterialCore, recipes: readonly Recipe[]): Material {
  const plasticUse = (cup: Recipe['cups'][number]): number =>
    cup.plastics.some((plastic) => plastic.material === material.id) ? 1 : 0;
  return {
    ...material,
    hex: markColour(material),
    ladder: doseLadder(material),
    usedIn: recipes.flatMap(({ id, cups }) =>
      cups.flatMap((cup) => {
        const gramsPerMl =
          cup.contents.find((content) => content.material === material.id)?.gramsPerMl ?? plasticUse(cup);
        return gramsPerMl > 0 ? [{ recipe: id, cup: cup.name, gramsPerMl }] : [];
      }),
    ),
  };
}
