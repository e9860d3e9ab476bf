import { mkdir, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import type { Book } from '../book/model.ts';
import { publishedBook } from '../book/published-book.ts';
import { layoutGraph } from '../lineage/layout.ts';
import type { PageContext, PageKind, SearchRecord } from '../render/page.ts';
import { FILES, familyGraph, PAGES, searchRecords } from '../render/pages.ts';
import { unitsKeptIn } from '../render/unbroken.ts';
import { writeAssets } from './assets.ts';
import { photosOf, writePhotos } from './photos.ts';
import { PAGEFIND_FOLDER } from './search-index.ts';
import type { WritePictures } from './shared-pictures.ts';

/** The folders that a build works with, as absolute paths. */
export interface SiteFolders {
  /** The project's, which holds `src/` and `site/`. */
  readonly root: string;
  /** The book's. */
  readonly recipes: string;
  /** Where the site goes. */
  readonly output: string;
}

/** A book on its way to a site: everything is ready but the pages, which are rendered one by one. */
export interface Site {
  /** The published book. */
  readonly book: Book;
  /** Of each kind of page, the things that have one. */
  readonly items: Readonly<Record<string, readonly string[]>>;
  /** Number of pages. */
  readonly pageCount: number;
  readonly records: readonly SearchRecord[];
  /** Files already written, by their paths from the output folder. */
  readonly files: readonly string[];
  /** Path of a page's file from the output folder. */
  pagePath(kind: string, item: string): string;
  /** A page as an HTML document. */
  page(kind: string, item: string): string;
}

/**
 * Writes what stands beside the pages (scripts, style, photos, data) and returns the pages, ready to be rendered.
 *
 * Only what is published of the book ever comes here.
 */
export async function prepareSite(
  compiled: Book,
  { root, recipes, output }: SiteFolders,
  writePictures: WritePictures,
): Promise<Site> {
  const book = publishedBook(compiled);
  const [{ assets, files }, photos, lineage, data, pictures] = await allDone([
    writeAssets(root, output),
    writePhotos(photosOf(book), recipes, output, join(root, '.build/photos')),
    layOutFamilies(book),
    writeDataFiles(book, output),
    writePictures(book, output),
  ]);
  const context: Omit<PageContext, 'url'> = {
    book,
    assets: { ...assets, pagefind: `${PAGEFIND_FOLDER}/` },
    photos,
    lineage,
  };
  const kinds = new Map(PAGES.map((page) => [page.kind, page]));
  const kindOf = (kind: string): PageKind => {
    const found = kinds.get(kind);
    if (!found) throw new Error(`no kind of page is called ${kind}: see PAGES in src/render/pages.ts`);
    return found;
  };
  const items = Object.fromEntries(PAGES.map((page) => [page.kind, page.items(book)]));
  return {
    book,
    items,
    pageCount: Object.values(items).reduce((sum, list) => sum + list.length, 0),
    records: searchRecords(book),
    files: [...files, ...data, ...pictures, ...Object.values(photos).flatMap(({ src, thumb }) => [src, thumb])],
    pagePath: (kind, item) =>
      kindOf(kind)
        .url(item)
        .replace(/(^|\/)$/, '$1index.html'),
    page: (kind, item) => unitsKeptIn(kindOf(kind).render({ ...context, url: kindOf(kind).url(item) }, item)),
  };
}

/** As `Promise.all`, but a failure waits for the others: none still writes into a folder that is being cleared. */
async function allDone<const Tasks extends readonly Promise<unknown>[]>(
  tasks: Tasks,
): Promise<{ -readonly [Index in keyof Tasks]: Awaited<Tasks[Index]> }> {
  await Promise.allSettled(tasks);
  return Promise.all(tasks) as Promise<{ -readonly [Index in keyof Tasks]: Awaited<Tasks[Index]> }>;
}

async function layOutFamilies(book: Book): Promise<PageContext['lineage']> {
  const drawn: [string, Awaited<ReturnType<typeof layoutGraph>>][] = [];
  for (const { id } of book.families) drawn.push([id, await layoutGraph(familyGraph(book, id))]);
  return Object.fromEntries(drawn);
}

async function writeDataFiles(book: Book, output: string): Promise<readonly string[]> {
  const written: string[] = [];
  for (const file of FILES) {
    for (const item of file.items(book)) {
      const path = file.url(item);
      await mkdir(dirname(join(output, path)), { recursive: true });
      await writeFile(join(output, path), file.text(book, item));
      written.push(path);
    }
  }
  return written;
}
