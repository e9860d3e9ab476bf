import { relative, resolve } from 'node:path';
import { type BuildOptions, build } from 'esbuild';
import type { SiteFile } from '../output/site-file.ts';
import { paths } from '../render/links.ts';
import { type Assets, SCRIPTS, SMALL_SCRIPTS } from '../render/page.ts';
import { lighterPackages } from './lighter-packages.ts';
import { bundledPackages, noticesText, packageFolder } from './notices.ts';
import { pageScripts } from './page-scripts.ts';

/** Folder of a site that holds what pages load. */
const ASSETS_FOLDER = 'assets';

/** Packages whose files come into a site otherwise than through a bundle. */
const SEARCH = ['pagefind'] as const;

/** What pages load: the files, and where each stands. */
export interface BundledAssets {
  readonly assets: Assets;
  readonly files: readonly SiteFile[];
}

/**
 * Bundles the scripts of `src/browser/` and the style sheet of `site/assets/`, fonts included; with the notices of all that is bundled, and of the search.
 *
 * Names hold a hash of the content, so that a browser may keep a file for ever.
 *
 * @param root the project's folder
 */
export async function bundledAssets(root: string): Promise<BundledAssets> {
  const pathOf = (name: string): string => `src/browser/${name}.ts`;
  const large = SCRIPTS.filter((name) => !SMALL_SCRIPTS.has(name));
  const css = 'site/assets/book.css';
  const icon = 'site/assets/icon.svg';
  const options: BuildOptions = {
    absWorkingDir: root,
    outdir: ASSETS_FOLDER,
    entryNames: '[name]-[hash]',
    assetNames: '[name]-[hash]',
    bundle: true,
    minify: true,
    target: ['es2022', 'safari16'],
    loader: { '.svg': 'copy', '.woff2': 'file' },
    legalComments: 'none',
    plugins: [lighterPackages],
    logLevel: 'silent',
  };
  const shared = await pageScripts(large.map(pathOf), options);
  const { metafile, outputFiles } = await build({
    ...options,
    entryPoints: [...[...SMALL_SCRIPTS].map(pathOf), css, icon],
    write: false,
    format: 'iife',
    metafile: true,
  });

  const offline = await build({
    ...options,
    entryPoints: [pathOf('offline')],
    entryNames: '[name]',
    outdir: '.',
    write: false,
    format: 'iife',
  });

  const packages = new Map([
    ...bundledPackages(shared.metafile, root),
    ...bundledPackages(metafile, root),
    ...SEARCH.map((name) => [name, packageFolder(name, root)] as const),
  ]);
  const made = Object.entries(metafile.outputs);
  const outputOf = (input: string): string => {
    const found = made.find(([path, { entryPoint, inputs }]) => (entryPoint ?? soleInput(path, inputs)) === input);
    if (!found) throw new Error(`esbuild made nothing of ${input}`);
    return found[0];
  };
  return {
    assets: {
      css: outputOf(css),
      icon: outputOf(icon),
      fonts: made.map(([path]) => path).filter((path) => /-normal-\w+\.woff2$/.test(path)),
      scripts: Object.fromEntries(
        SCRIPTS.map((name) => [name, shared.needed[pathOf(name)] ?? [outputOf(pathOf(name))]]),
      ) as Assets['scripts'],
    },
    files: [
      ...shared.files,
      ...outputFiles.map(({ path, contents }) => ({
        path: relative(resolve(root), path).replaceAll('\\', '/'),
        content: contents,
      })),
      { path: paths.offline, content: offline.outputFiles[0]!.contents },
      { path: paths.notices, content: await noticesText(packages) },
    ],
  };
}

/** esbuild names the entry of a bundle, but not of a file that it only copies. */
function soleInput(path: string, inputs: Readonly<Record<string, unknown>>): string | undefined {
  const names = Object.keys(inputs);
  return path.endsWith('.svg') && names.length === 1 ? names[0] : undefined;
}
