import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseSync } from 'vite';
import { expect, test } from 'vitest';
import { filesBelow } from './folder-tree.ts';
import { ROOT } from './run-cupbook.ts';

const SOURCE = join(ROOT, 'src');

/** Rooms that decide and say nothing: what they find out is a value, and `src/words/` has the sentences. */
const SILENT = ['cup', 'matching', 'optics', 'book'];

/** Where a mistake in a file is told where it is found: a Diagnostic, or a fault of a measurement that becomes one. */
const FINDINGS = [
  'book/checks/',
  'book/read/',
  'book/films/',
  'book/settings.ts',
  'book/cups/check-heat.ts',
  'book/cups/cup-shelf.ts',
  'book/cups/cup-specs.ts',
  'book/looks/bait-looks.ts',
  'book/match/compile-target.ts',
  'book/recipes/report-no-part.ts',
  'book/shelf/cut-faults.ts',
  'book/shelf/material-heat.ts',
  'book/shelf/shelf-fit.ts',
  'optics/kubelka-munk.ts',
  'optics/fit/film-faults.ts',
];

/** Parts of a Finding, which any file of the book may make. */
const PARTS_OF_A_FINDING = new Set(['found', 'expected', 'why', 'fix', 'note', 'message']);

/** What is thrown at a programmer, and what names the fault of a measurement. */
const FAULT_MAKER = /^(?:\w*Error|require[A-Z]\w*|opticalFault)$/;

/** Units, names and words of a file's fields are no sentences. */
const TERMS = new Set(['fl oz', 'next day', 'warm LED', 'fluorescent tube']);

type Node = { readonly type: string; readonly start: number } & Readonly<Record<string, unknown>>;

function isNode(value: unknown): value is Node {
  return typeof value === 'object' && value !== null && 'type' in value;
}

/** The name of a thing that is called or of a property. */
function nameOf(node: unknown): string {
  return isNode(node) && typeof node.name === 'string' ? node.name : '';
}

/** The text of a string, with `{}` for what is filled in; undefined of anything else. */
function textOf(node: Node): string | undefined {
  if (node.type === 'Literal') return typeof node.value === 'string' ? node.value : undefined;
  if (node.type !== 'TemplateLiteral') return undefined;
  const quasis = node.quasis as readonly { readonly value: { readonly cooked: string } }[];
  return quasis.map(({ value }) => value.cooked).join('{}');
}

/** Whether a text is language: two words of letters side by side, or with something filled in between them. */
function isLanguage(text: string): boolean {
  return !TERMS.has(text) && /[A-Za-z]{2,}[,;:.]? (?:\{\} )*[A-Za-z]{2,}/.test(text);
}

/** The texts of a file that are language, but for findings and what is thrown. */
function sentencesIn(source: string): readonly string[] {
  const found: string[] = [];
  const visit = (value: unknown): void => {
    if (Array.isArray(value)) {
      for (const each of value) visit(each);
      return;
    }
    if (!isNode(value)) return;
    if (value.type.startsWith('TS') || value.type.startsWith('Import')) {
      // Types are no texts; what a cast or a non-null assertion holds may be one.
      visit(value.expression);
      return;
    }
    if (/^(?:New|Call)Expression$/.test(value.type) && FAULT_MAKER.test(nameOf(value.callee))) return;
    if (value.type === 'Property' && PARTS_OF_A_FINDING.has(nameOf(value.key))) return;
    const text = textOf(value);
    if (text !== undefined && isLanguage(text)) found.push(text);
    for (const child of Object.values(value)) visit(child);
  };
  visit(parseSync('a.ts', source).program.body);
  return found;
}

test('the test sees sentences, whole and in pieces, and no names, units, findings or errors', () => {
  expect(sentencesIn("const says = 'The cup is empty.';")).toHaveLength(1);
  expect(sentencesIn('const says = `Nothing gets within $' + '{x}. Add $' + '{y} of $' + '{z}.`;')).toHaveLength(1);
  expect(sentencesIn("const size = deltaE > 4 ? 'much too' : 'too';")).toEqual(['much too']);
  expect(
    sentencesIn("const advice = { kind: 'leave-it' }; const unit = 'fl oz'; const text = `$" + '{count} drops`;'),
  ).toEqual([]);
  expect(sentencesIn("throw new RangeError('no view is known'); report.add({ found: 'no colour at all' });")).toEqual(
    [],
  );
});

test.each(SILENT)('src/%s/ decides, and leaves the sentences to src/words/', (room) => {
  const files = filesBelow(join(SOURCE, room))
    .filter((path) => path.endsWith('.ts'))
    .map((path) => `${room}/${path}`);
  expect(files.length).toBeGreaterThan(10);
  const said = files
    .filter((path) => !FINDINGS.some((from) => path.startsWith(from)))
    .flatMap((path) => sentencesIn(readFileSync(join(SOURCE, path), 'utf8')).map((text) => `${path}: ${text}`));
  expect(said, 'return a value, and put its words into src/words/').toEqual([]);
});

test('every room of findings is there', () => {
  const files = filesBelow(SOURCE);
  expect(FINDINGS.filter((from) => !files.some((path) => path.startsWith(from)))).toEqual([]);
});
