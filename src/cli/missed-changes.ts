import { type FSWatcher, readdirSync, statSync, watch } from 'node:fs';
import { join } from 'node:path';

/** Time in which Eleventy has begun to build after a change that it noticed, ms; also between two looks for a folder that is gone. */
const NOTICED_MS = 800;

/**
 * A folder's files with their times and sizes: two states are the same text where nothing has changed. Undefined while the
 * folder, or one in it, cannot be read: it is being renamed or replaced.
 */
export function folderState(folder: string): string | undefined {
  const entries = ifReadable(() => readdirSync(folder, { recursive: true, withFileTypes: true }));
  const states = entries?.flatMap((entry) => {
    if (!entry.isFile()) return [];
    const path = join(entry.parentPath, entry.name);
    const { mtimeMs, size } = statSync(path, { throwIfNoEntry: false }) ?? { mtimeMs: 0, size: 0 };
    return `${path} ${mtimeMs} ${size}`;
  });
  return states?.sort().join('\n');
}

/** What a watch of a folder tells. */
export interface Missed {
  /** It has changed and was not built since. */
  changed(): void;
  /** It cannot be read; told once, until it can be again. */
  gone(): void;
}

/**
 * Tells when a folder has changed and was not built since: Eleventy's watcher overlooks a file that is added in the
 * first moments after it started, and everything in a folder that was put in the place of the first.
 *
 * @param built state of the folder at the start of the last build
 * @returns ends the watch
 */
export function watchForMissed(folder: string, built: () => string | undefined, { changed, gone }: Missed): () => void {
  let timer: NodeJS.Timeout | undefined;
  let watcher: FSWatcher | undefined;
  let away = false;
  const lookSoon = (): void => {
    clearTimeout(timer);
    timer = setTimeout(look, NOTICED_MS);
  };
  // Anew after every change: a watch does not follow a folder that was away, nor see the one in its place.
  const follow = (): void => {
    watcher?.close();
    watcher = ifReadable(() => watch(folder, { recursive: true }, lookSoon));
    watcher?.on('error', lookSoon);
  };
  const look = (): void => {
    follow();
    const state = folderState(folder);
    if (state === undefined) {
      if (!away) gone();
      away = true;
      lookSoon();
      return;
    }
    away = false;
    if (state !== built()) changed();
  };
  follow();
  // A change between the build and now gave no event.
  lookSoon();
  return () => {
    clearTimeout(timer);
    watcher?.close();
  };
}

/** Resolves with true when a folder is there and other than it was, with false when it was interrupted before that. */
export async function changeIn(
  folder: string,
  before: string | undefined,
  gone: () => void,
  interrupted: Promise<unknown>,
): Promise<boolean> {
  let end = (): void => undefined;
  const changed = new Promise<boolean>((resolve) => {
    end = watchForMissed(folder, () => before, { changed: () => resolve(true), gone });
  });
  const again = await Promise.race([changed, interrupted.then(() => false)]);
  end();
  return again;
}

/** What a look into a folder gives; undefined where the system refuses it. */
function ifReadable<T>(look: () => T): T | undefined {
  try {
    return look();
  } catch (error) {
    if (error instanceof Error && 'syscall' in error) return undefined;
    throw error;
  }
}
