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
    const width = end !== undefined && end.line === start.line ? Math.max(1, end.column - start.column) : 1;
    lines.push(...sourceLines(source, start.line, start.column - 1, width));
  }
  for (const { message, file: other, start: place } of related)
    lines.push(`  ${other}:${place.line}:${place.column} ${message}`);
  return `${lines.join('\n')}\n`;
}

/** Longest stretch of a line that is shown: rows of spectra are far longer than a terminal is wide. */
const WIDEST = 100;

/** A line with carets under what is meant, cut to what stands around it. */
function sourceLines(source: string, line: number, column: number, width: number): readonly string[] {
  const from = source.length <= WIDEST ? 0 : Math.max(0, Math.min(column - 30, source.length - WIDEST));
  const shown = source.slice(from, from + WIDEST);
  const [before, after] = [from > 0 ? '…' : '', from + WIDEST < source.length ? '…' : ''];
  // Tabs are kept in the padding so that the caret stands under the same place whatever their width.
  const padding = `${before}${source.slice(from, column)}`.replace(/[^\t]/g, ' ');
  const carets = '^'.repeat(Math.max(1, Math.min(width, from + WIDEST - column)));
  return [`${String(line).padStart(5)} | ${before}${shown}${after}`, `${' '.repeat(5)} | ${padding}${carets}`];
}
