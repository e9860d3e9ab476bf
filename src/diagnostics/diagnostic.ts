/**
 * A maker's mistake as a value: where it is, what was found, what was expected, why, and the edit that mends it.
 *
 * Lines and columns count from 1, columns in UTF-16 units as editors do.
 *
 * @packageDocumentation
 */
import type { DiagnosticCode } from './catalogue.ts';

/** A place in a text, both counted from 1. */
export interface Position {
  readonly line: number;
  readonly column: number;
}

/** A second place that helps to understand the first, such as "already defined here". */
export interface Related {
  readonly message: string;
  readonly file: string;
  readonly start: Position;
}

/** One finding about the texts of a book. */
export interface Diagnostic {
  readonly code: DiagnosticCode;
  readonly severity: 'error' | 'warning';
  /** Path from the book's folder, with `/`. */
  readonly file: string;
  readonly start: Position;
  readonly end?: Position;
  /** What the file holds at that place. */
  readonly found: string;
  /** What it may hold instead. */
  readonly expected: string;
  readonly why?: string;
  /** The exact edit, where it is known. */
  readonly fix?: string;
  /** The nearest known name to a misspelt one. */
  readonly nearest?: string;
  readonly related?: readonly Related[];
}

/** Orders diagnostics by file, line, column and code, so that the same book always gives the same list. */
export function compareDiagnostics(one: Diagnostic, other: Diagnostic): number {
  return (
    (one.file < other.file ? -1 : one.file > other.file ? 1 : 0) ||
    one.start.line - other.start.line ||
    one.start.column - other.start.column ||
    (one.code < other.code ? -1 : one.code > other.code ? 1 : 0)
  );
}

/** Whether any of them stops a book from being built. */
export function hasErrors(diagnostics: readonly Diagnostic[]): boolean {
  return diagnostics.some((diagnostic) => diagnostic.severity === 'error');
}
