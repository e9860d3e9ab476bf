import { type Dirent, readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import { Refusal } from '../diagnostics/refusal.ts';
import {
  LONGEST_TABLE,
  LONGEST_TEXT,
  MEASUREMENTS_FILE,
  misnamed,
  PHOTO_FOLDER,
  SLUG_WORDS,
  type Source,
} from '../recipe/source.ts';
import { defined } from '../values/defined.ts';
import { whyUnread } from './why-unread.ts';

/** What a book's folder holds. */
export interface BookFolder {
  /** Every Markdown file and table, by path; files whose name the book does not read, without their text. */
  readonly sources: readonly Source[];
  /** Every picture, `photos/…`, by path; those of formats that no site shows among them. */
  readonly photos: readonly string[];
  /** About files and folders that could not be read. */
  readonly diagnostics: readonly Diagnostic[];
}

/** A text of `LONGEST_TEXT` UTF-16 units has at most three bytes a unit. */
const MOST_BYTES = 3 * LONGEST_TEXT;

/** Folders of a book lie two deep. One level more is looked at, to tell of a file that was put a level too deep. */
const DEEPEST = 3;

/** All that may be meant as a picture: whether it is one that can be shown is told by what is in it. */
const PICTURE = /\.(?:jpe?g|jfif|png|webp|hei[cf]|avif|gif|tiff?|bmp|svg|dng)$/i;

/**
 * Reads a book's folder: plain files only, since a link may lead to any file of this machine, and what a recipe holds
 * is published. Hidden files and folders are left alone.
 *
 * Throws: Refusal where there is no such folder.
 */
export function readBook(folder: string): BookFolder {
  if (!statSync(folder, { throwIfNoEntry: false })?.isDirectory()) {
    throw new Refusal(
      `There is no folder ${folder}. Name the folder of the book, the one that holds book.md, with --recipes.`,
    );
  }
  const sources: Source[] = [];
  const photos: string[] = [];
  const diagnostics: Diagnostic[] = [];
  for (const { path, entry, unread } of entriesOf(folder, '', DEEPEST)) {
    const text = /\.md$/i.test(path) || path === MEASUREMENTS_FILE;
    const photo = path.startsWith(`${PHOTO_FOLDER}/`) && PICTURE.test(path);
    const stray = !text && misnamed(path) !== undefined;
    if (unread) diagnostics.push(unread);
    else if (!text && !photo && !stray && !entry.isSymbolicLink()) continue;
    else if (!entry.isFile()) diagnostics.push(noPlainFile(path, entry.isSymbolicLink()));
    else if (photo) photos.push(path);
    else if (stray) sources.push({ path, text: '' });
    else {
      const read = readText(join(folder, path), path);
      if ('code' in read) diagnostics.push(read);
      else sources.push(read);
    }
  }
  return { sources, photos, diagnostics };
}

function noPlainFile(path: string, isLink: boolean): Diagnostic {
  return isLink
    ? problem(
        'file/not-text',
        path,
        'link to another place',
        'a plain file or folder',
        'a link may lead out of the book, so that nothing behind it is read',
        'put the file or folder itself there',
      )
    : problem('file/not-text', path, 'a pipe or device', 'a plain file', undefined, 'move it out of the book');
}

function readText(file: string, path: string): Source | Diagnostic {
  try {
    return readPlainText(file, path);
  } catch (error) {
    const { found, fix } = whyUnread(error, 'file');
    return problem('file/not-text', path, found, 'a file that can be read', undefined, fix);
  }
}

function readPlainText(file: string, path: string): Source | Diagnostic {
  const { size } = statSync(file);
  if (path === MEASUREMENTS_FILE && size > LONGEST_TABLE) {
    const found = `table of ${Math.round(size / 1024)} KiB`;
    return problem(
      'file/too-large',
      path,
      found,
      `at most ${LONGEST_TABLE / 1024} KiB`,
      'a shelf has some hundred films',
    );
  }
  if (path !== MEASUREMENTS_FILE && size > MOST_BYTES) {
    const found = `a file of ${Math.round(size / 1024)} KiB`;
    const why = 'a recipe is a page, and longer front matter takes minutes to read';
    return problem('file/too-large', path, found, `at most ${LONGEST_TEXT / 1024} KiB`, why);
  }
  try {
    return { path, text: new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(readFileSync(file)) };
  } catch (error) {
    if (!(error instanceof TypeError)) throw error;
    const before = readFileSync(file).toString('utf8').split('\uFFFD')[0]!.split(/\r?\n/);
    const start = { line: before.length, column: before.at(-1)!.length + 1 };
    const why = `line ${start.line} holds bytes of another encoding`;
    return {
      ...problem('file/not-text', path, 'bytes that are not UTF-8', 'text', why, 'save the file as UTF-8'),
      start,
    };
  }
}

function problem(
  code: Diagnostic['code'],
  file: string,
  found: string,
  expected: string,
  why?: string,
  fix?: string,
): Diagnostic {
  const start = { line: 1, column: 1 };
  return { code, severity: 'error', file, start, found, expected, ...defined({ why, fix }) };
}

interface Entry {
  readonly path: string;
  readonly entry: Dirent<Buffer>;
  /** Why neither it nor anything in it can be read. */
  readonly unread?: Diagnostic;
}

/**
 * Everything in a folder that is not itself a folder, in the order of its paths, links not followed; and folders that cannot be read. Names are
 * taken as bytes: those that are not UTF-8 lead to no file once they are text.
 */
function* entriesOf(folder: string, prefix: string, depth: number): Generator<Entry> {
  const named = readdirSync(join(folder, prefix), { withFileTypes: true, encoding: 'buffer' }).map((entry) => ({
    entry,
    name: entry.name.toString('utf8'),
  }));
  named.sort((one, other) => (one.name < other.name ? -1 : 1));
  for (const { entry, name } of named) {
    if (name.startsWith('.') || name === 'node_modules') continue;
    const path = prefix + name;
    if (!Buffer.from(name, 'utf8').equals(entry.name)) {
      const isFolder = entry.isDirectory();
      if (isFolder || TEXT_OR_PICTURE.test(name)) yield { path, entry, unread: unreadableName(path, isFolder) };
    } else if (!entry.isDirectory()) yield { path, entry };
    else if (depth > 1) {
      const inner = listed(folder, path, depth - 1);
      if ('code' in inner) yield { path, entry, unread: inner };
      else yield* inner;
    }
  }
}

const TEXT_OR_PICTURE = new RegExp(`\\.md$|${PICTURE.source}`, 'i');

function listed(folder: string, path: string, depth: number): readonly Entry[] | Diagnostic {
  try {
    return [...entriesOf(folder, `${path}/`, depth)];
  } catch (error) {
    const { found, fix } = whyUnread(error, 'folder');
    return problem('file/not-text', path, found, 'a folder that can be read', undefined, fix);
  }
}

function unreadableName(path: string, isFolder: boolean): Diagnostic {
  const what = isFolder ? 'folder' : 'file';
  return problem(
    'file/name',
    path,
    `${what} name \`${path.slice(path.lastIndexOf('/') + 1)}\`, which holds bytes that are not UTF-8`,
    SLUG_WORDS,
    'it was named on a system that writes letters otherwise',
    `rename the ${what}`,
  );
}
