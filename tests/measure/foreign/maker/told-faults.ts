import type { Diagnostic } from '../../../../src/diagnostics/diagnostic.ts';

/** Warnings by which a book says that a log or a look cannot be right. Whoever adds one adds it here. */
const FAULT_CODES: readonly string[] = ['seen/unlogged', 'log/does-not-fit'];

/** What a book tells of a recipe's log that does not fit. */
export interface ToldFault {
  /** All that is said of it, where names of materials are looked for. */
  readonly says: string;
}

/** What is told of the log in a file. */
export function toldFaults(diagnostics: readonly Diagnostic[], path: string): readonly ToldFault[] {
  return diagnostics
    .filter((each) => each.file === path && FAULT_CODES.includes(each.code))
    .map((each) => ({ says: JSON.stringify(each) }));
}
