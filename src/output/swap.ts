import type { Dirent } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { isGone, keepTouched, MovedAway, whileClaimed } from './claim.ts';
import { removeIfEmpty, removeOwnTree, removeReplaced } from './clear-away.ts';
import { type Effects, ensureFolder, systemCode } from './effects.ts';
import { lookAtPlace, type Place } from './place.ts';
import type { SiteFile } from './site-file.ts';
import { stageSite } from './stage.ts';
import type { World } from './world.ts';
import { passingName, readPassingName } from './writer.ts';

/** How the system says that a folder cannot be renamed, or nothing made beside it, though it may be written to itself. */
const NO_SWAP: readonly string[] = ['EXDEV', 'EBUSY', 'EPERM', 'EACCES', 'EROFS', 'EINVAL'];

/** How it says that another site has come to stand there meanwhile. */
const TAKEN: readonly string[] = ['ENOTEMPTY', 'EEXIST', 'EPERM', 'EACCES', 'ENOTDIR'];

/** Times that another writer may be quicker. */
const MOST_TRIES = 50;

/** Whether a folder can be replaced whole: nothing in it is somebody else's. */
export const isReplaceable = ({ fixed, others }: Place): boolean => !fixed && others.length === 0;

/**
 * Writes a site beside its place and puts it there at the end, so that nobody is ever served half a site. Returns false, with
 * nothing changed, where that is not possible: the files must be written one by one.
 *
 * @param check looks at the place again, and refuses what must not be replaced
 */
export async function swapSite(
  folder: string,
  files: readonly SiteFile[],
  label: string,
  check: () => Promise<Place>,
  world: World,
): Promise<boolean> {
  const { disk } = world;
  const parent = dirname(folder);
  await ensureFolder(parent, disk);
  // What a killed run left there would never be found.
  if (!(await listIfAllowed(parent, disk))) return false;
  const work = join(parent, passingName(basename(folder), world.writer, 'tmp'));
  try {
    await disk.makeFolder(work);
  } catch (error) {
    if (NO_SWAP.includes(systemCode(error) ?? '') && (await disk.look(folder))) return false;
    throw error;
  }
  const end = keepTouched(work);
  try {
    const next = join(work, NEXT);
    await disk.makeFolder(next);
    await stageSite(next, files, label, disk);
    for (let tries = 0; tries < MOST_TRIES; tries += 1) {
      const place = await check();
      if (!isReplaceable(place)) return false;
      const last = join(work, `${LAST}${tries}`);
      const done = place.exists
        ? await whileClaimed(folder, world, async () => {
            if (!isReplaceable(await check())) return 'not possible';
            return replace(folder, next, last, disk);
          }).catch((error: unknown) => {
            if (error instanceof MovedAway) return 'again';
            throw error;
          })
        : await replace(folder, next, undefined, disk);
      if (done === 'done') {
        await disk.settle(parent);
        return true;
      }
      if (done === 'not possible') return false;
    }
    throw new Error(`other writers were quicker ${MOST_TRIES} times at ${folder}`);
  } finally {
    end();
    await tidyWork(work, folder, disk);
  }
}

const NEXT = 'next';
const LAST = 'last-';

/** @param last where the folder is moved; absent where none was there */
async function replace(
  folder: string,
  next: string,
  last: string | undefined,
  disk: Effects,
): Promise<'done' | 'again' | 'not possible'> {
  if (last !== undefined) {
    try {
      await disk.rename(folder, last);
    } catch (error) {
      if (NO_SWAP.includes(systemCode(error) ?? '')) return 'not possible';
      throw error;
    }
  }
  try {
    await disk.rename(next, folder);
    return 'done';
  } catch (error) {
    // A new site of another writer; the one that was moved away is older, and goes.
    if (TAKEN.includes(systemCode(error) ?? '') && (await disk.look(folder))) return 'again';
    if (last !== undefined) await disk.rename(last, folder);
    throw error;
  }
}

/** Removes the folder that a writer worked in. What was moved away for a site that then did not come is put back first. */
async function tidyWork(work: string, folder: string, disk: Effects): Promise<void> {
  const names = ((await disk.look(work)) ? await disk.list(work) : []).map(({ name }) => name);
  for (const name of names.filter((name) => name.startsWith(LAST))) {
    const last = join(work, name);
    if (!(await disk.look(folder)) && (await isWhole(last, disk))) await disk.rename(last, folder);
    else await removeReplaced(last, folder, disk);
  }
  if (names.includes(NEXT)) await removeOwnTree(join(work, NEXT), disk);
  await removeIfEmpty(work, disk);
}

/**
 * Puts in order what killed writers have left beside a folder: a site that was moved away, and had none come in its place, is put back
 * before anything is removed.
 */
export async function recoverBeside(folder: string, world: World): Promise<void> {
  const { disk } = world;
  const parent = dirname(folder);
  if (!(await disk.look(parent))) return;
  const works = ((await listIfAllowed(parent, disk)) ?? [])
    .filter((entry) => entry.isDirectory())
    .map(({ name }) => ({ read: readPassingName(name), work: join(parent, name) }))
    .filter(({ read }) => read?.base === basename(folder) && read.ending === 'tmp');
  if (works.length === 0) return;
  if (!(await disk.look(folder))) {
    for (const { work } of works) {
      for (const { name } of await disk.list(work)) {
        const last = join(work, name);
        if (!name.startsWith(LAST) || !(await isWhole(last, disk))) continue;
        // A writer that is at work is at the second of its two renames.
        await world.pause(SECOND_RENAME);
        // One that is at work after all finds its place taken, and tries again.
        if (!(await disk.look(folder))) await disk.rename(last, folder).catch(unlessDoneByAnother);
      }
    }
    await disk.settle(parent);
  }
  for (const { read, work } of works) {
    if (await isGone(read!.writer, work, world)) await tidyWork(work, folder, disk);
  }
}

/** Entries of a folder; undefined where the system shows them to others alone, as hosts of many sites have it. */
async function listIfAllowed(folder: string, disk: Effects): Promise<readonly Dirent[] | undefined> {
  return disk.list(folder).catch((error: unknown) => {
    if (!['EACCES', 'EPERM'].includes(systemCode(error) ?? '')) throw error;
    return undefined;
  });
}

/** Time after which the second of two renames has been made, ms. */
const SECOND_RENAME = 200;

function unlessDoneByAnother(error: unknown): void {
  if (!['ENOENT', ...TAKEN].includes(systemCode(error) ?? '')) throw error;
}

/** Whether nothing of a site has been removed yet. */
async function isWhole(folder: string, disk: Effects): Promise<boolean> {
  const { own, mark } = await lookAtPlace(folder, disk);
  return mark !== undefined && own.size === mark.files.length;
}
