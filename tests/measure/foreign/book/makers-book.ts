import { compileBook } from '../../../../src/book/compile-book.ts';
import { CompileMemory } from '../../../../src/book/compile-memory.ts';
import type { Book } from '../../../../src/book/model.ts';
import type { Diagnostic } from '../../../../src/diagnostics/diagnostic.ts';
import type { Source } from '../../../../src/recipe/source.ts';

/** A compiled book with what was told of its files. */
export interface Opened {
  readonly book: Book;
  readonly diagnostics: readonly Diagnostic[];
}

/** The files of one maker, and the book that they make. */
export class MakersBook {
  readonly #files = new Map<string, string>();
  readonly #memory = new CompileMemory();

  constructor(files: readonly Source[]) {
    for (const each of files) this.write(each);
  }

  /** Writes a file, over the one of that name. */
  write({ path, text }: Source): void {
    this.#files.set(path, text);
  }

  /** Every file as it is now. */
  get sources(): readonly Source[] {
    return [...this.#files].map(([path, text]) => ({ path, text }));
  }

  /** The book as it is now. Throws where its files have errors, which would be this bench's. */
  opened(): Opened {
    return open(this.sources, this.#memory);
  }

  /** The book with more files that are forgotten again. */
  openedWith(files: readonly Source[]): Opened {
    return open([...this.sources, ...files], new CompileMemory());
  }
}

function open(sources: readonly Source[], memory: CompileMemory): Opened {
  const { complete, book, diagnostics } = compileBook(sources, { memory });
  if (!complete || !book)
    throw new Error(
      JSON.stringify(
        diagnostics.filter(({ severity }) => severity === 'error'),
        null,
        2,
      ),
    );
  return { book, diagnostics };
}
