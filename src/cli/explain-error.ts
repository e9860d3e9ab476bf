import type { Refusal } from '../diagnostics/refusal.ts';
import { printable } from '../shell/printable.ts';

/**
 * What to tell a person about an error: the sentence of a refusal, what the system would not do, or that the program
 * itself is wrong and how to report it.
 *
 * @param trace whether to add where in the program it arose
 */
export function explainError(error: unknown, trace: boolean): string {
  const cause = innermost(error);
  const sentence = printable(sentenceOf(cause));
  return trace && cause instanceof Error ? `${sentence}\n${cause.stack ?? ''}` : sentence;
}

function sentenceOf(cause: unknown): string {
  if (isRefusal(cause)) return cause.message;
  if (isSystemError(cause)) return `${SYSTEM[cause.code] ?? 'The system refused'}: ${cause.path ?? cause.message}.`;
  const message = cause instanceof Error ? cause.message : String(cause);
  return `Cupbook stopped at an error of its own: ${message.trim()}\nPlease report it: run the same again with --trace, and send what it shows together with the recipe, if you may.`;
}

/** Eleventy wraps what a page throws. */
function innermost(error: unknown): unknown {
  let cause = error;
  while (cause instanceof Error && 'originalError' in cause && cause.originalError instanceof Error)
    cause = cause.originalError;
  return cause;
}

/** Whether an error is a refusal, also one of the plugin: that is bundled apart, so its class is another one of the same shape. */
export function isRefusal(cause: unknown): cause is Refusal {
  return cause instanceof Error && 'skipOriginalStack' in cause && cause.skipOriginalStack === true;
}

export type SystemError = Error & { readonly code: string; readonly path?: string };

/** Whether an error is what the system said of a file. */
export function isSystemError(cause: unknown): cause is SystemError {
  return cause instanceof Error && 'code' in cause && 'syscall' in cause && typeof cause.code === 'string';
}

const SYSTEM: Readonly<Record<string, string>> = {
  EACCES: 'There is no permission to read or write',
  EPERM: 'There is no permission to read or write',
  EROFS: 'This cannot be written, since its disk is read-only',
  ENOTEMPTY: 'Another build wrote there at the same time',
  ENOSPC: 'The disk is full',
  ENOENT: 'This file or folder is not there',
  EADDRINUSE: 'Another program already uses this port',
};
