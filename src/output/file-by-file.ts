import { readFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { Refusal } from '../diagnostics/refusal.ts';
import { required } from '../values/required.ts';
import { isGone, keepTouched, MovedAway, whileClaimed, whileClaimedAndThere } from './claim.ts';
import { notFolders, removeFiles, removeOwnTree } from './clear-away.ts';
import { type Effects, ensureFolder, forEach, undefinedIfMissing } from './effects.ts';
import { type Journal, readJournal } from './journal.ts';
import { MARKER, markText } from './mark.ts';
import { foldersOf, type Place } from './place.ts';
import type { SiteFile } from './site-file.ts';
import type { World } from './world.ts';
import { passingName, readPassingName } from './writer.ts';

const JOURNAL = 'journal.json';
const NEW_MARK = 'mark';

/**
 * Writes a site into a folder file by file: only those that have changed, new ones before old ones go, and nothing of what others
 * have put there. Killed at any moment, it is either not begun, or is completed by the next writer (`recoverInside`).
 *
 * @param check looks at the place, and refuses what must not be written to
 * @param isPart whether these are only some files of the site: the others stay
 */
export async function writeFileByFile(
  folder: string,
  files: readonly SiteFile[],
  label: string,
  check: () => Promise<Place>,
  world: World,
  isPart = false,
): Promise<void> {
  await whileClaimedAndThere(folder, world, async () => {
    await completeLeft(folder, world);
    await writeClaimed(await check(), files, label, world, isPart);
  });
}

async function writeClaimed(
  place: Place,
  files: readonly SiteFile[],
  label: string,
  world: World,
  isPart: boolean,
): Promise<void> {
  const { disk } = world;
  const { folder, own, mark } = place;
  await refuseTaken(place, files, disk);
  const changed: SiteFile[] = [];
  await forEach(files, async (file) => {
    if (!own.has(file.path) || !(await isSame(join(folder, file.path), file.content, disk))) changed.push(file);
  });
  const order = new Map(files.map(({ path }, index) => [path, index]));
  changed.sort((one, other) => required(order, one.path) - required(order, other.path));
  const written = files.map(({ path }) => path);
  const paths = isPart ? [...new Set([...(mark?.files ?? []), ...written])] : written;
  const stale = isPart ? [] : [...own].filter((path) => !order.has(path));
  const text = markText({ label, files: paths });
  if (changed.length === 0 && stale.length === 0 && mark && markText(mark) === text) return;

  const staging = join(folder, passingName('', world.writer, 'tmp'));
  await disk.makeFolder(staging);
  const end = keepTouched(staging);
  const journal: Journal = { put: changed.map(({ path }) => ({ path, fresh: !own.has(path) })), stale };
  try {
    await forEach([...changed.entries()], ([index, { content }]) => disk.make(join(staging, String(index)), content));
    await disk.make(join(staging, NEW_MARK), text);
    await disk.make(join(staging, `${JOURNAL}.tmp`), JSON.stringify(journal));
    await disk.settle(staging);
    await disk.rename(join(staging, `${JOURNAL}.tmp`), join(staging, JOURNAL));
    await disk.settle(staging);
  } catch (error) {
    end();
    await removeOwnTree(staging, disk);
    throw error;
  }
  try {
    await carryOut(folder, staging, journal, disk);
  } finally {
    end();
  }
}

/** Does what a journal says, from wherever it was left. */
async function carryOut(folder: string, staging: string, { put, stale }: Journal, disk: Effects): Promise<void> {
  // Without the new mark it was done to the end already, and somebody else's files may stand where the stale ones did.
  if (await disk.look(join(staging, NEW_MARK))) {
    // A file where a folder must be, or the other way round, cannot wait until the new ones are there.
    const files = new Set(put.map(({ path }) => path));
    const folders = new Set(put.flatMap(({ path }) => foldersOf(path)));
    const inTheWay = stale.filter((path) => folders.has(path) || foldersOf(path).some((above) => files.has(above)));
    if (inTheWay.length > 0) await removeFiles(folder, inTheWay, disk);
    for (const path of await notFolders(folder, [...files], disk)) throw hasCome(join(folder, path));
    for (const [index, { path, fresh }] of put.entries()) {
      const ready = join(staging, String(index));
      if (!(await disk.look(ready))) continue;
      const target = join(folder, path);
      await ensureFolder(dirname(target), disk);
      if (fresh && (await disk.look(target))) {
        throw hasCome(target);
      }
      await disk.rename(ready, target);
    }
    await forEach([...folders], (path) => disk.settle(join(folder, path)));
    await removeFiles(folder, stale, disk);
    await disk.settle(folder);
    await disk.rename(join(staging, NEW_MARK), join(folder, MARKER));
    await disk.settle(folder);
  }
  await removeOwnTree(staging, disk);
}

const hasCome = (path: string): Refusal =>
  new Refusal(
    `${path} turned up while the site was being written, and has been left alone. Move it away, and do this again.`,
  );

/** Refuses to replace what is not the site's. */
async function refuseTaken({ folder, own, others }: Place, files: readonly SiteFile[], disk: Effects): Promise<void> {
  if (others.length === 0) return;
  const taken = new Set<string>();
  const above = new Set(files.filter(({ path }) => !own.has(path)).flatMap(({ path }) => foldersOf(path)));
  await forEach([...above], async (path) => {
    // The site's files may lie in a plain folder of theirs, but not where a link leads.
    if (!own.has(path) && !((await disk.look(join(folder, path)))?.isDirectory() ?? true)) taken.add(path);
  });
  await forEach(files, async ({ path }) => {
    const there = own.has(path) ? undefined : await disk.look(join(folder, path));
    // A folder that holds the site's own files alone goes with them.
    if (there && (!there.isDirectory() || others.some((other) => other.startsWith(`${path}/`) || other === path)))
      taken.add(path);
  });
  if (taken.size === 0) return;
  const [first, ...more] = [...taken].sort();
  throw new Refusal(
    `${join(folder, first!)} was not written by a build of a book${more.length === 0 ? '' : `, and neither were ${more.length} more where files of the site must go`}. Move it away, or name another folder with --output.`,
  );
}

async function isSame(file: string, content: SiteFile['content'], disk: Effects): Promise<boolean> {
  const there = await disk.read(file).catch(undefinedIfMissing);
  if (!there) return false;
  if (typeof content === 'string') return there.equals(Buffer.from(content));
  return there.equals(content instanceof Uint8Array ? content : await readFile(content.copyOf));
}

/** Completes in a folder what killed writers had begun, and removes what they had only prepared. */
export async function recoverInside(folder: string, world: World): Promise<void> {
  const stats = await world.disk.look(folder);
  if (!stats?.isDirectory() || (await leftIn(folder, world)).length === 0) return;
  await whileClaimed(folder, world, () => completeLeft(folder, world)).catch((error: unknown) => {
    // With all that was left in it.
    if (!(error instanceof MovedAway)) throw error;
  });
}

async function completeLeft(folder: string, world: World): Promise<void> {
  const { disk } = world;
  for (const { path, isFolder } of await leftIn(folder, world)) {
    const journal = isFolder ? await disk.read(join(path, JOURNAL)).catch(undefinedIfMissing) : undefined;
    if (!isFolder) await disk.remove(path).catch(undefinedIfMissing);
    else if (journal) await carryOut(folder, path, readJournal(journal.toString('utf8'), path), disk);
    else await removeOwnTree(path, disk);
  }
}

/** What writers that are gone have left in a folder. */
async function leftIn(
  folder: string,
  world: World,
): Promise<readonly { readonly path: string; readonly isFolder: boolean }[]> {
  const left: { path: string; isFolder: boolean }[] = [];
  for (const entry of await world.disk.list(folder)) {
    const read = readPassingName(entry.name);
    const path = join(folder, entry.name);
    if (read?.base === '' && (await isGone(read.writer, path, world)))
      left.push({ path, isFolder: entry.isDirectory() });
  }
  return left;
}
