import { type FSWatcher, lstatSync, readdirSync, watch } from 'node:fs';
import { join } from 'node:path';

/** Time without a further event after which is looked, ms: a save is several events. */
const QUIET_MS = 60;

/** Longest wait for that while one event follows the other, ms. */
const LONGEST_MS = 1000;

/** Time between two looks without any event, ms: some disks tell nothing, a network's for one. */
const UNTOLD_MS = 2000;

/** A look without any event may take this share of the time. */
const SHARE = 0.05;

/**
 * A folder's files with their times and sizes: two states are the same text where nothing has changed. Undefined while the
 * folder, or one in it, cannot be read: it is being renamed or replaced. Hidden files and packages are passed over.
 */
export function folderState(folder: string): string | undefined {
  const states: string[] = [];
  const walk = (below: string): void => {
    for (const entry of readdirSync(below, { withFileTypes: true })) {
      if (entry.name.startsWith('.') || entry.name === 'node_modules') continue;
      const path = join(below, entry.name);
      if (entry.isDirectory()) walk(path);
      else {
        const stats = lstatSync(path, { throwIfNoEntry: false });
        states.push(`${path} ${stats?.ino} ${stats?.mtimeMs} ${stats?.ctimeMs} ${stats?.size}`);
      }
    }
  };
  return ifReadable(() => {
    walk(folder);
    return states.sort().join('\n');
  });
}

/** Follows folders: see `followFolders`. */
export interface Followed {
  /** State of all folders; undefined while one cannot be read. */
  state(): string | undefined;
  /** Resolves when the state can be read and is another one. */
  changeFrom(state: string | undefined): Promise<void>;
  close(): void;
}

/**
 * Follows folders. What the system tells is only taken as a reason to look: it tells nothing of a file that is added in the first moments of
 * a new folder, nor of a folder that was put in the place of the first.
 *
 * @param gone told once, when a folder cannot be read, until it can be again
 */
export function followFolders(folders: readonly string[], gone: () => void): Followed {
  let watchers: readonly (FSWatcher | undefined)[] = [];
  let look: (() => void) | undefined;
  let timer: NodeJS.Timeout | undefined;
  let first = 0;
  const lookSoon = (): void => {
    const now = performance.now();
    first ||= now;
    clearTimeout(timer);
    timer = setTimeout(() => look?.(), now - first > LONGEST_MS ? 0 : QUIET_MS);
  };
  // Anew after every change: a watch does not follow a folder that was away, nor see the one in its place.
  const follow = (): void => {
    for (const watcher of watchers) watcher?.close();
    watchers = folders.map((folder) => {
      const watcher = ifReadable(() => watch(folder, { recursive: true }, lookSoon));
      watcher?.on('error', lookSoon);
      return watcher;
    });
  };
  const state = (): string | undefined => {
    const states = folders.map(folderState);
    return states.includes(undefined) ? undefined : states.join('\n');
  };
  let away = false;
  follow();
  return {
    state,
    changeFrom: (from) =>
      new Promise((resolve) => {
        let seen = from;
        look = () => {
          first = 0;
          const started = performance.now();
          const now = state();
          if (now === undefined && !away) gone();
          away = now === undefined;
          if (now !== seen) follow();
          seen = now;
          if (now !== undefined && now !== from) {
            look = undefined;
            clearTimeout(timer);
            resolve();
            return;
          }
          clearTimeout(timer);
          timer = setTimeout(() => look?.(), Math.max(UNTOLD_MS, (performance.now() - started) / SHARE));
        };
        // A change between that state and now gave no event that was heard.
        look();
      }),
    close() {
      clearTimeout(timer);
      look = undefined;
      for (const watcher of watchers) watcher?.close();
    },
  };
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
