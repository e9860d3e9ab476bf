import { copyFile, mkdir, readdir, rename, rm, rmdir, writeFile } from 'node:fs/promises';
import { basename, dirname, isAbsolute, join, relative } from 'node:path';
import { Refusal } from '../diagnostics/refusal.ts';
import type { SiteFile } from './site-file.ts';

/**
 * The file that marks a folder as written by a build. Only a folder that carries it is ever overwritten or swept, so
 * that an output that was named by mistake loses nothing.
 */
export const MARKER = '.cupbook';

const MARKER_TEXT = 'This folder is written by Cupbook. A build replaces everything in it.\n';

/** Refuses an output folder that holds the book, or lies in it: a build would overwrite or read itself. */
export function checkApart(recipes: string, output: string): void {
  const from = relative(output, recipes);
  const to = relative(recipes, output);
  const inside = (path: string): boolean => path === '' || (!path.startsWith('..') && !isAbsolute(path));
  if (inside(from) || inside(to)) {
    throw new Refusal(
      `The site cannot be written to ${output}, since the book is read from ${recipes}. Name a folder apart from it with --output.`,
    );
  }
}

/** Whether a build may write into a folder: it is not there, or empty, or an earlier build's. Refuses any other. */
export async function checkOutput(folder: string): Promise<void> {
  const names = await readdir(folder).catch((error: NodeJS.ErrnoException): string[] => {
    if (error.code === 'ENOENT') return [];
    if (error.code === 'ENOTDIR') throw new Refusal(`${folder} is a file. Name a folder for the site with --output.`);
    throw error;
  });
  if (names.length > 0 && !names.includes(MARKER)) {
    throw new Refusal(
      `${folder} holds files that no build of a book wrote, and they would be lost. Name another folder with --output, or empty this one first.`,
    );
  }
}

/** Makes a folder ready to be written, and marks it. Refuses a folder with other things in it. */
export async function claimOutput(folder: string): Promise<void> {
  await checkOutput(folder);
  await mkdir(folder, { recursive: true });
  await writeFile(join(folder, MARKER), MARKER_TEXT);
}

/** Writes files into a folder, in their order. */
export async function writeFiles(folder: string, files: readonly SiteFile[]): Promise<void> {
  for (const { path, content } of files) {
    const file = join(folder, path);
    await mkdir(dirname(file), { recursive: true });
    if (typeof content === 'string' || content instanceof Uint8Array) await writeFile(file, content);
    else await copyFile(content.copyOf, file);
  }
}

/**
 * Removes what earlier builds left in an output folder, and the folders that become empty.
 *
 * @param kept whether a file was written by this build, by its path from the folder, with `/`; also asked of folders,
 * and one that is kept stays whole, unread: it may be written to meanwhile
 */
export async function sweepOutput(folder: string, kept: (path: string) => boolean): Promise<void> {
  await checkOutput(folder);
  await sweep(folder, '', (path) => path === MARKER || kept(path));
}

/** Returns whether anything is left in the folder `prefix` of `root`. */
async function sweep(root: string, prefix: string, kept: (path: string) => boolean): Promise<boolean> {
  let left = false;
  for (const entry of await readdir(join(root, prefix), { withFileTypes: true })) {
    const path = prefix + entry.name;
    if (kept(path)) {
      left = true;
    } else if (entry.isDirectory()) {
      if (await sweep(root, `${path}/`, kept)) left = true;
      else await rmdir(join(root, path));
    } else {
      await rm(join(root, path));
    }
  }
  return left;
}

/**
 * Has a site written beside its output folder and puts it in its place at the end, so that a build which fails leaves
 * the last good site as it was, and nobody is ever served half a site.
 *
 * @param write fills the folder that it is given
 */
export async function swapOutput(output: string, write: (aside: string) => Promise<void>): Promise<void> {
  // Beside the output and not in the project: a folder can only be renamed within its own disk. With the number of this
  // process, so that two builds at once do not write into one folder.
  const next = `${output}.next-${process.pid}.tmp`;
  const last = `${output}.last-${process.pid}.tmp`;
  await removeLeftovers(output);
  try {
    await claimOutput(next);
    await write(next);
    await checkOutput(output);
    await renameIfThere(output, last);
    await rename(next, output).catch(async (error: unknown) => {
      await renameIfThere(last, output);
      throw error;
    });
  } finally {
    for (const left of [next, last]) await removeClaimed(left);
  }
}

/** Removes what builds that were killed left beside an output folder. */
async function removeLeftovers(output: string): Promise<void> {
  const parent = dirname(output);
  for (const name of await readdir(parent).catch((): string[] => [])) {
    const [, base, id] = /^(.+)\.(?:next|last)-(\d+)\.tmp$/.exec(name) ?? [];
    if (base === basename(output) && !isRunning(Number(id))) await removeClaimed(join(parent, name));
  }
}

/** Whether a process of this machine runs; signal 0 only asks. */
function isRunning(id: number): boolean {
  try {
    process.kill(id, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

/** Removes a folder that a build wrote; leaves any other, whatever its name. */
async function removeClaimed(folder: string): Promise<void> {
  const names = await readdir(folder).catch((): string[] => []);
  if (names.includes(MARKER)) await rm(folder, { recursive: true, force: true });
}

async function renameIfThere(from: string, to: string): Promise<void> {
  await rename(from, to).catch((error: NodeJS.ErrnoException) => {
    if (error.code !== 'ENOENT') throw error;
  });
}
