import type { Diagnostic } from '../../diagnostics/diagnostic.ts';
import { FILED_KINDS, isMaterialKind, KINDS, type Kind, MATERIAL_KINDS, type MaterialKind } from '../../kinds/kinds.ts';
import { readThing, soundPart, type Thing } from '../../recipe/read-thing.ts';
import type { NamesOf } from '../../recipe/reference-fix.ts';
import { kindOfPath, MEASUREMENTS_FILE, misnamed, type Source } from '../../recipe/source.ts';
import { SLUG } from '../../values/slug.ts';
import { NOTHING, type Remembered } from '../remembered.ts';
import type { Report } from '../report.ts';
import { FaultyFiles } from './faulty-files.ts';
import { FileNames, isMaterial, noSlug, secondName, unknownPlace, unreadName, wrongFolder } from './file-names.ts';
import { type CutThing, isCut } from './is-cut.ts';
import { kindOfText } from './kind-of-text.ts';
import { NAMED_BY } from './named-by.ts';

/** Every file of a book that could be read by itself, by kind and by id. */
export interface Things {
  readonly book: Thing<'book'> | undefined;
  readonly recipes: ReadonlyMap<string, Thing<'recipe'>>;
  /** Chips of the maker's own bottles. */
  readonly chips: ReadonlyMap<string, Thing<'chip'>>;
  readonly materials: ReadonlyMap<string, Thing<MaterialKind>>;
  /** Dilutions of colorants, which share their names with the materials. */
  readonly cuts: ReadonlyMap<string, CutThing>;
  readonly molds: ReadonlyMap<string, Thing<'mold'>>;
  readonly targets: ReadonlyMap<string, Thing<'target'>>;
  /** The table of measured films, if there is one. */
  readonly measurements: Source | 'unreadable' | undefined;
  /** Files that cannot be used. Of a `book.md` among them, what is sound is `book`, too. */
  readonly faulty: FaultyFiles;
  /** Materials whose name another one has, too: either may be meant by it. */
  readonly twins: ReadonlySet<string>;
  /** Pictures that lie where the book does not look for any, by path. */
  readonly pictures: readonly string[];
}

/**
 * Reads every text of a book by itself, in the order of the paths.
 *
 * @param unread files that are there but could not be read as text
 */
export function readThings(
  sources: readonly Source[],
  report: Report,
  kept: Remembered<Thing>,
  unread: readonly string[] = [],
): Things {
  const whole: Thing<'book'>[] = [];
  const recipes = new Map<string, Thing<'recipe'>>();
  const chips = new Map<string, Thing<'chip'>>();
  const molds = new Map<string, Thing<'mold'>>();
  const targets = new Map<string, Thing<'target'>>();
  const materials = new Map<string, Thing<MaterialKind>>();
  const cuts = new Map<string, CutThing>();
  const faulty = new FaultyFiles();
  const twins = new Set<string>();
  const names = new FileNames([...sources.map(({ path }) => path), ...unread]);
  for (const path of unread) {
    const what = kindOfPath(path);
    if (what) faulty.add(what.kind, what.id, path);
    for (const kind of kindsBelow(path)) faulty.addFolder(kind, path);
  }

  const namesOf =
    (kind: Kind, id: string): NamesOf =>
    (field) => {
      const wanted = NAMED_BY[field] ?? [];
      if (wanted.length === 0 || wanted.some((each) => faulty.hides(each))) return undefined;
      return wanted.flatMap((each) => names.idsOf(each)).filter((other) => !wanted.includes(kind) || other !== id);
    };

  for (const source of [...sources].sort((one, other) => (one.path < other.path ? -1 : 1))) {
    const { path } = source;
    if (path === MEASUREMENTS_FILE) continue;
    const what = kindOfPath(path);
    if (what === undefined) {
      if (misnamed(path) === undefined) report.tell('file/unknown-place', path, unknownPlace(source, names));
      else report.tell('file/extension', path, unreadName(path, names));
      continue;
    }
    const { kind, id } = what;
    if (!SLUG.test(id)) {
      const finding = noSlug(kind, id, names);
      // Who writes the name that is offered means that file.
      for (const name of [id, finding.nearest ?? id]) faulty.add(kind, name, path);
      report.tell('file/name', path, finding);
      continue;
    }
    const twin = isMaterialKind(kind) ? names.firstMaterial(id) : path;
    if (twin !== path) {
      report.tell('file/same-name', path, secondName(kind, id, twin, names));
      for (const each of [path, ...(twin === undefined ? [] : [twin])]) twins.add(each);
    }
    const read = remembered(kind, id, source, namesOf(kind, id), report, kept);
    if ('kind' in read) {
      if (twin !== path) continue;
      if (isCut(read)) cuts.set(id, read);
      else if (isMaterial(read)) materials.set(id, read);
      else if (read.kind === 'recipe') recipes.set(id, read);
      else if (read.kind === 'chip') chips.set(id, read);
      else if (read.kind === 'mold') molds.set(id, read);
      else if (read.kind === 'target') targets.set(id, read);
      else whole.push(read);
      continue;
    }
    const isWaiting = read.every(({ code }) => code === 'field/to-fill-in');
    if (isWaiting) faulty.addWaiting(kind, id, path);
    else faulty.add(kind, id, path);
    const likely = kind === 'book' || isWaiting ? undefined : kindOfText(source);
    // What a pigment or dye is sold as its look does not tell.
    const isSold = likely !== undefined && isMaterialKind(likely.kind) && MATERIAL_KINDS[likely.kind].colours;
    if (likely && likely.kind !== kind && !(isSold && isMaterialKind(kind))) {
      faulty.add(likely.kind, id, path);
      report.tell('file/wrong-folder', path, wrongFolder(path, likely, names));
      const moved = readThing(likely.kind, id, source, namesOf(likely.kind, id));
      if (!('kind' in moved)) report.take(moved);
      continue;
    }
    report.take(read);
    const part = soundPart(kind, id, source);
    if (part) faulty.addPart(part);
  }
  const book = whole[0] ?? faulty.partsOf('book')[0];
  const measurements = sources.find(({ path }) => path === MEASUREMENTS_FILE);
  // A table names what is on the shelf, all of it.
  const isClosed = unread.includes(MEASUREMENTS_FILE) || faulty.folderOf('plastic') !== undefined;
  return {
    book,
    recipes,
    chips,
    materials,
    cuts,
    molds,
    targets,
    measurements: isClosed ? 'unreadable' : measurements,
    faulty,
    twins,
    pictures: sources.flatMap(({ path }) => (misnamed(path) === 'picture' ? [path] : [])),
  };
}

/** A file as it was read in the last compile, if it has the same text; the faults of one with faults name files that are there. */
function remembered(
  kind: Kind,
  id: string,
  source: Source,
  namesOf: NamesOf,
  report: Report,
  kept: Remembered<Thing>,
): Thing | readonly Diagnostic[] {
  let faults: readonly Diagnostic[] = [];
  const thing = kept.of(source.path, [source.text], NOTHING, report, () => {
    const read = readThing(kind, id, source, namesOf);
    if ('kind' in read) return read;
    faults = read;
    return undefined;
  });
  return thing ?? faults;
}

/** The kinds of file that a folder holds, itself or below. */
function kindsBelow(folder: string): readonly Kind[] {
  return FILED_KINDS.filter((kind) => `${KINDS[kind].folder}/`.startsWith(`${folder}/`));
}
