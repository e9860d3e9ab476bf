import { FILED_KINDS, FOLDERS, KINDS, type Kind } from '../kinds/kinds.ts';
import { isDeviceName } from './portable-name.ts';

/** One text of a book: a path from the book's folder, with `/`, and what the file holds. */
export interface Source {
  readonly path: string;
  readonly text: string;
}

/** File of the book itself. */
export const BOOK_FILE = 'book.md';

/** Folder of the photos. */
export const PHOTO_FOLDER = 'photos';

/** Table of the films that were measured of the shelf's materials and their mixtures. */
export const MEASUREMENTS_FILE = 'shelf/measurements.csv';

/** Largest table of measurements that is read, in bytes. */
export const LONGEST_TABLE: number = 4 * 1024 * 1024;

/** `SLUG` in words. */
export const SLUG_WORDS = 'lower-case letters and digits, with single hyphens between words';

/** Largest text that is read, in UTF-16 units: a recipe has a few hundred, and YAML of megabytes takes minutes. */
export const LONGEST_TEXT: number = 256 * 1024;

/** The kind and id that a path stands for; undefined where the book knows no such folder. */
export function kindOfPath(path: string): { kind: Kind; id: string } | undefined {
  if (path === BOOK_FILE) return { kind: 'book', id: 'book' };
  const slash = path.lastIndexOf('/');
  const folder = path.slice(0, slash);
  const kind = FILED_KINDS.find((name) => KINDS[name].folder === folder);
  return kind && path.endsWith('.md') ? { kind, id: path.slice(slash + 1, -'.md'.length) } : undefined;
}

const TEXT_ENDINGS = /^\.(?:md|markdown|mdown|mkdn?|mdx|txt|text|ya?ml|json|html?|rtf|docx?|odt|pages|)$/i;
const TABLE_ENDINGS = /^\.(?:csv|tsv|txt|xlsx?|ods|numbers)$/i;
const PICTURE_ENDINGS = /^\.(?:jpe?g|png|webp|gif|heic|tiff?)$/i;

/** What a file was meant to be that lies where the book looks, with a name that it does not read; undefined for any other file. */
export function misnamed(path: string): 'text' | 'table' | 'picture' | undefined {
  const [, folder = '', stem = '', ending = ''] = /^(?:(.*)\/)?([^/]*?)(\.[^./]*)?$/s.exec(path) ?? [];
  if (kindOfPath(path) !== undefined || path === MEASUREMENTS_FILE || stem === '') return undefined;
  if (folder === '') return stem.toLowerCase() === 'book' && TEXT_ENDINGS.test(ending || '.') ? 'text' : undefined;
  if (folder === 'shelf') return TABLE_ENDINGS.test(ending) ? 'table' : undefined;
  if (!FOLDERS.includes(folder)) return undefined;
  return TEXT_ENDINGS.test(ending || '.') ? 'text' : PICTURE_ENDINGS.test(ending) ? 'picture' : undefined;
}

/**
 * A slug made of a title: lower case, accents dropped, everything else a hyphen. Empty where nothing is left; never a name that Windows keeps
 * for a device.
 *
 * @example slugOf('Old Smoke!') // 'old-smoke'
 */
export function slugOf(title: string): string {
  const slug = title
    .normalize('NFKD')
    .replace(/\p{Mark}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
  return isDeviceName(slug) ? `${slug}-2` : slug;
}
