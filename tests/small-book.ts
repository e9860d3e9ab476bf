import { mkdtempSync, rmSync } from 'node:fs';
import { mkdir, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { onTestFinished } from 'vitest';

/** A book of one colour, by its files. */
export const SMALL_BOOK: Readonly<Record<string, string>> = {
  'book.md': '---\ntitle: A Small Book\n---\nOurs.\n',
  'shelf/plastics/supple.md': '---\ntitle: Supple\nhardness: soft\n---\n',
  'shelf/colorants/peat.md':
    '---\ntitle: Peat\nlook: { kind: dye, colour: "#6b4a2b", dose: 10 drops per 100 ml, thickness: 3 mm }\n---\n',
  'molds/minnow-3.md': '---\ntitle: Minnow\ncavities: 2\ncavity: 6 ml\nbody: 9 mm\nthin: 2 mm\n---\n',
  'colours/bog-pool.md':
    '---\ntitle: Bog Pool\npattern: solid\nmold: minnow-3\ncups:\n  body:\n    plastic: 100 ml supple\n    add:\n      peat: 12 drops\n---\nDark.\n',
};

/** An empty folder that is gone after the test. */
export function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'cupbook-test-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** Writes texts into a folder, by their paths. */
export async function writeFiles(folder: string, files: Readonly<Record<string, string>>): Promise<void> {
  for (const [path, text] of Object.entries(files)) {
    await mkdir(dirname(join(folder, path)), { recursive: true });
    await writeFile(join(folder, path), text);
  }
}

/** The small book, with other files besides, in a folder that is gone after the test. */
export async function smallBook(files: Readonly<Record<string, string>> = {}): Promise<string> {
  const folder = temporaryFolder();
  await writeFiles(folder, { ...SMALL_BOOK, ...files });
  return folder;
}
