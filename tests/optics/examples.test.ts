/**
 * Runs the examples in the docstrings of src/optics: what stands before `//` must give what stands behind it.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { plasticConstants } from '../../src/optics/plastic.ts';
import { constantSpectrum } from '../../src/optics/spectrum.ts';
import { expectClose } from './close.ts';

const FOLDER = join(import.meta.dirname, '../../src/optics');
const FILES = readdirSync(FOLDER).filter((file) => file.endsWith('.ts'));
const modules: object[] = await Promise.all(FILES.map((file) => import(/* @vite-ignore */ join(FOLDER, file))));

const body = { absorption: constantSpectrum(0.1), scattering: constantSpectrum(0.2) };

/** Names that examples use without saying where they come from. */
const fixtures: Record<string, unknown> = {
  clear: plasticConstants('clear'),
  peat: body,
  back: body,
  belly: body,
  shell: body,
  core: body,
};

const scope: Record<string, unknown> = Object.assign({}, ...modules, fixtures);

interface Example {
  readonly file: string;
  readonly call: string;
  readonly result: string;
}

const examples: Example[] = FILES.flatMap((file) => {
  const text = readFileSync(join(FOLDER, file), 'utf8')
    .replace(/\n \* (?=\/\/)/g, ' ')
    .replace(/@example\n \* /g, '@example ');
  return [...text.matchAll(/@example (.+?) \/\/ (.+)$/gm)].map(([, call, result]) => ({
    file,
    call: call!,
    result: result!,
  }));
});

/** Runs an expression with every export of src/optics in scope. */
function run(expression: string): unknown {
  return new Function(...Object.keys(scope), `return (${expression});`)(...Object.values(scope));
}

/** The tolerance that a result states: half of the last digit. */
function tolerance(result: string, expected: number): number {
  const decimals = /to (\d+) decimals/.exec(result);
  if (decimals) return 0.5 * 10 ** -Number(decimals[1]) + 1e-12;
  const digits = /to (\d+) digits/.exec(result);
  if (digits) return 0.5 * 10 ** (Math.floor(Math.log10(Math.abs(expected))) + 1 - Number(digits[1])) + 1e-12;
  return 1e-12;
}

test('there are examples to run', () => {
  expect(examples.length).toBeGreaterThanOrEqual(35);
});

test.each(examples.map((example) => [`${example.file}: ${example.call}`, example] as const))(
  '%s',
  (_, { call, result }) => {
    const number = /^-?\d+(\.\d+)?(e-?\d+)?(?=$|[,: ])/.exec(result);
    if (number) {
      const expected = Number(number[0]);
      expectClose(run(call) as number, expected, tolerance(result, expected));
      return;
    }
    const found = run(call);
    const stated = run(`(${result.replace(/, to \d+ (digits|decimals).*$/, '')})`);
    if (typeof stated === 'object' && stated !== null) {
      for (const [key, value] of Object.entries(stated)) {
        const actual = (found as Record<string, unknown>)[key];
        if (typeof value === 'number')
          expectClose(actual as number, value, Math.max(1e-9, tolerance(result, value)), key);
        else expect(actual, key).toBe(value);
      }
    } else if (typeof stated === 'number') expectClose(found as number, stated, 1e-12);
    else expect(found).toBe(stated);
  },
);
