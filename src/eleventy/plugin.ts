import { relative, resolve } from 'node:path';
import type { Edition } from '../book/model.ts';
import { Refusal } from '../diagnostics/refusal.ts';
import { checkApart, claimOutput, sweepOutput, writeFiles } from '../output/output-folder.ts';
import type { SiteFile } from '../output/site-file.ts';
import { userCache } from '../output/user-cache.ts';
import { loadWholeBook } from './load-book.ts';
import { photoOpener } from './open-photos.ts';
import { reportText } from './report.ts';
import { serverStartMessage } from './server-message.ts';
import { sharedPictures } from './shared-pictures.ts';
import { prepareSite, type Site } from './site.ts';
import { statusLine } from './status-line.ts';

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
  /** Only where Eleventy does not write it itself. */
  readonly content?: string;
}

/** The part of Eleventy's configuration that the plugin uses. */
export interface EleventyConfig {
  versionCheck(range: string): void;
  on(event: 'eleventy.before' | 'eleventy.after', listener: (event: BuildEvent) => Promise<void>): void;
  on(event: 'cupbook.built', listener: (built: BuiltSite) => void): void;
  emit(event: 'cupbook.built', built: BuiltSite): unknown;
  addGlobalData(name: string, data: () => unknown): void;
  addWatchTarget(target: string): void;
  setServerOptions(options: Readonly<Record<string, unknown>>): void;
}

export interface CupbookOptions {
  /** Folder of the book, from the project's folder or absolute. */
  readonly recipes: string;
  /** Whose copy is made; without it the shared one. */
  readonly edition?: Edition | undefined;
}

/** What page templates find under `cupbook`. */
interface TemplateData {
  /** Of each kind of page, the things that have one. */
  readonly items: Readonly<Record<string, readonly string[]>>;
  /** Path of a page's file from the output folder. */
  path(kind: string, item: string): string;
  /** A page as an HTML document. */
  page(kind: string, item: string): string;
}

/** What a build came to; the plugin emits it as `cupbook.built`. */
export interface BuiltSite {
  readonly recipes: number;
  readonly materials: number;
  readonly pages: number;
  /** From the reading of the book to the last file. */
  readonly milliseconds: number;
  /** What others refer to first. Pages are among them only where Eleventy has not written them itself. */
  readonly files: readonly SiteFile[];
}

/** Outlives a build, so that no picture is made twice. */
const picturesOf = sharedPictures();

/**
 * The Eleventy plugin: reads the book's folder, compiles it, and gives the page templates what they page over.
 *
 * Where Eleventy renders only (`toJSON`), all files of the site come with `cupbook.built`, and nothing is written. Where it writes its
 * pages itself, the plugin writes the other files beside them. A book with errors stops the build before anything is written.
 */
export default function cupbook(config: EleventyConfig, options: CupbookOptions): void {
  config.versionCheck('>=3.1');
  const root = process.cwd();
  const recipes = resolve(root, options.recipes);
  const edition = options.edition ?? 'shared';
  const openPhotos = photoOpener();
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
    const output = resolve(root, directories.output);
    if (outputMode === 'fs') checkApart(recipes, output);
    status.show('computing the book …');
    const loaded = await loadWholeBook(recipes, openPhotos);
    status.clear();
    if (loaded.diagnostics.length > 0) console.error(reportText(loaded));
    if (!loaded.book) {
      throw new Refusal('The book has errors, so nothing was written. Mend what is listed above.', { ofBook: true });
    }
    if (outputMode === 'fs') await claimOutput(output);
    site = await prepareSite(loaded.book, edition, { root, recipes, cache: userCache() }, picturesOf);
    rendered = 0;
  });

  config.on('eleventy.after', async ({ directories, outputMode, incremental, results = [] }) => {
    const { book, beside, pageCount } = current();
    const output = resolve(root, directories.output);
    const pages = results.flatMap(({ outputPath, content = '' }) =>
      outputPath ? { path: relative(output, resolve(root, outputPath)).replaceAll('\\', '/'), content } : [],
    );
    const files = await beside;
    status.clear();
    if (outputMode === 'fs') {
      await writeFiles(output, files);
      const written = new Set([...files, ...pages].map(({ path }) => path));
      if (!incremental) await sweepOutput(output, (path) => written.has(path));
    }
    const built: BuiltSite = {
      recipes: book.recipes.length + book.looks.length,
      materials: book.materials.length,
      pages: pageCount,
      milliseconds: performance.now() - started,
      files: outputMode === 'fs' ? files : [...files, ...pages],
    };
    await config.emit('cupbook.built', built);
  });

  // As data and not as functions of Eleventy, which would time every call and tell about it.
  config.addGlobalData('cupbook', (): TemplateData => {
    const { items, pageCount, pagePath, page } = current();
    return {
      items,
      path: pagePath,
      page: (kind, item) => {
        rendered += 1;
        status.count(rendered, pageCount, 'pages');
        return page(kind, item);
      },
    };
  });

  config.addWatchTarget(relative(root, recipes) || recipes);
  config.addWatchTarget('site');
  // Without `domDiff` a changed page is loaded anew: its scripts must start from the new data.
  config.setServerOptions({
    showAllHosts: true,
    domDiff: false,
    messageOnStart: serverStartMessage,
    logger: { info: console.log, log: console.log, error: console.error },
  });
}
