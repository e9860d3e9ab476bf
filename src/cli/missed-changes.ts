import { readdirSync, statSync, watch } from 'node:fs';
import { join } from 'node:path';

/** Time in which Eleventy has begun to build after a change that it noticed, ms. */
const NOTICED_MS = 800;

/** A folder's files with their times and sizes: two states are the same text where nothing has changed. */
export function folderState(folder: string): string {
  const states = readdirSync(folder, { recursive: true, withFileTypes: true }).flatMap((entry) => {
    if (!entry.isFile()) return [];
    const path = join(entry.parentPath, entry.name);
    const { mtimeMs, size } = statSync(path, { throwIfNoEntry: false }) ?? { mtimeMs: 0, size: 0 };
    return `${path} ${mtimeMs} ${size}`;
  });
  return states.sort().join('\n');
}

/**
 * Calls `changed` when a folder has changed and was not built since: Eleventy's watcher overlooks a file that is added in the
 * first moments after it started.
 *
 * @param built state of the folder at the start of the last build
 * @returns ends the watch
 */
export function watchForMissed(folder: string, built: () => string, changed: () => void): () => void {
  let timer: NodeJS.Timeout | undefined;
  const look = (): void => {
    clearTimeout(timer);
    timer = setTimeout(() => {
      if (folderState(folder) !== built()) changed();
    }, NOTICED_MS);
  };
  const watcher = watch(folder, { recursive: true }, look);
  // A change between the build and now gave no event.
  look();
  return () => {
    clearTimeout(timer);
    watcher.close();
  };
}
