/**
 * Runs the examples in the docstrings of src: what stands before `//` must give what stands behind it.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { Bench } from '../src/cup/bench.ts';
import { plasticConstants } from '../src/optics/plastic.ts';
import { constantSpectrum } from '../src/optics/spectrum.ts';
import { SCHEMAS } from '../src/recipe/schema.ts';
import { UNITS } from '../src/units/unit.ts';
import { filesBelow } from './folder-tree.ts';
import { expectClose } from './optics/close.ts';
import { ROOT } from './run-cupbook.ts';

const SOURCE = join(ROOT, 'src');

interface Example {
  readonly file: string;
  readonly call: string;
  /** What it must give, as an expression. */
  readonly result: string;
  /** Digits or decimals that it must agree in; all, where that is not said. */
  readonly precision?: { readonly count: number; readonly of: string };
}

/** An example goes on until an empty line, the next tag or the end of the comment. */
const EXAMPLE = /^ *\* @example(?: |\n *\* )(.*(?:\n *\*(?!\/| *@| *$).*)*)/gm;
/** The result, and what may stand behind it: how precise it is, and a remark. */
const RESULT = /^(.+?)(?:, to (\d+) (digits|decimals))?(?:: [^'"{}[\]]+)?$/;

function examplesIn(file: string): readonly Example[] {
  return [...readFileSync(join(SOURCE, file), 'utf8').matchAll(EXAMPLE)].map(([, lines = '']) => {
    const text = lines.replace(/\n *\* ?/g, ' ').trim();
    const at = text.lastIndexOf(' // ');
    const [, result = '', count, of] = RESULT.exec(text.slice(at + 4)) ?? [];
    if (at < 0 || result === '') throw new Error(`${file}: this example says no result: ${text}`);
    const example = { file, call: text.slice(0, at), result };
    return count === undefined || of === undefined ? example : { ...example, precision: { count: Number(count), of } };
  });
}

const examples = filesBelow(SOURCE)
  .filter((file) => file.endsWith('.ts') && !file.endsWith('.d.ts'))
  .flatMap(examplesIn);

const FILES = [...new Set(examples.map(({ file }) => file))];
const modules = new Map<string, object>(
  await Promise.all(FILES.map(async (file) => [file, await import(/* @vite-ignore */ join(SOURCE, file))] as const)),
);

const body = { absorption: constantSpectrum(0.1), scattering: constantSpectrum(0.2) };
const bench: Bench = {
  drops: true,
  spoons: [
    { ml: UNITS.tsp.size / 4, name: '1/4 tsp' },
    { ml: UNITS.tsp.size / 16, name: '1 pinch' },
  ],
  scaleGrams: 0.01,
  dropSpread: 0.05,
  spoonSpread: 0.1,
};

/** Names that examples use without saying where they come from. */
const fixtures = {
  clear: plasticConstants('clear'),
  peat: body,
  back: body,
  belly: body,
  shell: body,
  core: body,
  bench,
  forms: { volume: (ml: number) => `${ml.toFixed(0)} ml`, mass: (grams: number) => `${grams.toFixed(1)} g` },
  writer: { machine: '1f0c9a2b', pid: 4711, start: 'k3x9', count: 0 },
  SCHEMAS,
  UNITS,
};

/** Runs an expression with every export of the files with examples in scope, those of its own file first. */
function run(file: string, expression: string): unknown {
  const scope: Record<string, unknown> = Object.assign({}, ...modules.values(), fixtures, modules.get(file));
  return new Function(...Object.keys(scope), `return (${expression});`)(...Object.values(scope));
}

/** Half of the last digit that a result states. */
function tolerance(expected: number, precision: Example['precision']): number {
  if (precision === undefined) return 1e-12 * Math.max(1, Math.abs(expected));
  const last = precision.of === 'decimals' ? 0 : Math.floor(Math.log10(Math.abs(expected))) + 1;
  return 0.5 * 10 ** (last - precision.count) + 1e-12;
}

function expectAlike(found: unknown, stated: unknown, precision: Example['precision'], what: string): void {
  if (typeof stated === 'number') expectClose(found as number, stated, tolerance(stated, precision), what);
  else if (typeof stated !== 'object' || stated === null) expect(found, what).toBe(stated);
  else {
    expect(Object.keys(found as object).sort(), what).toEqual(Object.keys(stated).sort());
    for (const [key, value] of Object.entries(stated))
      expectAlike((found as Record<string, unknown>)[key], value, precision, `${what}.${key}`);
  }
}

test('there are examples to run', () => {
  expect(examples.length).toBeGreaterThanOrEqual(100);
});

test.each(examples.map((example) => [`${example.file}: ${example.call}`, example] as const))(
  '%s',
  (_, { file, call, result, precision }) => {
    expectAlike(run(file, call), run(file, result), precision, call);
  },
);
