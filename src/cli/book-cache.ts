import { createHash } from 'node:crypto';
import { realpath } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { privateFolder } from '../output/private-folder.ts';
import { userCache } from '../output/user-cache.ts';

/** Folder of a book in the cache of whoever runs this, made if it is missing; nobody else can read it. */
export async function bookCache(recipes: string): Promise<string> {
  const real = await realpath(recipes).catch(() => resolve(recipes));
  const folder = join(userCache(), createHash('sha256').update(real).digest('hex').slice(0, 16));
  await privateFolder(folder);
  return folder;
}
