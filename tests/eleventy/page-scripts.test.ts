import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { runInNewContext } from 'node:vm';
import { afterEach, expect, test } from 'vitest';
import { type PageScripts, pageScripts } from '../../src/eleventy/page-scripts.ts';

const folders: string[] = [];
afterEach(async () => {
  for (const folder of folders.splice(0)) await rm(folder, { recursive: true });
});

/** Long enough for a file of its own: text that no minifier shortens. */
const long = (seed: number): string =>
  `[${Array.from({ length: 1500 }, (_, at) => ((at + 1) * seed * 7919) % 99991).join()}]`;

async function scriptsOf(files: Readonly<Record<string, string>>, entries: readonly string[]): Promise<PageScripts> {
  const root = await mkdtemp(join(tmpdir(), 'cupbook-test-'));
  folders.push(root);
  for (const [name, text] of Object.entries(files)) await writeFile(join(root, name), text);
  return pageScripts(entries, {
    absWorkingDir: root,
    outdir: 'assets',
    entryNames: '[name]-[hash]',
    bundle: true,
    minify: true,
    target: ['es2022'],
    logLevel: 'silent',
  });
}

/** Runs what a page loads, in its order, and returns what it has said. */
function run({ files, needed }: PageScripts, entries: readonly string[], inPage = true): readonly unknown[] {
  const said: unknown[] = [];
  const textOf = (path: string): string =>
    new TextDecoder().decode(files.find((file) => file.path === path)!.content as Uint8Array);
  const scope: Record<string, unknown> = { say: (what: unknown) => said.push(what), ...(inPage && { document: {} }) };
  scope.importScripts = (...names: readonly string[]) => {
    for (const name of names) runInNewContextOnce(`assets/${name}`);
  };
  const context = Object.assign(Object.create(null) as object, scope);
  const runInNewContextOnce = (path: string): void => {
    runInNewContext(textOf(path), context);
  };
  const paths = entries.flatMap((entry) => (inPage ? needed[entry]! : needed[entry]!.slice(-1)));
  for (const path of new Set(paths)) runInNewContextOnce(path);
  return said;
}

const FILES = {
  'all.ts': `export const all = (n: number) => 'all ' + n; export const many = ${long(3)};`,
  'two.ts': `import { all } from './all.ts'; export const two = ${long(5)}; export const named = () => all(two.length);`,
  'tiny.ts': `import { all } from './all.ts'; export const tiny = () => all(7);`,
  'a.ts': `import { all } from './all.ts'; import { named } from './two.ts'; import { tiny } from './tiny.ts'; say('a ' + all(1) + named() + tiny());`,
  'b.ts': `import { many } from './all.ts'; import { named } from './two.ts'; say('b ' + many.length + named());`,
  'c.ts': `import { all } from './all.ts'; import { tiny } from './tiny.ts'; say('c ' + all(3) + tiny());`,
};
const ENTRIES = ['a.ts', 'b.ts', 'c.ts'];

test('what scripts share is one file, and each says the same as if it were bundled alone', async () => {
  const scripts = await scriptsOf(FILES, ENTRIES);
  for (const [entry, says] of [
    ['a.ts', 'a all 1all 1500all 7'],
    ['b.ts', 'b 1500all 1500'],
    ['c.ts', 'c all 3all 7'],
  ] as const)
    expect(run(scripts, [entry])).toEqual([says]);
  expect(run(scripts, ENTRIES)).toHaveLength(3);
  const texts = scripts.files.map(({ content }) => new TextDecoder().decode(content as Uint8Array));
  for (const seed of [3, 5]) expect(texts.filter((text) => text.includes(long(seed).slice(1, 60)))).toHaveLength(1);
});

test('what is small is no file of its own', async () => {
  const { needed } = await scriptsOf(FILES, ENTRIES);
  expect(needed['c.ts']).toHaveLength(2);
  expect(needed['a.ts']).toHaveLength(3);
});

test('a worker loads by itself what its script needs', async () => {
  const scripts = await scriptsOf(FILES, ENTRIES);
  expect(run(scripts, ['a.ts'], false)).toEqual(['a all 1all 1500all 7']);
});

test('the same sources make the same files', async () => {
  const [one, other] = [await scriptsOf(FILES, ENTRIES), await scriptsOf(FILES, ENTRIES)];
  expect(one.files).toEqual(other.files);
});
