import { join } from 'node:path';
import { type Effects, forEach, systemCode, undefinedIfMissing } from './effects.ts';
import { MARKER, readMark } from './mark.ts';
import { foldersOf } from './place.ts';
import { readPassingName } from './writer.ts';

/**
 * Removes files of a site, by their paths from its folder, and the folders that become empty. What is not there is passed over, and so
 * is what lies behind a link.
 */
export async function removeFiles(folder: string, paths: readonly string[], disk: Effects): Promise<void> {
  const links = await notFolders(folder, paths, disk);
  const within = paths.filter((path) => !foldersOf(path).some((above) => links.has(above)));
  await forEach(within, async (path) => {
    const file = join(folder, path);
    // Where one of the site's folders has taken its place, it is gone already.
    if (!(await disk.look(file))?.isDirectory()) await disk.remove(file).catch(undefinedIfMissing);
  });
  const folders = [...new Set(within.flatMap(foldersOf))];
  // The innermost first.
  for (const path of folders.sort((one, other) => other.length - one.length))
    await removeIfEmpty(join(folder, path), disk);
}

/** The folders of a site's files in whose place something else stands: a file, or a link. */
export async function notFolders(
  folder: string,
  paths: readonly string[],
  disk: Effects,
): Promise<ReadonlySet<string>> {
  const found = new Set<string>();
  await forEach([...new Set(paths.flatMap(foldersOf))], async (path) => {
    if (!((await disk.look(join(folder, path)))?.isDirectory() ?? true)) found.add(path);
  });
  return found;
}

/** Removes a folder if nothing is in it. */
export async function removeIfEmpty(folder: string, disk: Effects): Promise<void> {
  await disk.removeFolder(folder).catch((error: unknown) => {
    // Windows and some network disks answer EPERM or EEXIST for a folder that is not empty.
    if (!['ENOENT', 'ENOTEMPTY', 'EEXIST', 'EPERM', 'ENOTDIR', 'EBUSY'].includes(systemCode(error) ?? '')) throw error;
  });
}

/** Removes a folder with all that is in it: one that a writer made for itself alone. Links in it are removed, not followed. */
export async function removeOwnTree(folder: string, disk: Effects): Promise<void> {
  for (const entry of (await disk.list(folder).catch(undefinedIfMissing)) ?? []) {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) await removeOwnTree(path, disk);
    else await disk.remove(path).catch(undefinedIfMissing);
  }
  await disk.removeFolder(folder).catch(undefinedIfMissing);
}

/**
 * Removes a site that another has taken the place of. What others have put into it meanwhile moves to the new one; where that is not
 * free, it stays where it is.
 */
export async function removeReplaced(old: string, current: string, disk: Effects): Promise<void> {
  await removeFiles(old, (await readMark(old, disk))?.files ?? [], disk);
  for (const entry of await disk.list(old)) {
    if (readPassingName(entry.name)?.base !== '') continue;
    if (entry.isDirectory()) await removeOwnTree(join(old, entry.name), disk);
    else await disk.remove(join(old, entry.name)).catch(undefinedIfMissing);
  }
  // The mark last: while it is there, it says what else may be removed.
  if (!(await moveOver(old, current, disk))) return;
  await disk.remove(join(old, MARKER)).catch(undefinedIfMissing);
  await removeIfEmpty(old, disk);
}

/** Moves everything but the mark from a folder to the same place of another, where it is free. Returns whether nothing is left. */
async function moveOver(from: string, to: string, disk: Effects): Promise<boolean> {
  let all = true;
  for (const entry of await disk.list(from)) {
    const [old, target] = [join(from, entry.name), join(to, entry.name)];
    if (entry.name === MARKER) continue;
    const there = await disk.look(target);
    if (!there) {
      await disk.rename(old, target).catch((error: unknown) => {
        undefinedIfMissing(error);
        all = false;
      });
    } else if (entry.isDirectory() && there.isDirectory()) {
      if (await moveOver(old, target, disk)) await removeIfEmpty(old, disk);
      else all = false;
    } else all = false;
  }
  return all;
}
