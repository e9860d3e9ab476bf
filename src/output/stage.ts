import { join } from 'node:path';
import { type Effects, ensureFolder, forEach } from './effects.ts';
import { MARKER, type Mark, markText } from './mark.ts';
import { foldersOf } from './place.ts';
import type { SiteFile } from './site-file.ts';

/** Writes a whole site into an empty folder. When it resolves, all of it has reached the disk; its mark comes last. */
export async function stageSite(
  folder: string,
  files: readonly SiteFile[],
  label: string,
  disk: Effects,
): Promise<void> {
  const mark: Mark = { label, files: files.map(({ path }) => path) };
  const folders = [...new Set(mark.files.flatMap(foldersOf))].sort();
  for (const path of folders) await ensureFolder(join(folder, path), disk);
  await forEach(files, ({ path, content }) => disk.make(join(folder, path), content));
  await forEach(folders, (path) => disk.settle(join(folder, path)));
  await disk.make(join(folder, MARKER), markText(mark));
  await disk.settle(folder);
}
