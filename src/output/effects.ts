/**
 * All that the writing of a site does to a disk, as a value: a test hands in one that stops at any step, as a power cut would.
 *
 * @packageDocumentation
 */
import type { Dirent, Stats } from 'node:fs';
import { copyFile, lstat, mkdir, open, readdir, readFile } from 'node:fs/promises';
import { dirname } from 'node:path';
import { rename, rmdir, unlink } from './retried-fs.ts';
import type { SiteFile } from './site-file.ts';

/** What is done to files and folders. Paths are absolute; each throws what Node throws, where nothing else is said. */
export interface Effects {
  /** What a path is, links not followed; undefined where nothing is. */
  look(path: string): Promise<Stats | undefined>;
  /** Entries of a folder. */
  list(folder: string): Promise<readonly Dirent[]>;
  read(file: string): Promise<Buffer>;
  /** Makes one folder in one that is there. */
  makeFolder(folder: string): Promise<void>;
  /** Makes a new file; its content has reached the disk when it resolves. */
  make(file: string, content: SiteFile['content']): Promise<void>;
  /** Has what was made, renamed and removed in a folder reach the disk. */
  settle(folder: string): Promise<void>;
  rename(from: string, to: string): Promise<void>;
  /** Removes a file. */
  remove(file: string): Promise<void>;
  /** Removes an empty folder. */
  removeFolder(folder: string): Promise<void>;
}

/** The disk of this machine. */
export const DISK: Effects = {
  look: (path) => lstat(path).catch(undefinedIfMissing),
  list: (folder) => readdir(folder, { withFileTypes: true }),
  read: (file) => readFile(file),
  makeFolder: (folder) => mkdir(folder),
  async make(file, content) {
    if (typeof content === 'object' && 'copyOf' in content) await copyFile(content.copyOf, file);
    const handle = await open(file, typeof content === 'object' && 'copyOf' in content ? 'r+' : 'wx');
    try {
      if (typeof content === 'string' || content instanceof Uint8Array) await handle.writeFile(content);
      await handle.sync();
    } finally {
      await handle.close();
    }
  },
  async settle(folder) {
    // Windows opens no folder; there the system keeps renames in order by itself (NTFS journals its metadata; from memory).
    if (process.platform === 'win32') return;
    const handle = await open(folder, 'r');
    try {
      await handle.sync().catch(unlessNoFolders);
    } finally {
      await handle.close();
    }
  },
  rename,
  remove: unlink,
  removeFolder: rmdir,
};

/** Disks of a network sync files and no folders, and say so in these ways. Common practice, no source. */
function unlessNoFolders(error: unknown): void {
  if (!['EINVAL', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS'].includes(systemCode(error) ?? '')) throw error;
}

/** Code of an error of the system; undefined for any other. */
export function systemCode(error: unknown): string | undefined {
  return error instanceof Error && 'syscall' in error && 'code' in error ? String(error.code) : undefined;
}

/** For `catch`: nothing is there. Throws any other error. */
export function undefinedIfMissing(error: unknown): undefined {
  if (!['ENOENT', 'ENOTDIR'].includes(systemCode(error) ?? '')) throw error;
}

/** Makes a folder, and those that it lies in. One level at a time, since else a disk that is read-only is reported as a missing folder. */
export async function ensureFolder(folder: string, disk: Effects): Promise<void> {
  if (await disk.look(folder)) return;
  try {
    await disk.makeFolder(folder);
  } catch (error) {
    if (systemCode(error) === 'EEXIST') return;
    if (systemCode(error) !== 'ENOENT') throw error;
    await ensureFolder(dirname(folder), disk);
    await ensureFolder(folder, disk);
  }
}

/** Does something for many things, some at a time: a disk that must settle each file by itself takes minutes for a book. */
export async function forEach<T>(things: readonly T[], act: (thing: T) => Promise<void>): Promise<void> {
  const rest = things.values();
  const worker = async (): Promise<void> => {
    for (const thing of rest) await act(thing);
  };
  const ended = await Promise.allSettled(Array.from({ length: Math.min(AT_ONCE, things.length) }, worker));
  for (const end of ended) if (end.status === 'rejected') throw end.reason;
}

/** 400 files settle in 0.2 s at 16 at a time, in 4 s one by one (ext4 on an SSD, measured). */
const AT_ONCE = 16;
