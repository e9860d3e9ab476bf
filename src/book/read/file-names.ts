/**
 * Names of a book's files: which are taken, and what is told of those that it cannot read.
 *
 * @packageDocumentation
 */
import { FOLDERS, isMaterialKind, KINDS, type Kind, type MaterialKind } from '../../kinds/kinds.ts';
import type { Thing } from '../../recipe/read-thing.ts';
import {
  BOOK_FILE,
  kindOfPath,
  MEASUREMENTS_FILE,
  misnamed,
  PHOTO_FOLDER,
  SLUG_WORDS,
  type Source,
  slugOf,
} from '../../recipe/source.ts';
import { SLUG } from '../../values/slug.ts';
import type { Finding } from '../report.ts';
import { kindOfText, type Likely } from './kind-of-text.ts';

const TOP = { line: 1, column: 1 };

/** Key of a file by what it is and by its name; all materials share one name space. */
export function fileKey(kind: Kind, id: string): string {
  return `${isMaterialKind(kind) ? 'material' : kind}/${id}`;
}

/** Whether a thing stands on the shelf. */
export function isMaterial(thing: Thing): thing is Thing<MaterialKind> {
  return isMaterialKind(thing.kind);
}

/** The names that are taken in each folder; all materials share one name space. */
export class FileNames {
  private readonly paths: ReadonlySet<string>;
  private readonly materials = new Map<string, string>();
  private readonly offered = new Set<string>();

  constructor(paths: readonly string[]) {
    this.paths = new Set([...paths].sort());
    for (const path of this.paths) {
      const what = kindOfPath(path);
      if (what && isMaterialKind(what.kind) && !this.materials.has(what.id)) this.materials.set(what.id, path);
    }
  }

  /** The first material of a name, by path. */
  firstMaterial(id: string): string | undefined {
    return this.materials.get(id);
  }

  has(path: string): boolean {
    return this.paths.has(path);
  }

  /** Names of the files of a kind that can be ids. */
  idsOf(kind: Kind): readonly string[] {
    return [...this.paths].flatMap((path) => {
      const what = kindOfPath(path);
      return what?.kind === kind && SLUG.test(what.id) ? [what.id] : [];
    });
  }

  private isTaken(kind: Kind, id: string, except: string | undefined): boolean {
    return kind === 'book'
      ? this.paths.has(BOOK_FILE)
      : isMaterialKind(kind)
        ? this.firstMaterial(id) !== undefined && this.firstMaterial(id) !== except
        : this.paths.has(`${KINDS[kind].folder}/${id}.md`);
  }

  /**
   * A name like the wanted one that no file has, and that was not offered before.
   *
   * @param except a file that is to have that name, and may have it already
   */
  free(kind: Kind, wanted: string, except?: string): string {
    for (let number = 1; ; number++) {
      const id = number === 1 ? wanted : `${wanted}-${number}`;
      const key = fileKey(kind, id);
      if (this.isTaken(kind, id, except) || this.offered.has(key)) continue;
      this.offered.add(key);
      return id;
    }
  }
}

/** A file in a folder that holds nothing of a book: told where it belongs, if its fields tell that. */
export function unknownPlace(source: Source, names: FileNames): Finding {
  const folder = `\`${source.path.replace(/[^/]*$/, '') || './'}\``;
  const likely = kindOfText(source);
  if (likely) {
    return {
      found: `${likely.called.replace(/^an? /, '')} in ${folder}`,
      expected: `${likely.called} in ${likely.folder}`,
      why: 'nothing else is looked for there, so that it is missing from the book',
      ...moveTo(likely, source.path, names),
    };
  }
  return {
    found: `file in ${folder}`,
    expected: `${BOOK_FILE}, or a file in ${FOLDERS.join(', ')}`,
    why: 'the folder of a file says what it is, and this one is not in the book',
    fix: 'move it to the folder of its kind, or out of the book if it is none of it',
  };
}

/** A file that lies in the folder of another kind than its fields tell. */
export function wrongFolder(path: string, likely: Likely, names: FileNames): Finding {
  return {
    found: `what looks like ${likely.called} in \`${path.replace(/[^/]*$/, '')}\``,
    expected: `${likely.called} in ${likely.folder}`,
    why: 'the folder of a file says what it is',
    ...moveTo(likely, path, names),
  };
}

