import { readThing, soundPart, type Thing } from '../recipe/read-thing.ts';
import type { NamesOf } from '../recipe/reference-fix.ts';
import {
  FOLDERS,
  type Kind,
  kindOfPath,
  type MaterialKind,
  MEASUREMENTS_FILE,
  misnamed,
  SLUG,
  type Source,
} from '../recipe/source.ts';
import {
  FileNames,
  faultyKey,
  isMaterialKind,
  noSlug,
  secondName,
  unknownPlace,
  unreadName,
  wrongFolder,
} from './file-names.ts';
import { kindOfText } from './kind-of-text.ts';
import type { Report } from './report.ts';

/** Every file of a book that could be read by itself, by kind and by id. */
export interface Things {
  readonly book: Thing<'book'> | undefined;
  readonly recipes: ReadonlyMap<string, Thing<'recipe'>>;
  readonly materials: ReadonlyMap<string, Thing<MaterialKind>>;
  readonly molds: ReadonlyMap<string, Thing<'mold'>>;
  readonly targets: ReadonlyMap<string, Thing<'target'>>;
  /** The table of measured films, if there is one. */
  readonly measurements: Source | 'unreadable' | undefined;
  /** Kinds of the files that are there but have faults, by `faultyKey`: a reference to one is not a second mistake. */
  readonly faulty: ReadonlyMap<string, Kind>;
  /** Kinds whose folder is there but could not be read: any name may be in it. */
  readonly hidden: ReadonlySet<Kind>;
  /** Pictures that lie where the book does not look for any, by path. */
  readonly pictures: readonly string[];
  /** What is sound in files that have faults: to be checked, never to be used. A `book.md` of these is `book`, too. */
  readonly partial: readonly Thing[];
}

/** Kinds of what a field may name. */
const NAMED_BY: Readonly<Record<string, readonly Kind[]>> = {
  mold: ['mold'],
  from: ['recipe'],
  for: ['target'],
  plastic: ['plastic'],
  without: ['colorant', 'powder', 'flake', 'additive'],
};

/**
 * Reads every text of a book by itself, in the order of the paths.
 *
 * @param unread files that are there but could not be read as text
 */
export function readThings(sources: readonly Source[], report: Report, unread: readonly string[] = []): Things {
  const byKind = {
    book: new Map<string, Thing<'book'>>(),
    recipe: new Map<string, Thing<'recipe'>>(),
    mold: new Map<string, Thing<'mold'>>(),
    target: new Map<string, Thing<'target'>>(),
  };
  const materials = new Map<string, Thing<MaterialKind>>();
  const faulty = new Map<string, Kind>();
  const partial: Thing[] = [];
  const names = new FileNames([...sources.map(({ path }) => path), ...unread]);
  for (const path of unread) {
    const what = kindOfPath(path);
    if (what) faulty.set(faultyKey(what.kind, what.id), what.kind);
  }

  const hidden = new Set(unread.flatMap(kindsBelow));
  const namesOf =
    (kind: Kind, id: string): NamesOf =>
    (field) => {
      const wanted = NAMED_BY[field] ?? [];
      if (wanted.length === 0 || wanted.some((each) => hidden.has(each))) return undefined;
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
      for (const name of [id, finding.nearest ?? id]) faulty.set(faultyKey(kind, name), kind);
      report.tell('file/name', path, finding);
      continue;
    }
    const twin = isMaterialKind(kind) ? names.firstMaterial(id) : path;
    if (twin !== path) report.tell('file/same-name', path, secondName(kind, id, twin, names));
    const read = readThing(kind, id, source, namesOf(kind, id));
    if ('kind' in read) {
      if (twin !== path) continue;
      if (isMaterialKind(kind)) materials.set(id, read as Thing<MaterialKind>);
      else (byKind[kind] as Map<string, Thing>).set(id, read as Thing);
      continue;
    }
    faulty.set(faultyKey(kind, id), kind);
    const likely = kind === 'book' ? undefined : kindOfText(source);
    // What a pigment or dye is sold as its look does not tell.
    const isSold = likely?.kind === 'colorant' || likely?.kind === 'powder';
    if (likely && likely.kind !== kind && !(isSold && isMaterialKind(kind))) {
      faulty.set(faultyKey(likely.kind, id), likely.kind);
      report.tell('file/wrong-folder', path, wrongFolder(path, likely, names));
      const moved = readThing(likely.kind, id, source, namesOf(likely.kind, id));
      if (!('kind' in moved)) report.take(moved);
      continue;
    }
    report.take(read);
    const part = soundPart(kind, id, source);
    if (part) partial.push(part as Thing);
  }
  const book = byKind.book.get('book') ?? partial.find((thing): thing is Thing<'book'> => thing.kind === 'book');
  const measurements = sources.find(({ path }) => path === MEASUREMENTS_FILE);
  // A table names what is on the shelf, all of it.
  const isClosed = unread.includes(MEASUREMENTS_FILE) || [...hidden].some(isMaterialKind);
  return {
    book,
    recipes: byKind.recipe,
    materials,
    molds: byKind.mold,
    targets: byKind.target,
    measurements: isClosed ? 'unreadable' : measurements,
    faulty,
    hidden,
    pictures: sources.flatMap(({ path }) => (misnamed(path) === 'picture' ? [path] : [])),
    partial,
  };
}

/** The kinds of file that a folder holds, itself or below. */
function kindsBelow(folder: string): readonly Kind[] {
  const kinds = Object.entries(FOLDERS) as [Exclude<Kind, 'book'>, string][];
  return kinds.flatMap(([kind, path]) => (path === folder || path.startsWith(`${folder}/`) ? [kind] : []));
}
