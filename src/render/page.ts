/**
 * What the render functions take and give: the door between this folder and the shells that write files.
 *
 * All paths are from the root of the book, without a leading `/`; a page's links are made relative to its own path, so
 * the book works below any path of a server. The one exception is `404.html`, which a server shows at any depth: its
 * links begin with the path of `book.address`, or with `/`.
 *
 * @packageDocumentation
 */
import type { Book } from '../book/model.ts';
import type { GraphLayout } from '../lineage/graph.ts';

/**
 * The scripts of the pages: `src/browser/<name>.ts`, all of them classic scripts. What the large ones have in common is loaded once.
 *
 * `theme` is loaded before the first paint, the others after the page is read.
 */
export const SCRIPTS = [
  'theme',
  'find',
  'filter',
  'planner',
  'plan',
  'print',
  'match',
  'solver',
  'unfold',
  'share',
  'labels',
  'photograph',
  'bench',
] as const;

export type ScriptName = (typeof SCRIPTS)[number];

/** Those that are one file whatever they have in common with others: what they share is less than a file of its own costs. */
export const SMALL_SCRIPTS: ReadonlySet<ScriptName> = new Set([
  'theme',
  'filter',
  'print',
  'unfold',
  'share',
  'labels',
  'bench',
]);

/** Where the build put what the pages load, from the root. */
export interface Assets {
  /** `site/assets/book.css`; its fonts are bundled with it. */
  readonly css: string;
  /** `site/assets/icon.svg` */
  readonly icon: string;
  /** The upright faces that every page is set in. */
  readonly fonts: readonly string[];
  /** All files of each script, in the order in which they must run. */
  readonly scripts: Readonly<Record<ScriptName, readonly string[]>>;
  /** Folder of the search index, ending in `/`. Absent: no search in this build. */
  readonly pagefind?: string;
}

/** What the build made of a photo. */
export interface PhotoFiles {
  /** Path of the picture, at most 1600 px wide. */
  readonly src: string;
  /** Path of the small picture, at most 480 px wide. */
  readonly thumb: string;
  /** Of the picture, px. */
  readonly width: number;
  readonly height: number;
}

/** All that a page is made from. The book is the published one. */
export interface PageContext {
  readonly book: Book;
  /** The page's own path, `colours/alder-smoke/`; the home page's is empty. */
  readonly url: string;
  readonly assets: Assets;
  /** By the photo's file as the book names it, `photos/…`. A photo that is missing here is left out of the page. */
  readonly photos: Readonly<Record<string, PhotoFiles>>;
  /** States of the pictures of baits, by recipe, of targets, by path, and of the whole book: another one for other pictures. One that is missing here is asked for without. */
  readonly pictures: Readonly<Record<string, string>>;
  /** Drawings of the families, by family: `layoutGraph(familyGraph(book, id))` for every `book.families`. */
  readonly lineage: Readonly<Record<string, GraphLayout>>;
  /** Texts of the manual as Markdown, by name; none in an edition without it. */
  readonly manual: Readonly<Record<string, string>>;
}

/** One kind of page. */
export interface PageKind {
  /** `recipe`, `recipe-card`, … */
  readonly kind: string;
  /** The things that have such a page, by id; one empty string for a page that is there once. */
  items(book: Book): readonly string[];
  /** Path of an item's page. One that ends in `/` is written as the `index.html` of that folder. */
  url(item: string): string;
  /** The whole HTML document. */
  render(context: PageContext, item: string): string;
}

/** One kind of file beside the pages: data, and the sources as the maker wrote them. */
export interface FileKind {
  readonly kind: string;
  items(book: Book): readonly string[];
  /** Path of an item's file. */
  url(item: string): string;
  /** What the file holds. */
  text(book: Book, item: string, photos: PageContext['photos']): string;
}

/** One record of the search index, as Pagefind's `addCustomRecord` takes it. */
export interface SearchRecord {
  /** Path of the page from the root. */
  readonly url: string;
  readonly content: string;
  readonly language: string;
  readonly meta: Readonly<Record<string, string>>;
  readonly filters: Readonly<Record<string, readonly string[]>>;
  readonly sort: Readonly<Record<string, string>>;
}
