import { relative, resolve } from 'node:path';
import { build } from 'esbuild';
import { type Assets, SCRIPTS } from '../render/page.ts';

/** Folder of an output that holds what pages load. */
const ASSETS_FOLDER = 'assets';

/** What was written, by its paths from the output folder. */
export interface WrittenAssets {
  readonly assets: Assets;
  readonly files: readonly string[];
}

/**
 * Bundles the scripts of `src/browser/` and the style sheet of `site/assets/`, fonts included, into an output folder.
 *
 * Names hold a hash of the content, so that a browser may keep a file for ever.
 *
 * @param root the project's folder
 */
export async function writeAssets(root: string, output: string): Promise<WrittenAssets> {
  const scripts = SCRIPTS.map((name) => ({ name, path: `src/browser/${name}.ts` }));
  const css = 'site/assets/book.css';
  const icon = 'site/assets/icon.svg';
  const { metafile } = await build({
    absWorkingDir: root,
    entryPoints: [...scripts.map(({ path }) => path), css, icon],
    outdir: resolve(output, ASSETS_FOLDER),
    entryNames: '[name]-[hash]',
    assetNames: '[name]-[hash]',
    bundle: true,
    minify: true,
    format: 'iife',
    target: ['es2022', 'safari16'],
    loader: { '.svg': 'copy', '.woff2': 'file' },
    legalComments: 'none',
    metafile: true,
    logLevel: 'silent',
  });

  const fromOutput = (path: string): string => relative(output, resolve(root, path)).replaceAll('\\', '/');
  const written = Object.entries(metafile.outputs);
  const outputOf = (input: string): string => {
    const found = written.find(([path, { entryPoint, inputs }]) => (entryPoint ?? soleInput(path, inputs)) === input);
    if (!found) throw new Error(`esbuild wrote nothing for ${input}`);
    return fromOutput(found[0]);
  };
  return {
    assets: {
      css: outputOf(css),
      icon: outputOf(icon),
      scripts: Object.fromEntries(scripts.map(({ name, path }) => [name, outputOf(path)])) as Assets['scripts'],
    },
    files: written.map(([path]) => fromOutput(path)),
  };
}

/** esbuild names the entry of a bundle, but not of a file that it only copies. */
function soleInput(path: string, inputs: Readonly<Record<string, unknown>>): string | undefined {
  const names = Object.keys(inputs);
  return path.endsWith('.svg') && names.length === 1 ? names[0] : undefined;
}
