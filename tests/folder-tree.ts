import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';

/** Every plain file below a folder, as paths with `/`, sorted. */
export function filesBelow(folder: string): readonly string[] {
  return readdirSync(folder, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).replaceAll('\\', '/'))
    .sort();
}

/** One hash of all paths and contents below a folder: equal exactly if nothing was changed, added or removed. */
export function treeHash(folder: string): string {
  const hash = createHash('sha256');
  for (const path of filesBelow(folder))
    hash
      .update(`${path}\0`)
      .update(readFileSync(join(folder, path)))
      .update('\0');
  return hash.digest('hex');
}
