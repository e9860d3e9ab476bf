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
  type Source,
} from '../recipe/source.ts';

/** What a book's folder holds. */
export interface BookFolder {
  /** Every Markdown file and table, by path; files whose name the book does not read, without their text. */
  readonly sources: readonly Source[];
  /** Every picture, `photos/…`, by path. */
  readonly photos: readonly string[];
  /** About files that could not be read as text. */
  readonly diagnostics: readonly Diagnostic[];
}

/** A text of `LONGEST_TEXT` UTF-16 units has at most three bytes a unit. */
const MOST_BYTES = 3 * LONGEST_TEXT;

/** Folders of a book lie two deep. One level more is looked at, to tell of a file that was put a level too deep. */
const DEEPEST = 3;

const PICTURE = /\.(?:jpe?g|png|webp)$/i;

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
  for (const { path, entry } of entriesOf(folder, '', DEEPEST)) {
    const text = /\.md$/i.test(entry.name) || path === MEASUREMENTS_FILE;
    const photo = path.startsWith(`${PHOTO_FOLDER}/`) && PICTURE.test(entry.name);
    const stray = !text && misnamed(path) !== undefined;
    if (!text && !photo && !stray && !entry.isSymbolicLink()) continue;
    if (!entry.isFile()) {
      diagnostics.push(
        problem(
          'file/not-text',
          path,
          'link to another place',
          'a plain file',
          'a link may lead out of the book',
          'put the file itself there',
        ),
      );
    } else if (photo) {
      photos.push(path);
    } else if (stray) {
      sources.push({ path, text: '' });
    } else {
      const read = readText(join(folder, path), path);
      if ('code' in read) diagnostics.push(read);
      else sources.push(read);
    }
  }
  return { sources, photos, diagnostics };
}

function readText(file: string, path: string): Source | Diagnostic {
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
  return { code, severity: 'error', file, start, found, expected, ...(why && { why }), ...(fix && { fix }) };
}

/** Everything in a folder that is not itself a folder, in the order of its paths, links not followed. */
function* entriesOf(folder: string, prefix: string, depth: number): Generator<{ path: string; entry: Dirent }> {
  const entries = readdirSync(join(folder, prefix), { withFileTypes: true });
  entries.sort((one, other) => (one.name < other.name ? -1 : 1));
  for (const entry of entries) {
    if (entry.name.startsWith('.') || entry.name === 'node_modules') continue;
    const path = prefix + entry.name;
    if (!entry.isDirectory()) yield { path, entry };
    else if (depth > 1) yield* entriesOf(folder, `${path}/`, depth - 1);
  }
}
