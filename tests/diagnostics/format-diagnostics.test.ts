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
