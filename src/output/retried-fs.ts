/**
 * Renaming and removing where another program may hold the file for a moment: on Windows a virus scanner, an indexer or a synchroniser
 * opens what was just written, and until it lets go every rename and removal is refused.
 *
 * @packageDocumentation
 */
import * as files from 'node:fs/promises';

/** How such a refusal is called. Elsewhere than on Windows the same codes mean a right that is lacking or a mount point, which no waiting mends. */
const HELD: ReadonlySet<string | undefined> = new Set(['EPERM', 'EBUSY', 'EACCES', 'ENOTEMPTY']);

/** Pauses before each further try, ms: about 5 s in all, common practice, no source. */
const PAUSES: readonly number[] = [10, 20, 40, 80, 160, 320, 640, 1280, 2560];

/** The world that a try depends on. */
export interface Surroundings {
  readonly platform: NodeJS.Platform;
  /** Resolves after some ms. */
  pause(ms: number): Promise<void>;
}

const HERE: Surroundings = {
  platform: process.platform,
  pause: (ms) => new Promise((resolve) => setTimeout(resolve, ms)),
};

/**
 * Does something to files, again after a pause while Windows says that another program holds one of them.
 *
 * Throws: what the last try threw; any other error, and any error elsewhere than on Windows, at once.
 */
export async function retried<T>(act: () => Promise<T>, { platform, pause }: Surroundings = HERE): Promise<T> {
  for (const ms of platform === 'win32' ? PAUSES : []) {
    try {
      return await act();
    } catch (error) {
      if (!HELD.has((error as NodeJS.ErrnoException).code)) throw error;
    }
    await pause(ms);
  }
  return act();
}

/** As in `node:fs/promises`, retried. */
export const rename = (from: string, to: string, here?: Surroundings): Promise<void> =>
  retried(() => files.rename(from, to), here);

/** As in `node:fs/promises`, retried. */
export const unlink = (path: string, here?: Surroundings): Promise<void> => retried(() => files.unlink(path), here);

/** As in `node:fs/promises`, retried. */
export const rmdir = (path: string, here?: Surroundings): Promise<void> => retried(() => files.rmdir(path), here);
