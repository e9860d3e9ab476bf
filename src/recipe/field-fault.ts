import type { DiagnosticCode } from '../diagnostics/catalogue.ts';
import type { Edit } from '../units/edit.ts';
import type { WrittenName } from './reference-fix.ts';

/** What a schema says of a value that it refuses. */
export interface FieldFault {
  readonly code: DiagnosticCode;
  readonly found: string;
  readonly expected: string;
  readonly why?: string;
  readonly fix?: string;
  readonly nearest?: string;
  /** A name of another file that is not written as one: what is offered for it depends on the files that there are. */
  readonly name?: WrittenName;
  /** YAML took words for a number or the like: what was written is to be read instead. */
  readonly asWritten?: true;
}

/** What is wrong with a value, with what may be written in its place. */
export type ReadFault = Omit<FieldFault, 'code'> & {
  readonly code?: DiagnosticCode;
  readonly edits?: readonly Edit[];
  /** What else may be written, in words. */
  readonly otherwise?: string;
};

/** What was read, or what is wrong with it. */
export type Read<T> = { readonly value: T } | { readonly fault: ReadFault };
