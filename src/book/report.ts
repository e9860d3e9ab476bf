import { CATALOGUE, type DiagnosticCode } from '../diagnostics/catalogue.ts';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { FieldPath } from '../recipe/front-matter.ts';
import type { Thing } from '../recipe/read-thing.ts';

/** What a diagnostic says, with a place of its own where it is only a part of what stands in a field. */
export type Finding = Pick<Diagnostic, 'found' | 'expected' | 'why' | 'fix' | 'nearest' | 'related'> &
  Partial<Pick<Diagnostic, 'start' | 'end'>>;

/** Collects findings about the things of a book, each with its place. */
export interface Report {
  add(code: DiagnosticCode, thing: Thing, path: FieldPath, finding: Finding, part?: 'key' | 'value'): void;
}

/** A report that appends to a list. */
export function reportInto(diagnostics: Diagnostic[]): Report {
  return {
    add(code, thing, path, finding, part = 'value') {
      diagnostics.push({
        code,
        severity: CATALOGUE[code].severity,
        file: thing.source.path,
        ...thing.place(path, part),
        ...finding,
      });
    },
  };
}
