import { readdir, stat, unlink, utimes, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { undefinedIfMissing } from '../../output/effects.ts';
import { privateFolder } from '../../output/private-folder.ts';
import { rename } from '../../output/retried-fs.ts';
import type { Copied } from '../../output/site-file.ts';

const DAY_MS = 86_400_000;
/** A picture that nobody has wanted for so long is not kept longer: each edit of a recipe leaves some 100 kB. */
const KEPT_MS = 60 * DAY_MS;

/**
 * Finished pictures in a folder, by names that tell all that is in them.
 *
 * A user who has no place for them can build all the same: then none is ever there.
 */
export class KeptPictures {
  readonly #folder: string;
  readonly #ready: Promise<boolean>;
  #count = 0;

  constructor(folder: string) {
    this.#folder = folder;
    this.#ready = privateFolder(folder).then(
      () => forgetOld(folder).then(() => true),
      () => false,
    );
  }

  /** A picture that is kept; undefined where it is not. */
  async find(name: string): Promise<Copied | undefined> {
    if (!(await this.#ready)) return undefined;
    const file = join(this.#folder, name);
    const stats = await stat(file).catch(undefinedIfMissing);
    if (!stats) return undefined;
    if (Date.now() - stats.mtimeMs > DAY_MS) await utimes(file, new Date(), new Date()).catch(undefinedIfMissing);
    return { copyOf: file };
  }

  /** Keeps a picture, where there is a place for it. */
  async keep(name: string, bytes: Uint8Array): Promise<Uint8Array | Copied> {
    if (!(await this.#ready)) return bytes;
    const file = join(this.#folder, name);
    this.#count += 1;
    const aside = `${file}.${process.pid}-${this.#count}.tmp`;
    try {
      // On the disk before it has its name: after a power cut, an empty picture would be taken for a finished one for ever.
      await writeFile(aside, bytes, { flush: true });
      await rename(aside, file);
      return { copyOf: file };
    } catch {
      // A full disk: it is shown all the same.
      await unlink(aside).catch(() => undefined);
      return bytes;
    }
  }
}

/** Removes what has not been wanted for long, and what a killed run has left. */
async function forgetOld(folder: string): Promise<void> {
  const names = await readdir(folder).catch(() => []);
  for (const name of names) {
    const file = join(folder, name);
    const stats = await stat(file).catch(() => undefined);
    const age = stats ? Date.now() - stats.mtimeMs : 0;
    if (age > KEPT_MS || (name.endsWith('.tmp') && age > DAY_MS)) await unlink(file).catch(() => undefined);
  }
}
