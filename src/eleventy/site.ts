import type { Edition } from '../book/model/publish.ts';
import type { Book } from '../book/model.ts';
import { EDITIONS } from '../book/publish/editions.ts';
import { layoutGraph } from '../lineage/layout.ts';
import type { LaterFile } from '../output/later-file.ts';
import type { SiteFile } from '../output/site-file.ts';
import type { PageContext, PageKind } from '../render/page.ts';
import { FILES, familyGraph, PAGES, searchRecords } from '../render/pages.ts';
import { unitsKeptIn } from '../render/unbroken.ts';
import { photosOf, pictureCache, sitePhotos } from '../shell/photos.ts';
import { type PictureSource, sitePictures } from '../shell/pictures/site-pictures.ts';
import { bundledAssets } from './assets.ts';
import { iconFiles } from './icons.ts';
import { readManual } from './manual.ts';
import { PAGEFIND_FOLDER, searchIndex } from './search-index.ts';

/** The folders that a site is made from, as absolute paths. */
export interface SiteFolders {
  /** The project's, which holds `src/` and `site/`. */
  readonly root: string;
  /** The book's. */
  readonly recipes: string;
  /** For what can be made again; made where it is missing. */
  readonly cache: string;
}

/** A book on its way to a site: everything is ready but the pages, which are rendered one by one. */
export interface Site {
  /** The edition of the book that is shown. */
  readonly book: Book;
  /** Of each kind of page, the things that have one. */
  readonly items: Readonly<Record<string, readonly string[]>>;
  /** Number of pages. */
  readonly pageCount: number;
  /** All that stands beside the pages, what others refer to first. */
  readonly beside: Promise<readonly SiteFile[]>;
  /** Pictures of baits, which pages refer to. None is drawn before it is wanted. */
  readonly later: readonly LaterFile[];
  /** Path of a page's file from the root of the site. */
  pagePath(kind: string, item: string): string;
  /** A page as an HTML document. */
  page(kind: string, item: string): string;
  /** The page of a recipe, and its pictures, by another state of the same edition; all else is that of this site. */
  recipePage(id: string, book: Book): { readonly page: SiteFile; readonly later: readonly LaterFile[] };
}

/**
 * Makes what stands beside the pages (scripts, style, photos, data, search index) and returns the pages, ready to be rendered, and the
 * pictures of baits, ready to be drawn.
 * Writes nothing but finished pictures of photos into the cache.
 *
 * Only what the edition shows of the book ever comes here.
 */
export async function prepareSite(
  compiled: Book,
  edition: Edition,
  { root, recipes, cache }: SiteFolders,
  source: PictureSource,
): Promise<Site> {
  const book = EDITIONS[edition](compiled);
  const [{ assets, files }, { photos, files: photoFiles }, lineage, manual, icons] = await Promise.all([
    bundledAssets(root),
    sitePhotos(photosOf(book), recipes, pictureCache(cache)),
    layOutFamilies(book),
    readManual(root, edition),
    iconFiles(root),
  ]);
  const { pictures, later } = sitePictures(book, source);
  const context: Omit<PageContext, 'url'> = {
    book,
    assets: { ...assets, pagefind: `${PAGEFIND_FOLDER}/` },
    photos,
    pictures,
    lineage,
    manual,
  };
  const beside = searchIndex(searchRecords(book)).then((index) => [
    ...files,
    ...photoFiles,
    ...icons,
    ...index,
    ...dataFiles(book, photos),
  ]);
  // Reported where it is awaited; if a page stops the build before, there is nobody left to tell.
  beside.catch(() => undefined);
  const kinds = new Map(PAGES.map((page) => [page.kind, page]));
  const kindOf = (kind: string): PageKind => {
    const found = kinds.get(kind);
    if (!found) throw new Error(`no kind of page is called ${kind}: see PAGES in src/render/pages.ts`);
    return found;
  };
  const items = Object.fromEntries(PAGES.map((page) => [page.kind, page.items(book)]));
  const pagePath = (kind: string, item: string): string =>
    kindOf(kind)
      .url(item)
      .replace(/(^|\/)$/, '$1index.html');
  const pageOf = (shown: typeof context, kind: string, item: string): string =>
    unitsKeptIn(kindOf(kind).render({ ...shown, url: kindOf(kind).url(item) }, item));
  return {
    book,
    items,
    pageCount: Object.values(items).reduce((sum, list) => sum + list.length, 0),
    beside,
    later,
    pagePath,
    page: (kind, item) => pageOf(context, kind, item),
    recipePage: (id, shown) => {
      const anew = sitePictures(shown, source, id);
      const content = pageOf({ ...context, book: shown, pictures: { ...pictures, ...anew.pictures } }, 'recipe', id);
      return { page: { path: pagePath('recipe', id), content }, later: anew.later };
    },
  };
}

async function layOutFamilies(book: Book): Promise<PageContext['lineage']> {
  const drawn: [string, Awaited<ReturnType<typeof layoutGraph>>][] = [];
  for (const { id } of book.families) drawn.push([id, await layoutGraph(familyGraph(book, id))]);
  return Object.fromEntries(drawn);
}

function dataFiles(book: Book, photos: PageContext['photos']): readonly SiteFile[] {
  return FILES.flatMap((file) =>
    file.items(book).map((item) => ({ path: file.url(item), content: file.text(book, item, photos) })),
  );
}
