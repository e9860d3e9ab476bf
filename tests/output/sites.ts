import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { MARKER } from '../../src/output/mark.ts';
import type { SiteFile } from '../../src/output/site-file.ts';
import type { Output } from '../../src/output/write-site.ts';
import { filesBelow } from '../folder-tree.ts';

/** A site by its texts. */
export type Texts = Readonly<Record<string, string>>;

/** A site as its files. */
export const filesOf = (texts: Texts): readonly SiteFile[] =>
  Object.entries(texts).map(([path, content]) => ({ path, content }));

/** Where a site goes in tests: the sources lie elsewhere. */
export const outputAt = (folder: string, more: Partial<Output> = {}): Output => ({
  folder,
  sources: '/nowhere/book',
  label: 'shared',
  called: { shared: 'the shared one', mine: 'your own' },
  ...more,
});

/** All texts below a folder but the mark; empty where there is none. */
export function textsBelow(folder: string): Texts {
  if (!existsSync(folder)) return {};
  return Object.fromEntries(
    filesBelow(folder)
      .filter((path) => path !== MARKER)
      .map((path) => [path, readFileSync(join(folder, path), 'utf8')]),
  );
}

/** Names below a folder that writers only use for a while. */
export const passingBelow = (folder: string): readonly string[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) => name.includes('.cupbook-'));
