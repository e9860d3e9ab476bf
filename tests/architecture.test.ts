import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, posix } from 'node:path';
import { expect, test } from 'vitest';
import { filesBelow } from './folder-tree.ts';
import { ROOT } from './run-cupbook.ts';

interface Folder {
  readonly name: string;
  readonly purpose: string;
  /** Folders that it may import besides itself, in the order of the table. */
  readonly imports: readonly string[];
  /** Whether it may touch files, clocks, networks and screens. */
  readonly shell?: boolean;
}

/** The folders of `src/`. Every one may only import what stands above it; DEVELOPERS.md shows the same table. */
const FOLDERS: readonly Folder[] = [
  {
    name: 'values',
    purpose: 'what holds for plain values: looked up for certain, left out where undefined',
    imports: [],
  },
  { name: 'diagnostics', purpose: 'the Diagnostic value, its codes, its text form; the Refusal', imports: [] },
  {
    name: 'kinds',
    purpose: 'what the files of a book are: all of a kind but its fields',
    imports: [],
  },
  { name: 'units', purpose: 'parse, convert, scale and round quantities', imports: [] },
  { name: 'tables', purpose: 'observer, illuminants and other reference data, each with its source', imports: [] },
  {
    name: 'patterns',
    purpose: 'how cups lie in a bait and get there: all of a pattern and of a method, and the cup at a place',
    imports: [],
  },
  {
    name: 'shapes',
    purpose: 'what a bait is in space: drawings of shapes, and what each pixel of a side view holds',
    imports: ['values'],
  },
  { name: 'lineage', purpose: 'the graph of derived recipes: cycles, order, coordinates', imports: ['values'] },
  { name: 'optics', purpose: 'spectra, K and S of mixtures, R, tristimulus, Lab, deltaE00', imports: ['tables'] },
  {
    name: 'picture',
    purpose: "a bait's picture from plain values: colour of the plastic, flake, light; typed arrays alone",
    imports: ['values', 'tables', 'patterns', 'shapes', 'optics'],
  },
  {
    name: 'measuring-card',
    purpose: 'the card that is photographed under a bait: what lies where on it, in mm',
    imports: ['values'],
  },
  {
    name: 'learning',
    purpose: 'all looks in, one learned shelf out, and what is believed of any cup',
    imports: ['values', 'tables', 'optics'],
  },
  {
    name: 'photo',
    purpose: 'pixels in, colours out; no file access',
    imports: ['values', 'tables', 'optics', 'measuring-card'],
  },
  {
    name: 'recipe',
    purpose: 'one Markdown text with front matter in, one thing of the book or diagnostics out',
    imports: ['values', 'diagnostics', 'kinds', 'units', 'tables', 'patterns', 'shapes'],
  },
  {
    name: 'cup',
    purpose: 'the cup ledger, batches, measurable amounts, repeatability, cost',
    imports: ['values', 'units'],
  },
  {
    name: 'matching',
    purpose: 'first recipe, next addition, substitutes, ranked by deltaE00',
    imports: ['values', 'kinds', 'units', 'tables', 'optics', 'learning', 'cup'],
  },
  {
    name: 'book',
    purpose: 'joins the things of a book: references, ledger, prediction, lineage (`compileBook`)',
    imports: [
      'values',
      'diagnostics',
      'kinds',
      'units',
      'tables',
      'patterns',
      'shapes',
      'lineage',
      'optics',
      'picture',
      'measuring-card',
      'learning',
      'recipe',
      'cup',
      'matching',
    ],
  },
  {
    name: 'words',
    purpose: 'what is decided and measured, as sentences in the units of the book',
    imports: [
      'values',
      'units',
      'tables',
      'optics',
      'measuring-card',
      'learning',
      'patterns',
      'photo',
      'cup',
      'matching',
      'book',
    ],
  },
  {
    name: 'render',
    purpose: 'values in, HTML and SVG strings out (page, swatch, lineage drawing, card)',
    imports: [
      'values',
      'kinds',
      'units',
      'tables',
      'measuring-card',
      'learning',
      'patterns',
      'shapes',
      'lineage',
      'book',
      'words',
    ],
  },
  {
    name: 'browser',
    purpose: 'shell: scripts shipped with the page',
    imports: [
      'values',
      'kinds',
      'units',
      'tables',
      'patterns',
      'optics',
      'learning',
      'photo',
      'recipe',
      'cup',
      'matching',
      'book',
      'words',
      'render',
    ],
    shell: true,
  },
  {
    name: 'output',
    purpose: 'shell: writes the files of a site into a folder; knows nothing of books',
    imports: ['values', 'diagnostics'],
    shell: true,
  },
  {
    name: 'shell',
    purpose: 'shell: reads the files of a book and compiles it, tells what was found, and has pictures drawn',
    imports: ['values', 'diagnostics', 'shapes', 'picture', 'photo', 'recipe', 'book', 'render', 'output'],
    shell: true,
  },
  {
    name: 'eleventy',
    purpose: 'shell: the plugin; renders the pages of an edition, fails the build',
    imports: ['values', 'diagnostics', 'lineage', 'book', 'render', 'output', 'shell'],
    shell: true,
  },
  {
    name: 'server',
    purpose: 'shell: shows folders of a site to a browser; HTTP only, knows nothing of books',
    imports: ['values', 'diagnostics'],
    shell: true,
  },
  {
    name: 'cli',
    purpose: 'shell: commands, exit codes and printing only',
    imports: [
      'values',
      'diagnostics',
      'kinds',
      'units',
      'measuring-card',
      'photo',
      'recipe',
      'matching',
      'book',
      'words',
      'output',
      'shell',
      'eleventy',
      'server',
    ],
    shell: true,
  },
];

