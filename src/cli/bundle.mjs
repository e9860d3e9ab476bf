import { stat } from 'node:fs/promises';
import { basename, dirname, isAbsolute, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

/** Folder of the project. */
export const ROOT = resolve(dirname(fileURLToPath(import.meta.url)), '../..');

/** What was bundled last of each file: its address, and a state of all files that are in it. */
const bundled = new Map();

/**
 * Bundles a TypeScript file of the project for this Node, and returns the address to import.
 *
 * The address holds the code itself, so that nothing is written, and an import after an edit never gets the module of before.
 * @param {string} entry path from the project's folder
 */
export async function bundle(entry) {
  const last = bundled.get(entry);
  if (last && (await stateOf(last.inputs)) === last.state) return last.address;
  const { outputFiles, metafile } = await build({
    absWorkingDir: ROOT,
    entryPoints: [entry],
    bundle: true,
    write: false,
    metafile: true,
    platform: 'node',
    target: 'node20',
    format: 'esm',
    plugins: [packagesWhereTheyLie],
    logLevel: 'silent',
  });
  const inputs = Object.keys(metafile.inputs).map((path) => resolve(ROOT, path));
  const code = `${outputFiles[0].text}\n//# sourceURL=cupbook:${basename(entry, '.ts')}.mjs\n`;
  const address = `data:text/javascript;base64,${Buffer.from(code).toString('base64')}`;
  bundled.set(entry, { address, inputs, state: await stateOf(inputs) });
  return address;
}

/** Packages stay outside, by where they lie: code that is in its own address has no folder from which it could find them. */
const packagesWhereTheyLie = {
  name: 'packages-where-they-lie',
  setup({ onResolve }) {
    onResolve({ filter: /^[^.]/ }, ({ path, kind }) => {
      if (kind === 'entry-point' || isAbsolute(path)) return undefined;
      return { path: import.meta.resolve(path), external: true };
    });
  },
};

async function stateOf(paths) {
  const states = paths.map((path) =>
    stat(path).then(
      ({ mtimeMs, size }) => `${mtimeMs} ${size}`,
      () => 'gone',
    ),
  );
  return (await Promise.all(states)).join('\n');
}
