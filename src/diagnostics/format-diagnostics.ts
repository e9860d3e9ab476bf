import { capped, type Unshown } from './capped.ts';
import type { Diagnostic } from './diagnostic.ts';

/**
 * Diagnostics as text for a terminal: place, code, what was found, what was expected, why, the fix, and the line with a caret.
 *
 * What is the same in three places or more is told once, with all its places; of warnings that only say the same of other files so many are counted
 * alone. A name or message is one line, whatever stands in it.
 *
 * @param texts the text of each file by its path; a file that is missing here is reported without its line
 */
export function formatDiagnostics(diagnostics: readonly Diagnostic[], texts: ReadonlyMap<string, string>): string {
  const { shown, unshown } = capped(diagnostics);
  const told = grouped(shown).map((group) => formatGroup(group, texts));
  return [...told, ...(unshown.length === 0 ? [] : [`${unshown.map(unshownText).join('\n')}\n`])].join('\n');
}

function unshownText({ code, folder, count: number }: Unshown): string {
  return `${oneLine(folder)} warning ${code}: ${number} more like those above`;
}

/** So many places of one finding make it one that is told once. */
const LEAST_GROUP = 3;

/** Findings that say the same of several places, each group where its first one stands. */
function grouped(diagnostics: readonly Diagnostic[]): readonly (readonly [Diagnostic, ...Diagnostic[]])[] {
  const groups = new Map<string, [Diagnostic, ...Diagnostic[]]>();
  for (const diagnostic of diagnostics) {
    const { severity, code, fix } = diagnostic;
    // What is named in the words of both is the same thing; a file by itself is not.
    const key = JSON.stringify([severity, code, diagnosticMessage(diagnostic), fix]);
    const group = groups.get(key);
    if (group) group.push(diagnostic);
    else groups.set(key, [diagnostic]);
  }
  const isGroup = (group: readonly Diagnostic[]): boolean => group.length >= LEAST_GROUP;
  const whole = new Map([...groups.values()].filter(isGroup).map((group) => [group[0], group]));
  const inGroup = new Set([...whole.values()].flat());
  return diagnostics.flatMap((diagnostic): readonly (readonly [Diagnostic, ...Diagnostic[]])[] => {
    const group = whole.get(diagnostic);
    return group ? [group] : inGroup.has(diagnostic) ? [] : [[diagnostic]];
  });
}

/** So many places are listed of a finding that is told once: an error must be found wherever it is. */
const MOST_PLACES = { error: 200, warning: 12 } as const;

function formatGroup(
  [first, ...others]: readonly [Diagnostic, ...Diagnostic[]],
  texts: ReadonlyMap<string, string>,
): string {
  const text = formatDiagnostic(first, texts.get(first.file));
  if (others.length === 0) return text;
  const most = MOST_PLACES[first.severity];
  const places = others.slice(0, most).map(({ file, start }) => placeText(file, start));
  const more = others.length > most ? [`and ${others.length - most} more`] : [];
  return `${text}  the same in ${count(others.length, 'other place')}: ${[...places, ...more].join(', ')}\n`;
}

function placeText(file: string, { line, column }: Diagnostic['start']): string {
  return `${oneLine(file)}:${line}:${column}`;
}

/** Text of one line: breaks as signs, and what is invisible or turns the writing around as its number. The name of a file may hold any. */
function oneLine(text: string): string {
  return text
    .replace(/[\n\r\t]/g, (sign) => String.fromCharCode(0x2400 + sign.charCodeAt(0)))
    .replace(/[\u2028\u2029]|\p{Bidi_Control}/gu, (sign) => `\\u${sign.charCodeAt(0).toString(16)}`);
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
  const lines = [`${placeText(file, start)} ${severity} ${code}`, `  ${oneLine(diagnosticMessage(diagnostic))}`];
  if (fix !== undefined) lines.push(`  fix: ${oneLine(fix)}`);
  const source = text?.split(/\r?\n/)[start.line - 1];
  if (source !== undefined && source.trim() !== '') {
    const width = end !== undefined && end.line === start.line ? Math.max(1, end.column - start.column) : 1;
    lines.push(...sourceLines(source, start.line, start.column - 1, width));
  }
  for (const { message, file: other, start: place } of related) lines.push(`  ${placeText(other, place)} ${message}`);
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
