import type { Diagnostic } from './diagnostic.ts';

/**
 * Diagnostics as text for a terminal: place, code, what was found, what was expected, why, the fix, and the line with a caret.
 *
 * @param texts the text of each file by its path; a file that is missing here is reported without its line
 */
export function formatDiagnostics(diagnostics: readonly Diagnostic[], texts: ReadonlyMap<string, string>): string {
  return diagnostics.map((diagnostic) => formatDiagnostic(diagnostic, texts.get(diagnostic.file))).join('\n');
}

/** "2 errors and 1 warning in 34 files", or "no errors in 34 files". */
export function summarizeDiagnostics(diagnostics: readonly Diagnostic[], fileCount: number): string {
  const errors = diagnostics.filter((diagnostic) => diagnostic.severity === 'error').length;
  const warnings = diagnostics.length - errors;
  const found = [
    errors === 0 ? 'no errors' : count(errors, 'error'),
    ...(warnings > 0 ? [count(warnings, 'warning')] : []),
  ];
  return `${found.join(' and ')} in ${count(fileCount, 'file')}`;
}

function count(number: number, thing: string): string {
  return `${number} ${thing}${number === 1 ? '' : 's'}`;
}

/** The sentence of a diagnostic: Unexpected …, expected …, because …. */
export function diagnosticMessage(diagnostic: Diagnostic): string {
  const why = diagnostic.why === undefined ? '' : `, because ${diagnostic.why}`;
  return `Unexpected ${diagnostic.found}, expected ${diagnostic.expected}${why}`;
}

function formatDiagnostic(diagnostic: Diagnostic, text: string | undefined): string {
  const { file, start, end, severity, code, fix, related = [] } = diagnostic;
  const lines = [`${file}:${start.line}:${start.column} ${severity} ${code}`, `  ${diagnosticMessage(diagnostic)}`];
  if (fix !== undefined) lines.push(`  fix: ${fix}`);
  const source = text?.split(/\r?\n/)[start.line - 1];
  if (source !== undefined && source.trim() !== '') {
    const number = String(start.line).padStart(5);
    const width = end !== undefined && end.line === start.line ? Math.max(1, end.column - start.column) : 1;
    // Tabs are kept in the padding so that the caret stands under the same place whatever their width.
    const padding = source.slice(0, start.column - 1).replace(/[^\t]/g, ' ');
    lines.push(`${number} | ${source}`, `${' '.repeat(5)} | ${padding}${'^'.repeat(width)}`);
  }
  for (const { message, file: other, start: place } of related)
    lines.push(`  ${other}:${place.line}:${place.column} ${message}`);
  return `${lines.join('\n')}\n`;
}
