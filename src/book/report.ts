import { CATALOGUE, type DiagnosticCode } from '../diagnostics/catalogue.ts';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { FieldPath } from '../recipe/field-path.ts';
import type { Thing } from '../recipe/read-thing.ts';

/** What a diagnostic says, with a place of its own where it is only a part of what stands in a field. */
export type Finding = Pick<Diagnostic, 'found' | 'expected' | 'why' | 'fix' | 'nearest' | 'related'> &
  Partial<Pick<Diagnostic, 'start' | 'end'>>;

/** Collects what is found in a book, each finding with its place: the one way in which anything is told. */
export interface Report {
  /** Tells of a field of a thing. */
  add(code: DiagnosticCode, thing: Thing, path: FieldPath, finding: Finding, part?: 'key' | 'value'): void;
  /** Tells of a file: at its first sign, unless the finding has a place. */
  tell(code: DiagnosticCode, file: string, finding: Finding): void;
  /** Takes what the reader of one file has found. */
  take(found: readonly Diagnostic[]): void;
  /** Paths of the files that cannot be used for the errors which were told of them. */
  readonly faulty: ReadonlySet<string>;
}

/** Errors of what is shown and what is published: no amount and no colour depends on them, so that the file can be used. */
const HARMLESS: ReadonlySet<DiagnosticCode> = new Set<DiagnosticCode>([
  'photo/missing',
  'photo/unreadable',
  'book/measuring-card',
  'publish/named',
]);

const TOP = { line: 1, column: 1 };

/** A report that appends to a list. */
export function reportInto(diagnostics: Diagnostic[]): Report {
  const faulty = new Set<string>();
  const take = (found: Diagnostic): void => {
    diagnostics.push(found);
    if (found.severity === 'error' && !HARMLESS.has(found.code)) faulty.add(found.file);
  };
  const tell: Report['tell'] = (code, file, finding) =>
    take({ code, severity: CATALOGUE[code].severity, file, start: TOP, ...finding });
  return {
    add: (code, thing, path, finding, part = 'value') =>
      tell(code, thing.source.path, { ...thing.place(path, part), ...finding }),
    tell,
    take: (found) => found.forEach(take),
    faulty,
  };
}

/** A report of findings of some codes alone; nothing is told of the others. */
export function reportOnly(report: Report, isTold: (code: DiagnosticCode) => boolean): Report {
  return {
    add: (code, ...rest) => {
      if (isTold(code)) report.add(code, ...rest);
    },
    tell: (code, ...rest) => {
      if (isTold(code)) report.tell(code, ...rest);
    },
    take: (found) => report.take(found.filter(({ code }) => isTold(code))),
    faulty: report.faulty,
  };
}
