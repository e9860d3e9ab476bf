import { chmod, lstat, mkdir } from 'node:fs/promises';
import { dirname } from 'node:path';
import { Refusal } from '../diagnostics/refusal.ts';
import { DISK, ensureFolder, systemCode } from './effects.ts';
import { withReason } from './with-reason.ts';

/**
 * Makes a folder that its user alone can read, and those that it lies in.
 *
 * Refuses one that is somebody else's, or a link: who made it could read what is put there, or lead it elsewhere.
 */
export async function privateFolder(folder: string): Promise<void> {
  await withReason(folder, async () => {
    await ensureFolder(dirname(folder), DISK);
    await mkdir(folder, { mode: 0o700 }).catch(unlessThere);
    const stats = await lstat(folder);
    const user = process.getuid?.();
    if (!stats.isDirectory() || (user !== undefined && stats.uid !== user)) {
      throw new Refusal(`${folder} belongs to somebody else. Name a folder of your own with --output.`);
    }
    if ((stats.mode & 0o077) !== 0) await chmod(folder, 0o700);
  });
}

function unlessThere(error: unknown): void {
  if (systemCode(error) !== 'EEXIST') throw error;
}
