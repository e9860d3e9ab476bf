import { join, relative, resolve } from 'node:path';
import { CompileMemory } from '../book/compile-memory.ts';
import type { Edition } from '../book/model/publish.ts';
import { Refusal } from '../diagnostics/refusal.ts';
import { type LaterFile, madeNow } from '../output/later-file.ts';
import type { SiteFile } from '../output/site-file.ts';
import { userCache } from '../output/user-cache.ts';
import { prepareOutput, reserveFor, writeSite } from '../output/write-site.ts';
import { PAGES } from '../render/pages.ts';
import { editionOutput } from '../shell/edition-output.ts';
import { loadRecipeAnew, loadWholeBook } from '../shell/load-book.ts';
import { photoOpener } from '../shell/open-photos.ts';
import { drawingThreads } from '../shell/pictures/drawing-threads.ts';
import { KeptPictures } from '../shell/pictures/kept-pictures.ts';
import type { PictureSource } from '../shell/pictures/site-pictures.ts';
import { printable } from '../shell/printable.ts';
import { reportText } from '../shell/report.ts';
import { defined } from '../values/defined.ts';
import { prepareSite, type Site } from './site.ts';
import { statusLine } from './status-line.ts';
import { titleFonts } from './title-fonts.ts';

/** What Eleventy says of the build that starts or ends. */
interface BuildEvent {
  readonly directories: { readonly output: string };
  readonly outputMode: 'fs' | 'json' | 'ndjson';
  readonly incremental: boolean;
  readonly results?: readonly Rendered[];
}

/** A page that Eleventy has rendered. */
interface Rendered {
  readonly outputPath: string | false;
  readonly content: string;
}

/** The part of Eleventy's configuration that the plugin uses. */
export interface EleventyConfig {
  versionCheck(range: string): void;
  on(event: 'eleventy.before' | 'eleventy.after', listener: (event: BuildEvent) => Promise<void>): void;
  on(event: 'cupbook.first', listener: (first: FirstFiles) => Promise<void>): void;
  on(event: 'cupbook.built', listener: (built: BuiltSite) => void): void;
  emit(event: 'cupbook.first', first: FirstFiles): unknown;
  emit(event: 'cupbook.built', built: BuiltSite): unknown;
  addGlobalData(name: string, data: () => unknown): void;
  addTemplate(path: string, template: PageTemplate): void;
  addWatchTarget(target: string): void;
}

/** What is ready of the maker's own edition before the book is, nearly as it will be. */
export interface FirstFiles {
  readonly pages: readonly SiteFile[];
  readonly later: readonly LaterFile[];
}

export interface CupbookOptions {
  /** Folder of the book, from the project's folder or absolute. */
  readonly recipes: string;
  /** Whose copy is made; without it the shared one. */
  readonly edition?: Edition | undefined;
  /** Address of the bundled `src/shell/pictures/draw-thread.ts`. */
  readonly drawThread: string;
}

/** A template that writes every page of a kind. */
interface PageTemplate {
  readonly data: {
    readonly pagination: { readonly data: string; readonly size: 1; readonly alias: 'item' };
    readonly permalink: (data: { readonly item: string }) => string;
    readonly eleventyExcludeFromCollections: true;
  };
  readonly render: (data: { readonly item: string }) => string;
}

/** What a build came to; the plugin emits it as `cupbook.built`. */
export interface BuiltSite {
  readonly recipes: number;
  readonly materials: number;
  readonly pages: number;
  /** Where the book says that it will be published. */
  readonly address?: string;
  /** From the reading of the book to the last file. */
  readonly milliseconds: number;
  /** All of them, what others refer to first. */
  readonly files: readonly SiteFile[];
  /** Pictures of baits, which pages refer to. None is drawn before it is wanted. */
  readonly later: readonly LaterFile[];
}

/** They outlive a build, so that no photo is opened twice, and what was not changed is not computed again. */
const openPhotos = photoOpener();
const memory = new CompileMemory();
/** The maker's own site as it was rendered last, and the book's folder. */
let lastOwn: { readonly site: Site; readonly recipes: string } | undefined;

/**
 * The Eleventy plugin: reads the book's folder, compiles it, and gives Eleventy a template for each kind of page.
 *
 * Where Eleventy renders only (`toJSON`), all files of the site come with `cupbook.built`, and nothing is written. Where it writes its
 * pages itself, the plugin writes the other files beside them. A book with errors stops the build before anything is written.
 * Where the looks of one recipe were changed since the maker's own site was rendered, its page comes first, as `cupbook.first`, nearly as it
 * will be.
 */
