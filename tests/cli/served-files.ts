import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { filesBelow } from '../folder-tree.ts';

const hash = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/** A picture of a bait, which serve draws when it is asked for and writes into no folder. */
const isDrawn = (path: string): boolean => /^colours\/[^/]+\/[^/]+\.(?:webp|jpg)$/.test(path);

/** Hashes of the files of a site that lie in its folder, by their paths; its list of them is left out. */
export function writtenFiles(site: string): Readonly<Record<string, string>> {
  const paths = filesBelow(site).filter((path) => path !== '.cupbook' && !isDrawn(path));
  return Object.fromEntries(paths.map((path) => [path, hash(readFileSync(join(site, path)))]));
}

/** Hashes of the pictures of baits that a build has written. */
export function drawnFiles(site: string): Readonly<Record<string, string>> {
  const paths = filesBelow(site).filter(isDrawn);
  return Object.fromEntries(paths.map((path) => [path, hash(readFileSync(join(site, path)))]));
}

/** Hashes of files as a server sends them; its status for what it does not. */
export async function askedFiles(address: string, paths: readonly string[]): Promise<Readonly<Record<string, string>>> {
  const asked = paths.map(async (path) => {
    const response = await fetch(address + path);
    return [path, response.ok ? hash(new Uint8Array(await response.arrayBuffer())) : String(response.status)] as const;
  });
  return Object.fromEntries(await Promise.all(asked));
}
