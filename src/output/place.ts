import { realpath } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { Refusal } from '../diagnostics/refusal.ts';
import { defined } from '../values/defined.ts';
import { type Effects, undefinedIfMissing } from './effects.ts';
import { MARKER, type Mark, readMark } from './mark.ts';
import { pathInside } from './path-inside.ts';
import { readPassingName } from './writer.ts';

/** What stands where a site is to be written. */
export interface Place {
  /** Real path of the folder: no part of it is a link. */
  readonly folder: string;
  readonly exists: boolean;
  /** Absent where no site has been written. */
  readonly mark?: Mark;
  /** Files of the site that are there, from the folder, with `/`. */
  readonly own: ReadonlySet<string>;
  /** What others have put there, in the site's folders too. A folder of theirs stands for all that is in it. */
  readonly others: readonly string[];
  /** Whether nothing can be put in the place of the folder itself: it was named by a link, or a disk begins there. */
  readonly fixed: boolean;
}

/** What somebody keeps beside a published site, besides hidden files: a site may be written among these without being asked to. */
const BESIDE_A_SITE: ReadonlySet<string> = new Set(['CNAME', 'robots.txt', 'favicon.ico', '_headers', '_redirects']);

/** Real path of a folder, also of one that is not there yet. Refuses a link that leads nowhere. */
export async function realFolder(path: string, disk: Effects): Promise<string> {
  const real = await realpath(path).catch(undefinedIfMissing);
  if (real !== undefined) return real;
  if ((await disk.look(path))?.isSymbolicLink()) {
    throw new Refusal(
      `${path} is a link to a folder that is not there. Make that folder, or name another with --output.`,
    );
  }
  const above = dirname(path);
  return above === path ? path : join(await realFolder(above, disk), basename(path));
}

/** Refuses an output folder that holds the folder of the sources, or lies in it: a build would overwrite or read itself. */
export async function checkApart(sources: string, output: string, disk: Effects): Promise<void> {
  const [from, to] = [await realFolder(resolve(sources), disk), await realFolder(resolve(output), disk)];
  if (pathInside(from, to) === undefined && pathInside(to, from) === undefined) return;
  throw new Refusal(
    `The site cannot be written to ${output}, since the book is read from ${sources}. Name a folder apart from it with --output.`,
  );
}

/** Looks at a place. Refuses a file, and a folder that holds others' files and was never given to a site. */
export async function lookAtPlace(path: string, disk: Effects): Promise<Place> {
  const folder = await realFolder(path, disk);
  const stats = await disk.look(folder);
  if (!stats) return { folder, exists: false, own: new Set(), others: [], fixed: false };
  if (!stats.isDirectory()) throw new Refusal(`${path} is a file. Name a folder for the site with --output.`);
  const linked = (await disk.look(path))?.isSymbolicLink() ?? false;
  const above = await disk.look(dirname(folder));
  const mark = await readMark(folder, disk);
  const { own, others } = await entriesOf(folder, mark, disk);
  if (!mark && others.some((name) => !name.startsWith('.') && !BESIDE_A_SITE.has(name))) {
    throw new Refusal(
      `${path} holds files that no build of a book wrote. Name another folder with --output. If the site belongs among them, put an empty file ${MARKER} there: yours then stay.`,
    );
  }
  return { folder, exists: true, ...defined({ mark }), own, others, fixed: linked || above?.dev !== stats.dev };
}

async function entriesOf(
  root: string,
  mark: Mark | undefined,
  disk: Effects,
): Promise<{ readonly own: ReadonlySet<string>; readonly others: readonly string[] }> {
  const listed = new Set(mark?.files);
  const folders = new Set(mark?.files.flatMap(foldersOf));
  const own = new Set<string>();
  const others: string[] = [];
  const walk = async (prefix: string): Promise<void> => {
    for (const entry of await disk.list(join(root, prefix))) {
      const path = prefix + entry.name;
      if (prefix === '' && (entry.name === MARKER || readPassingName(entry.name)?.base === '')) continue;
      // A link in the place of a folder of the site is somebody else's, and so is all that it leads to.
      if (entry.isDirectory() && folders.has(path)) await walk(`${path}/`);
      else if (entry.isFile() && listed.has(path)) own.add(path);
      else others.push(path);
    }
  };
  await walk('');
  return { own, others };
}

/** The folders that a file of a site lies in, the outermost first. */
export function foldersOf(path: string): readonly string[] {
  const names = path.split('/').slice(0, -1);
  return names.map((_, index) => names.slice(0, index + 1).join('/'));
}
