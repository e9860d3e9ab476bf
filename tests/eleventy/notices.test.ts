import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { bundledAssets } from '../../src/eleventy/assets.ts';
import { bundledPackages, noticesText, packageFolder } from '../../src/eleventy/notices.ts';
import { ROOT } from '../run-cupbook.ts';
import { temporaryFolder, writeFiles } from '../small-book.ts';

const notices = async (): Promise<string> => {
  const { files } = await bundledAssets(ROOT);
  return String(files.find(({ path }) => path === 'notices.txt')?.content);
};
const headings = (text: string): readonly string[] =>
  [...text.matchAll(/^-{80}\n\n(\S+) \S+ \(.*\)$/gm)].map(([, name]) => name!);

test('a site carries the notices of its fonts, of what is bundled and of the search, and of nothing else', async () => {
  const text = await notices();
  expect(headings(text)).toEqual([
    '@fontsource-variable/atkinson-hyperlegible-next',
    '@fontsource-variable/besley',
    'culori',
    'fastest-levenshtein',
    'js-aruco2',
    'pagefind',
  ]);
  expect(text.match(/SIL OPEN FONT LICENSE Version 1\.1/g)?.length).toBe(2);
  expect(text).toMatch(/Copyright 2020 The Besley Project Authors/);
  expect(text.match(/Permission is hereby granted, free of charge/g)!.length).toBeGreaterThanOrEqual(3);
});

test('a notice names the version that is installed', async () => {
  const { packages } = JSON.parse(readFileSync(join(ROOT, 'package-lock.json'), 'utf8')) as {
    readonly packages: Readonly<Record<string, { readonly version?: string }>>;
  };
  const text = await notices();
  for (const name of headings(text)) expect(text).toContain(`${name} ${packages[`node_modules/${name}`]?.version} (`);
});

test('bundledPackages(metafile) names whatever was bundled, from wherever it was installed', () => {
  const input = { bytesInOutput: 1 };
  const output = (...paths: readonly string[]): object => ({
    inputs: Object.fromEntries(paths.map((path) => [path, input])),
  });
  const outputs = {
    'a.js': output('src/browser/a.ts', 'node_modules/one/index.js', '../node_modules/@two/parts/lib/x.js'),
    'a.css': output('node_modules/one/node_modules/three/three.css', 'site/node_modules.css'),
  };
  const found = bundledPackages({ outputs } as unknown as Parameters<typeof bundledPackages>[0], '/x/book');
  expect([...found]).toEqual([
    ['@two/parts', '/x/node_modules/@two/parts'],
    ['one', '/x/book/node_modules/one'],
    ['three', '/x/book/node_modules/one/node_modules/three'],
  ]);
});

test('noticesText(packages) refuses one that has no text of its licence', async () => {
  const folder = temporaryFolder();
  await writeFiles(folder, {
    'bare/package.json': '{"name":"bare","version":"1.0.0","license":"MIT"}',
    'bare/licenses.js': '',
    'node_modules/full/package.json': '{"name":"full","version":"2.0.0","license":"ISC"}',
    'node_modules/full/LICENCE.txt': 'May be passed on.\r\n',
    'node_modules/full/NOTICE/a': 'unread',
    'node_modules/full/NOTICE/NOTICE-b': 'By somebody.',
  });
  await expect(noticesText(new Map([['bare', join(folder, 'bare')]]))).rejects.toThrow(
    /bare has no text of its licence/,
  );
  const full = packageFolder('full', join(folder, 'book/deep'));
  expect(await noticesText(new Map([['full', full]]))).toContain(
    'full 2.0.0 (ISC)\n\nMay be passed on.\n\nBy somebody.\n',
  );
  expect(() => packageFolder('none-such', folder)).toThrow('none-such is not installed');
});
