import { existsSync } from 'node:fs';
import { readdir, readFile } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import type { Metafile } from 'esbuild';
import { required } from '../values/required.ts';

/** Files of a package that say under which terms it may be passed on. */
const TERMS = /^(?:licen[cs]e|copying|notice|ofl)(?![a-z])/i;

const RULE = '-'.repeat(80);

/**
 * Folders of the packages of others that have gone into a bundle, as esbuild says, by their names.
 *
 * @param root the folder from which esbuild has named its inputs
 */
export function bundledPackages({ outputs }: Pick<Metafile, 'outputs'>, root: string): ReadonlyMap<string, string> {
  const inputs = Object.values(outputs).flatMap((output) => Object.keys(output.inputs));
  return new Map(
    inputs.sort().flatMap((path): [string, string][] => {
      const [, folder, name] = /^(.*\bnode_modules\/((?:@[^/]+\/)?[^/]+))\//.exec(path) ?? [];
      return folder === undefined || name === undefined ? [] : [[name, resolve(root, folder)]];
    }),
  );
}

/** Folder of a package that the program in `root` has installed, in it or above it. */
export function packageFolder(name: string, root: string): string {
  const folder = join(root, 'node_modules', name);
  if (existsSync(folder)) return folder;
  if (dirname(root) === root) throw new Error(`the package ${name} is not installed`);
  return packageFolder(name, dirname(root));
}

/**
 * What the licences of packages ask to be passed on with copies of them: name, version, licence and its whole text of each.
 *
 * Throws: Error that names a package without such a text.
 *
 * @param packages folders by name
 */
export async function noticesText(packages: ReadonlyMap<string, string>): Promise<string> {
  const names = [...packages.keys()].sort();
  const notices = await Promise.all(names.map((name) => noticeOf(name, required(packages, name))));
  return [
    'Fonts and programs of others that come with the pages of this book, and the notices that their licences ask for.\n',
    ...notices,
  ].join(`\n${RULE}\n\n`);
}

async function noticeOf(name: string, folder: string): Promise<string> {
  const { version, license } = JSON.parse(await readFile(join(folder, 'package.json'), 'utf8')) as {
    readonly version: string;
    readonly license: string;
  };
  const texts = await termsOf(folder);
  if (texts.length === 0) {
    throw new Error(
      `${name} has no text of its licence, and its copies may not be passed on without: use another package`,
    );
  }
  return [`${name} ${version} (${license})`, ...texts].join('\n\n').concat('\n');
}

/** Texts of the terms in a folder of a package; some have a folder of them. */
async function termsOf(folder: string): Promise<readonly string[]> {
  const entries = await readdir(folder, { withFileTypes: true });
  const found = entries.filter(({ name }) => TERMS.test(name)).sort((one, other) => (one.name < other.name ? -1 : 1));
  const texts = await Promise.all(
    found.map(async (entry) => {
      const path = join(folder, entry.name);
      return entry.isDirectory() ? termsOf(path) : [(await readFile(path, 'utf8')).replaceAll('\r\n', '\n').trim()];
    }),
  );
  return texts.flat();
}
