/**
 * A stop that its reader can mend: a missing folder, a book with errors. Its message is a whole sentence which says
 * what to do, and it is shown without a stack trace.
 */
export class Refusal extends Error {
  /** Eleventy prints no stack of an error that says so. */
  readonly skipOriginalStack = true;
  /** Whether the files of the book are what must be mended. */
  readonly ofBook: boolean;

  constructor(message: string, options: { readonly ofBook?: boolean; readonly cause?: unknown } = {}) {
    super(message, { cause: options.cause });
    this.ofBook = options.ofBook ?? false;
  }
}
