import type { Diagnostic } from '../../diagnostics/diagnostic.ts';
import type { FieldPath } from '../../recipe/field-path.ts';
import type { Thing } from '../../recipe/read-thing.ts';

/** Where a name stands that ends a value, `supple` in `120 ml supple`; undefined where the value does not end in it. */
export function placeOfEnd(
  { place, source }: Pick<Thing, 'place' | 'source'>,
  path: FieldPath,
  name: string,
): Required<Pick<Diagnostic, 'start' | 'end'>> | undefined {
  const { start, end } = place(path);
  if (end === undefined || end.line !== start.line) return undefined;
  const value = source.text.split('\n')[start.line - 1]!.slice(start.column - 1, end.column - 1);
  const quote = /["']$/.test(value) ? 1 : 0;
  if (!value.slice(0, value.length - quote).endsWith(` ${name}`)) return undefined;
  const column = end.column - quote;
  return { start: { ...end, column: column - name.length }, end: { ...end, column } };
}
