import type { Diagnostic, Position } from '../diagnostics/diagnostic.ts';

/**
 * The edit for a value that YAML took for a comment, `title: #1 Perch`; undefined where none stands after the name.
 *
 * @param name where the name of the field begins
 */
export function commentedValue(
  text: string,
  { line, column }: Position,
): Pick<Diagnostic, 'start' | 'end' | 'found' | 'why' | 'fix'> | undefined {
  const rest = text.split('\n')[line - 1]?.slice(column - 1) ?? '';
  const [, before, comment] = /^([^#:]+:\s+)(#(?! ).*?)\s*$/.exec(rest) ?? [];
  if (before === undefined || comment === undefined) return undefined;
  const start = { line, column: column + before.length };
  const quoted = comment.includes('"') ? `'${comment.replaceAll("'", "''")}'` : `"${comment}"`;
  return {
    start,
    end: { line, column: start.column + comment.length },
    found: `\`${comment}\` without quotes`,
    why: 'a bare # begins a comment, which hides the rest of the line',
    fix: `write \`${quoted}\``,
  };
}