export default function cupbook(config: EleventyConfig, options: CupbookOptions): void {
  config.versionCheck('>=3.1');
  const root = process.cwd();
  const recipes = resolve(root, options.recipes);
  const edition = options.edition ?? 'shared';
  const pictures = pictureSource(root, options.drawThread);
  let site: Site | undefined;
  const status = statusLine();
  let started = 0;
  let rendered = 0;

  const current = (): Site => {
    if (!site) throw new Error('a page was asked for before the book was read');
    return site;
  };

  config.on('eleventy.before', async ({ directories, outputMode }) => {
    started = performance.now();
    const output = editionOutput(edition, resolve(root, directories.output), recipes);
    if (outputMode === 'fs') await prepareOutput(output);
    if (outputMode !== 'fs' && lastOwn?.recipes === recipes)
      await config.emit('cupbook.first', firstFiles(recipes, lastOwn.site));
    status.show('computing the book …');
    const loaded = await loadWholeBook(recipes, openPhotos, memory);
    status.clear();
    if (loaded.diagnostics.length > 0) console.error(reportText(loaded));
    if (!loaded.complete) {
      throw new Refusal('The book has errors, so nothing was written. Fix what is listed above.', { ofBook: true });
    }
    site = await prepareSite(loaded.book, edition, { root, recipes, cache: userCache() }, pictures);
    if (outputMode === 'fs') {
      const { items, pagePath } = site;
      const paths = Object.entries(items).flatMap(([kind, list]) => list.map((item) => pagePath(kind, item)));
      await reserveFor(paths, output);
    }
    rendered = 0;
  });

  config.on('eleventy.after', async ({ directories, outputMode, incremental, results = [] }) => {
    const { book, beside, later, pageCount } = current();
    const output = resolve(root, directories.output);
    const pages = results.flatMap(({ outputPath, content }) =>
      outputPath ? { path: relative(output, resolve(root, outputPath)).replaceAll('\\', '/'), content } : [],
    );
    const files = [...(await beside), ...pages];
    status.clear();
    if (edition === 'mine') lastOwn = { site: current(), recipes };
    if (outputMode === 'fs' && !incremental) {
      await writeSite([...(await madeNow(later)), ...files], {
        ...editionOutput(edition, output, recipes),
        served: true,
      });
    }
    const built: BuiltSite = {
      recipes: book.recipes.length + book.looks.length,
      materials: book.materials.length,
      pages: pageCount,
      ...defined({ address: book.address }),
      milliseconds: performance.now() - started,
      files,
      later,
    };
    await config.emit('cupbook.built', built);
  });

  config.addGlobalData('cupbook', () => current().items);
  // As templates and not as functions of Eleventy, which would time every call and tell about it.
  for (const { kind } of PAGES) {
    config.addTemplate(`${kind}.11ty.js`, {
      data: {
        pagination: { data: `cupbook.${kind}`, size: 1, alias: 'item' },
        permalink: ({ item }) => current().pagePath(kind, item),
        eleventyExcludeFromCollections: true,
      },
      render: ({ item }) => {
        rendered += 1;
        status.count(rendered, current().pageCount, 'pages');
        return current().page(kind, item);
      },
    });
  }

  config.addWatchTarget(relative(root, recipes) || recipes);
}

/** The page of the recipe whose looks alone were changed; none if anything stands against it, of which the whole build will tell. */
function firstFiles(recipes: string, last: Site): FirstFiles {
  try {
    const anew = loadRecipeAnew(recipes, memory, last.book);
    if (anew) {
      const { page, later } = last.recipePage(anew.id, anew.book);
      return { pages: [page], later };
    }
  } catch {
    // The whole build will tell.
  }
  return { pages: [], later: [] };
}

/** Where pictures come from, by the address of the thread that draws: the same thread for all builds of one program. */
let lastSource: { readonly drawThread: string; readonly source: PictureSource } | undefined;

function pictureSource(root: string, drawThread: string): PictureSource {
  if (lastSource?.drawThread === drawThread) return lastSource.source;
  const fonts = titleFonts(root);
  const source: PictureSource = {
    drawing: drawingThreads(drawThread, fonts),
    kept: new KeptPictures(join(userCache(), 'pictures')),
    fonts,
    tell: (sentence) => console.error(printable(sentence)),
  };
  lastSource = { drawThread, source };
  return source;
}