function moveTo({ kind, folder }: Likely, path: string, names: FileNames): Pick<Finding, 'fix'> {
  const stem = path.slice(path.lastIndexOf('/') + 1).replace(/\.md$/i, '');
  const wanted = slugOf(stem) || kind;
  const free = names.free(kind, wanted, path);
  return { fix: free === stem ? `move it to ${folder}` : `move it to ${folder}, as \`${free}.md\`` };
}

/** A file whose name is no id. The name that is offered is free, and kept from then on. */
export function noSlug(kind: Kind, id: string, names: FileNames): Finding {
  const slug = slugOf(id);
  const finding = {
    found: `file name \`${id}.md\``,
    expected: SLUG_WORDS,
    why: 'the name is the id that other files use, and the address of the page',
  };
  if (slug === '') return finding;
  const free = names.free(kind, slug);
  const other =
    free === slug ? '' : `; \`${slug}.md\` is another file, so remove this one if it is an old copy of that`;
  return { ...finding, fix: `rename it to \`${free}.md\`${other}`, nearest: free };
}

function renameTo(free: string, wanted: string): string {
  const other = `; \`${wanted}.md\` is another file, so remove this one if it is an old copy of that`;
  return `rename it to \`${free}.md\`${free === wanted ? '' : other}`;
}

/**
 * A material whose name another one has already.
 *
 * @param twin path of the other
 */
export function secondName(kind: Kind, id: string, twin: string | undefined, names: FileNames): Finding {
  return {
    found: `second material \`${id}\``,
    expected: 'one name for each material of the shelf',
    why: 'a recipe that says the name could mean either',
    fix: `rename it, for instance to \`${names.free(kind, `${id}-${kind}`)}.md\``,
    ...(twin === undefined ? {} : { related: [{ message: 'the other one is here', file: twin, start: TOP }] }),
  };
}

/** Endings of files that hold more than plain text. */
const FORMATTED = /\.(?:html?|rtf|docx?|odt|pages)$/i;

/** A file that lies where the book looks, under a name that it does not read. */
export function unreadName(path: string, names: FileNames): Finding {
  const slash = path.lastIndexOf('/') + 1;
  const name = path.slice(slash);
  const stem = name.replace(/(?:\.md)?\.[^.]*$/i, '');
  const found = `\`${name}\`, which is not read`;
  if (misnamed(path) === 'picture') {
    return {
      found,
      expected: `pictures in ${PHOTO_FOLDER}/`,
      why: 'they are looked for nowhere else',
      fix: `move it to ${PHOTO_FOLDER}/, and name it in the file that it belongs to`,
    };
  }
  if (misnamed(path) === 'table') {
    const table = MEASUREMENTS_FILE.slice(MEASUREMENTS_FILE.lastIndexOf('/') + 1);
    const plain = /\.(?:csv|txt)$/i.test(name);
    return {
      found,
      expected: `the table of measured films as \`${table}\``,
      why: 'all films of the shelf stand in one table',
      fix: names.has(MEASUREMENTS_FILE)
        ? `put its rows into \`${table}\`, or move it out of the book`
        : plain
          ? `rename it to \`${table}\``
          : `save it as CSV, with commas, under the name \`${table}\``,
    };
  }
  const kind = kindOfPath(`${path.slice(0, slash)}a.md`)?.kind ?? 'book';
  const wanted = kind === 'book' ? 'book' : slugOf(stem) || kind;
  const free = kind === 'book' ? wanted : names.free(kind, wanted);
  return {
    found,
    expected: `a name that ends in \`.md\``,
    why: FORMATTED.test(name)
      ? 'a word processor’s file is more than text, so that nothing in it is in the book'
      : 'other files are left alone, so that nothing in it is in the book',
    fix:
      kind === 'book' && names.has(BOOK_FILE)
        ? 'move it out of the book'
        : FORMATTED.test(name)
          ? `open it in the program that wrote it, save it as plain text (UTF-8), and rename that to \`${free}.md\``
          : renameTo(free, wanted),
  };
}
