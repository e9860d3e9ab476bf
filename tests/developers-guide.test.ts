import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { filesBelow } from './folder-tree.ts';
import { ROOT } from './run-cupbook.ts';

const guide = readFileSync(join(ROOT, 'DEVELOPERS.md'), 'utf8');
const quoted = [...new Set([...guide.matchAll(/`([^`\n]+)`/g)].map(([, words]) => words!))];
const sources = filesBelow(join(ROOT, 'src')).map((path) => `src/${path}`);
const isPath = (words: string): boolean => /^[\w./-]+(?:\/|\.(?:ts|md|mjs|json))$/.test(words);

test('DEVELOPERS.md names files and folders that are there', () => {
  const gone = quoted.filter(
    (words) =>
      isPath(words) &&
      !existsSync(join(ROOT, words)) &&
      !existsSync(join(ROOT, 'src', words)) &&
      !sources.some((path) => path.endsWith(`/${words}`)),
  );
  expect(quoted.filter(isPath).length).toBeGreaterThan(40);
  expect(gone).toEqual([]);
});

test('DEVELOPERS.md names functions and types that the program has', () => {
  const names = quoted.flatMap((words) => /^[A-Za-z]*[a-z][A-Z]\w*|^[A-Z][a-z]+\b(?=$|\.)/.exec(words) ?? []);
  const program = sources.map((path) => readFileSync(join(ROOT, path), 'utf8')).join('\n');
  expect(names.length).toBeGreaterThan(12);
  expect(names.filter((name) => !new RegExp(`\\b${name}\\b`).test(program))).toEqual([]);
});

test('DEVELOPERS.md shows the options of compileBook as they are', () => {
  const shown = /options\?: \{ ([^}]+) \}/.exec(guide)![1]!.split(', ');
  const text = readFileSync(join(ROOT, 'src/book/compile-book.ts'), 'utf8');
  const options = /export interface CompileOptions \{([\s\S]*?)\n\}/.exec(text)![1]!;
  expect(shown).toEqual([...options.matchAll(/readonly (\w+\??):/g)].map(([, name]) => name));
});

test('DEVELOPERS.md follows values through files that are there', () => {
  const flow = /```text\na log → [\s\S]*?```/.exec(guide)![0];
  const paths = [...flow.matchAll(/(?<![\w/])[a-z]+(?:\/[a-z][a-z-]*)+\/?|(?<![\w/])[a-z]+\/(?= )/g)].map(
    ([path]) => path,
  );
  expect(paths.length).toBeGreaterThan(20);
  expect(
    paths.filter(
      (path) =>
        !sources.some((file) => file === `src/${path}.ts` || (path.endsWith('/') && file.startsWith(`src/${path}`))),
    ),
  ).toEqual([]);
});

test.each(['book', 'matching'])('DEVELOPERS.md tells what is in every room of %s/', (folder) => {
  const table = new RegExp(`\\| in \`${folder}/\`[\\s\\S]*?\\n\\n`).exec(guide)![0];
  const rooms = new Set(sources.flatMap((path) => new RegExp(`^src/${folder}/([^/]+)/`).exec(path)?.[1] ?? []));
  expect([...rooms].filter((room) => !table.includes(`\`${folder}/${room}/\``))).toEqual([]);
});
