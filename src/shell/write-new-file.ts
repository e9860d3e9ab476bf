import { basename, dirname, join } from 'node:path';
import { Refusal } from '../diagnostics/refusal.ts';
import { DISK, type Effects, systemCode, undefinedIfMissing } from '../output/effects.ts';

/**
 * Writes a new file of a book: whole or not at all, and never over another. Folders on the way are made. Stopped between two steps of the
 * disk it may leave an empty file of that name, never half a text.
 *
 * Throws: Refusal where a folder on the way is a link, which may lead out of the book and behind which nothing is read. What Node throws, with the
 * code EEXIST where the file is there.
 *
 * @param recipes the book's folder, which is there
 * @param path from that, with `/`
 */
export async function writeNewFile(recipes: string, path: string, text: string, disk: Effects = DISK): Promise<void> {
  await makeFolders(recipes, dirname(path), disk);
  const file = join(recipes, path);
  // No book reads what begins with a point.
  const beside = join(dirname(file), `.${basename(file)}.${process.pid}.tmp`);
  try {
    await disk.make(beside, text);
    // An empty file keeps the name, since a file that is renamed takes the place of any other.
    await disk.make(file, '');
    await disk.rename(beside, file).catch(async (error: unknown) => {
      await disk.remove(file);
      throw error;
    });
  } catch (error) {
    await disk.remove(beside).catch(undefinedIfMissing);
    throw error;
  }
  await disk.settle(dirname(file));
}

async function makeFolders(recipes: string, path: string, disk: Effects): Promise<void> {
  let folder = recipes;
  for (const name of path === '.' ? [] : path.split('/')) {
    folder = join(folder, name);
    const there = await disk.look(folder);
    if (there?.isSymbolicLink()) {
      throw new Refusal(
        `${folder} is a link, and nothing behind a link is read, so that no file was written there. Put the folder itself in its place.`,
      );
    }
    if (there === undefined) await disk.makeFolder(folder).catch(undefinedIfThere);
  }
}

/** Somebody else was faster to make the folder. */
function undefinedIfThere(error: unknown): undefined {
  if (systemCode(error) !== 'EEXIST') throw error;
  return undefined;
}
