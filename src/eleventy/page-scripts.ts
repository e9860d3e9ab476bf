/**
 * The scripts of the pages, with what several of them need in files of their own: a browser loads and keeps each part once.
 *
 * A page that is opened from a disk may load classic scripts alone, no modules. So each part is made a classic script, which keeps what it exports
 * in one global object, by its name, and finds there what it imports.
 *
 * @packageDocumentation
 */
import { basename, relative, resolve } from 'node:path';
import { type BuildOptions, build, type Metafile, transform } from 'esbuild';
import type { SiteFile } from '../output/site-file.ts';
import { required } from '../values/required.ts';

/** Scripts as they are loaded. */
export interface PageScripts {
  /** For each entry all files that it needs, in the order in which they must run, itself last. */
  readonly needed: Readonly<Record<string, readonly string[]>>;
  readonly files: readonly SiteFile[];
  readonly metafile: Metafile;
}

/** Less than this, in bytes, is no file of its own: it goes with what all scripts share. */
const LEAST_FILE = 5000;

/** Where the parts of a page's scripts keep what they export. */
const KEPT_AS = 'cupbookParts';

/**
 * Bundles scripts that share code.
 *
 * @param entries paths from the project's folder
 * @param options of all bundles of the site: its folder, targets and plugins
 */
export async function pageScripts(entries: readonly string[], options: BuildOptions): Promise<PageScripts> {
  const { absWorkingDir: root = '' } = options;
  const { metafile, outputFiles } = await build({
    ...options,
    entryPoints: [...entries],
    chunkNames: 'shared-[hash]',
    format: 'esm',
    splitting: true,
    write: false,
    metafile: true,
  });
  const { outputs } = metafile;
  const parts = inOrder(outputs);
  const texts = new Map(
    outputFiles.map(({ path, text }) => [relative(resolve(root), path).replaceAll('\\', '/'), text] as const),
  );
  const file = filesOf(parts, outputs);
  const needed = (part: string): readonly string[] => {
    const all = reachedFrom(part, outputs);
    return [...new Set(parts.filter((each) => all.has(each)).map((each) => required(file, each)))];
  };
  const classic = new Map<string, string>();
  for (const part of parts) {
    const name = required(file, part);
    const first = classic.get(name) ?? (outputs[part]?.entryPoint === undefined ? '' : loadsInWorker(needed(part)));
    classic.set(name, `${first}${await asClassic(part, required(texts, part), options)}`);
  }
  return {
    needed: Object.fromEntries(
      parts.flatMap((part) => {
        const { entryPoint } = outputs[part]!;
        return entryPoint === undefined ? [] : [[entryPoint, needed(part)] as const];
      }),
    ),
    files: [...classic].map(([path, text]) => ({ path, content: new TextEncoder().encode(text) })),
    metafile,
  };
}

type Outputs = Metafile['outputs'];

const importsOf = (part: string, outputs: Outputs): readonly string[] =>
  outputs[part]!.imports.flatMap(({ path, external }) => (external ? [] : [path]));

/** All parts, each after those that it imports. */
function inOrder(outputs: Outputs): readonly string[] {
  const order = new Set<string>();
  const visit = (part: string): void => {
    for (const imported of importsOf(part, outputs)) if (!order.has(imported)) visit(imported);
    order.add(part);
  };
  for (const part of Object.keys(outputs).sort()) visit(part);
  return [...order];
}

function reachedFrom(part: string, outputs: Outputs, reached = new Set<string>()): ReadonlySet<string> {
  reached.add(part);
  for (const imported of importsOf(part, outputs)) if (!reached.has(imported)) reachedFrom(imported, outputs, reached);
  return reached;
}

/** In which file each part stands: what all entries reach in one, with what is small and needs no more than that. */
function filesOf(parts: readonly string[], outputs: Outputs): ReadonlyMap<string, string> {
  const entries = parts.filter((part) => outputs[part]!.entryPoint !== undefined);
  const isCommon = (part: string): boolean => entries.every((entry) => reachedFrom(entry, outputs).has(part));
  const common = parts.filter((part) => isCommon(part));
  const largest = common.toSorted((one, other) => outputs[other]!.bytes - outputs[one]!.bytes)[0];
  const together = new Set(common);
  for (const part of parts) {
    const { entryPoint, bytes } = outputs[part]!;
    const isSmall = entryPoint === undefined && bytes < LEAST_FILE;
    if (isSmall && importsOf(part, outputs).every((imported) => together.has(imported))) together.add(part);
  }
  return new Map(parts.map((part) => [part, largest !== undefined && together.has(part) ? largest : part]));
}

/** A module as a piece of a classic script. */
async function asClassic(part: string, text: string, { target, minify }: BuildOptions): Promise<string> {
  const { code } = await transform(text, { format: 'cjs', ...(target && { target }), minify: minify ?? false });
  return `(()=>{const kept=globalThis.${KEPT_AS}??={},module={exports:{}},require=(name)=>kept[name.slice(2)];${code}kept[${JSON.stringify(basename(part))}]=module.exports})();\n`;
}

/** A worker has no page that loads what it needs before it. */
function loadsInWorker(needed: readonly string[]): string {
  const before = needed.slice(0, -1).map((path) => basename(path));
  return before.length === 0
    ? ''
    : `if(typeof document==='undefined')importScripts(${before.map((name) => JSON.stringify(name)).join()});\n`;
}
