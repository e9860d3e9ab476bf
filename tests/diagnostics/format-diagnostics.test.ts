import { expect, test } from 'vitest';
import type { Diagnostic } from '../../src/diagnostics/diagnostic.ts';
import { formatDiagnostics } from '../../src/diagnostics/format-diagnostics.ts';

const shown = (text: string, column: number, width: number): readonly string[] => {
  const diagnostic: Diagnostic = {
    code: 'shelf/measurements',
    severity: 'error',
    file: 'a.csv',
    start: { line: 1, column },
    end: { line: 1, column: column + width },
    found: 'x',
    expected: 'y',
  };
  return formatDiagnostics([diagnostic], new Map([['a.csv', text]]))
    .trimEnd()
    .split('\n')
    .slice(2);
};

test('formatDiagnostics(…) shows a long line only around what is meant, with the carets under it', () => {
  const text = `${'1.25,'.repeat(40)}wrong,${'1.25,'.repeat(40)}`;
  const [line, carets] = shown(text, 201, 5);
  expect(line!.length).toBeLessThanOrEqual(110);
  expect(line).toMatch(/^ {4}1 \| ….*wrong.*…$/);
  expect(carets!.indexOf('^')).toBe(line!.indexOf('wrong'));
  expect(carets!.match(/\^/g)).toHaveLength(5);
});

test('formatDiagnostics(…) shows a short line whole, and the end of a long one', () => {
  expect(shown('peat: 3 dorps', 7, 7)).toEqual(['    1 | peat: 3 dorps', '      |       ^^^^^^^']);
  const [line, carets] = shown(`${'1.25,'.repeat(40)}wrong`, 201, 5);
  expect(line).toMatch(/^ {4}1 \| ….*wrong$/);
  expect(carets!.indexOf('^')).toBe(line!.indexOf('wrong'));
});

const finding = (file: string, more: Partial<Diagnostic> = {}): Diagnostic => ({
  code: 'recipe/unknown-material',
  severity: 'error',
  file,
  start: { line: 7, column: 5 },
  found: 'material `paet`',
  expected: 'the name of a file in shelf/',
  fix: 'write `peat`',
  ...more,
});
const text = (diagnostics: readonly Diagnostic[]): string => formatDiagnostics(diagnostics, new Map());

test('formatDiagnostics(…) tells what is the same in three places once, where it comes first, with the other places', () => {
  const names = Array.from({ length: 15 }, (_, index) => `colours/${String.fromCharCode(97 + index)}.md`);
  expect(text([...names.slice(0, 3).map((name) => finding(name)), finding('molds/x.md', { found: 'y' })])).toBe(
    [
      'colours/a.md:7:5 error recipe/unknown-material',
      '  Unexpected material `paet`, expected the name of a file in shelf/',
      '  fix: write `peat`',
      '  the same in 2 other places: colours/b.md:7:5, colours/c.md:7:5',
      '',
      'molds/x.md:7:5 error recipe/unknown-material',
      '  Unexpected y, expected the name of a file in shelf/',
      '  fix: write `peat`',
      '',
    ].join('\n'),
  );
  expect(text(names.map((name) => finding(name)))).toContain('the same in 14 other places: ');
  expect(text(names.map((name) => finding(name)))).toMatch(/colours\/o\.md:7:5\n$/);
  const warnings = names.map((name) => finding(name, { severity: 'warning' }));
  expect(text(warnings)).toMatch(/colours\/m\.md:7:5, and 2 more\n$/);
  expect(text(names.slice(0, 2).map((name) => finding(name))).match(/^ {2}fix/gm)).toHaveLength(2);
});

test('formatDiagnostics(…) shows twenty warnings of a code and folder, and counts the others', () => {
  const stray = Array.from({ length: 3000 }, (_, index) =>
    finding(`scans/${index}.md`, { code: 'file/unknown-place', severity: 'warning', found: `scan ${index}` }),
  );
  const said = text(stray);
  expect(said.match(/^scans\/\d+\.md/gm)).toHaveLength(20);
  expect(said).toMatch(/\n\nscans\/ warning file\/unknown-place: 2980 more like those above\n$/);
  const spread = stray.map((each, index) => ({ ...each, file: `scan-${index}/a.md` }));
  expect(text(spread).match(/^scan-\d+\/a\.md/gm)).toHaveLength(100);
  expect(text(stray.map((each) => ({ ...each, severity: 'error' as const }))).match(/^scans\/\d+\.md/gm)).toHaveLength(
    3000,
  );
});

test('formatDiagnostics(…) writes out what breaks a line or turns it around in a name', () => {
  const odd = finding('colours/a\nb\u202e.md', { found: 'file name `a\nb\u202e.md`', fix: 'rename `a\nb`' });
  expect(text([{ ...odd, related: [{ message: 'here', file: 'x\ry', start: { line: 1, column: 1 } }] }])).toBe(
    [
      'colours/a␊b\\u202e.md:7:5 error recipe/unknown-material',
      '  Unexpected file name `a␊b\\u202e.md`, expected the name of a file in shelf/',
      '  fix: rename `a␊b`',
      '  x␍y:1:1 here',
      '',
    ].join('\n'),
  );
});
