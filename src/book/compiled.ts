import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { LeftOut } from './left-out.ts';
import type { Book } from './model.ts';

/** A compiled book, and everything that was found on the way. */
export type Compiled = CompiledBook & {
  /** Files that are not in the book for their errors, or since they wait to be filled in, or for what they need; by path. */
  readonly leftOut: readonly LeftOut[];
  readonly diagnostics: readonly Diagnostic[];
};

/**
 * A book without errors is complete, whatever waits to be filled in. Of any other this is the sound part, to be worked with, never to be
 * published. Either is what a compile of the book without the files left out gives. There is none where `book.md` is left out.
 */
export type CompiledBook =
  | { readonly complete: true; readonly book: Book }
  | { readonly complete: false; readonly book: Book | undefined };