const SOURCE = join(ROOT, 'src');
const files = filesBelow(SOURCE).filter((path) => /\.(?:ts|mjs)$/.test(path));
const textOf = (path: string): string => readFileSync(join(SOURCE, path), 'utf8');
const folderOf = (path: string): string => path.split('/')[0]!;
const filesOf = (folder: string): readonly string[] => files.filter((path) => folderOf(path) === folder);

/** What a file imports, as it is written: from import and export lines, and from `import()` of a fixed name. */
function importsOf(path: string): readonly string[] {
  const lines = textOf(path).matchAll(
    /^\s*(?:import|export)\b[^'";]*?from\s*'([^']+)'|^\s*import\s*'([^']+)'|\bimport\(\s*'([^']+)'\s*\)/gm,
  );
  return [...lines].map(([, from, bare, dynamic]) => from ?? bare ?? dynamic ?? '');
}

test('the test sees imports of every form', () => {
  expect(importsOf('cli/main.ts')).toContain('./build.ts');
  expect(importsOf('cli/main.ts')).toContain('node:path');
  expect(importsOf('cli/cupbook.mjs')).toContain('./bundle.mjs');
  expect(files.length).toBeGreaterThan(50);
});

test('every folder of src/ stands in the table, and no other', () => {
  const there = readdirSync(SOURCE, { withFileTypes: true }).flatMap((entry) =>
    entry.isDirectory() ? entry.name : [],
  );
  const known = FOLDERS.map(({ name }) => name);
  expect(there.filter((name) => !known.includes(name))).toEqual([]);
  expect(new Set(known).size).toBe(known.length);
});

test('no arrow of the table points down', () => {
  const order = FOLDERS.map(({ name }) => name);
  for (const [index, { name, imports }] of FOLDERS.entries()) {
    const below = imports.filter((other) => !order.slice(0, index).includes(other));
    expect(below, `${name}/ may only import folders that stand above it`).toEqual([]);
  }
});

test.each(FOLDERS)('src/$name/ imports only what the table allows', ({ name, imports }) => {
  const wrong = filesOf(name).flatMap((path) =>
    importsOf(path)
      .filter((target) => target.startsWith('.'))
      .map((target) => posix.join(posix.dirname(path), target))
      .filter((target) => ![name, ...imports].includes(folderOf(target)))
      .map((target) => `${path} imports ${target}`),
  );
  expect(wrong).toEqual([]);
});

/** What a file does to the world outside: modules of Node, and calls that are not the same every time. */
function effectsOf(path: string): readonly string[] {
  const modules = importsOf(path).filter((target) => target.startsWith('node:'));
  const code = textOf(path)
    .replace(/\/\*[\s\S]*?\*\//g, '')
    .replace(/(^|\s)\/\/.*$/gm, '');
  const calls =
    /\b(?:console\.\w+|Math\.random|Date\.now|new Date\(\)|performance\.now|fetch\(|process\.\w+|setTimeout\()/g;
  return [...modules, ...(code.match(calls) ?? [])];
}

test('the test sees what a shell does to the world outside', () => {
  expect(effectsOf('cli/main.ts')).toEqual(expect.arrayContaining(['node:path', 'console.error', 'process.chdir']));
});

test.each(FOLDERS.filter(({ shell }) => !shell))(
  'src/$name/ touches no file, clock, chance, network or screen',
  ({ name }) => {
    const wrong = filesOf(name).flatMap((path) => effectsOf(path).map((effect) => `${path}: ${effect}`));
    expect(wrong).toEqual([]);
  },
);

test('DEVELOPERS.md shows this table', () => {
  const table = [
    '| folder | purpose in one line | may import (besides itself) |',
    '| --- | --- | --- |',
    ...FOLDERS.map(
      ({ name, purpose, imports }) => `| \`${name}/\` | ${purpose} | ${imports.join(', ') || 'nothing'} |`,
    ),
  ].join('\n');
  const path = join(ROOT, 'DEVELOPERS.md');
  const shown = existsSync(path) ? readFileSync(path, 'utf8') : '';
  const found = shown.split('\n\n').find((part) => part.startsWith('| folder |'));
  expect(found?.trim(), `write this table there:\n${table}\n`).toBe(table);
});

/** Files that lead to themselves by their imports, of types too: each ring once, as a path. */
function ringsOf(graph: ReadonlyMap<string, readonly string[]>): readonly string[] {
  const rings: string[] = [];
  const settled = new Set<string>();
  const visit = (file: string, above: readonly string[]): void => {
    if (above.includes(file)) rings.push([...above.slice(above.indexOf(file)), file].join(' → '));
    if (settled.has(file) || above.includes(file)) return;
    for (const next of graph.get(file) ?? []) visit(next, [...above, file]);
    settled.add(file);
  };
  for (const file of graph.keys()) visit(file, []);
  return rings;
}

test('no file imports itself by way of others, not even a type', () => {
  expect(
    ringsOf(
      new Map([
        ['a', ['b']],
        ['b', ['c']],
        ['c', ['b']],
      ]),
    ),
  ).toEqual(['b → c → b']);
  const graph = new Map(
    files.map((path) => [
      path,
      importsOf(path).flatMap((target) => (target.startsWith('.') ? [posix.join(posix.dirname(path), target)] : [])),
    ]),
  );
  expect(ringsOf(graph)).toEqual([]);
});
