import { createHash } from 'node:crypto';
import { mkdir, readdir, rename, rm, stat, writeFile } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

/** Folder of the project. */
export const ROOT = resolve(dirname(fileURLToPath(import.meta.url)), '../..');

/** What other runs left in `.build` is kept for a day: one of them may be about to load it. */
const KEPT_MS = 24 * 60 * 60 * 1000;

/**
 * Bundles a TypeScript file of the project for this Node, and returns the address to import.
 *
 * The name holds a hash of the content, so that an import after an edit never gets the module of before.
 * @param {string} entry path from the project's folder
 */
export async function bundle(entry) {
  const { outputFiles } = await build({
    absWorkingDir: ROOT,
    entryPoints: [entry],
    bundle: true,
    write: false,
    platform: 'node',
    target: 'node20',
    format: 'esm',
    packages: 'external',
    sourcemap: 'inline',
    sourcesContent: false,
    logLevel: 'silent',
  });
  const { contents } = outputFiles[0];
  const name = basename(entry, '.ts');
  const hash = createHash('sha256').update(contents).digest('hex').slice(0, 12);
  const folder = join(ROOT, '.build');
  const file = join(folder, `${name}-${hash}.mjs`);
  await mkdir(folder, { recursive: true });
  // Written aside and renamed: another process that starts at the same time never loads half a file.
  const aside = `${file}.${process.pid}.tmp`;
  await writeFile(aside, contents);
  await rename(aside, file);
  await removeOld(folder, new RegExp(`^${name}-[0-9a-f]{12}\\.mjs$`), file);
  return pathToFileURL(file).href;
}

async function removeOld(folder, pattern, kept) {
  for (const name of await readdir(folder)) {
    const file = join(folder, name);
    if (!pattern.test(name) || file === kept) continue;
    const age = await stat(file).then(
      ({ mtimeMs }) => Date.now() - mtimeMs,
      () => 0,
    );
    if (age > KEPT_MS) await rm(file, { force: true });
  }
}
