import { type Diagnostic, hasErrors } from '../diagnostics/diagnostic.ts';
import { BOOK_FILE, type Source } from '../recipe/source.ts';
import type { VolumeUnit } from '../units/volume-text.ts';
import { cardPrint } from './card-print.ts';
import type { CardPrint } from './model/card-print.ts';
import { readThings } from './read/read-things.ts';
import { Remembered } from './remembered.ts';
import { reportInto } from './report.ts';

/** What of a book a photo is measured by. */
export interface CardOfBook {
  /** The maker's own print; undefined where the book says nothing of it. */
  readonly print: CardPrint | undefined;
  readonly units: VolumeUnit;
  /** Whether there is a `book.md`, and whether it has errors: then what is sound of it is here. */
  readonly isThere: boolean;
  readonly isFaulty: boolean;
}

/** What a book says of its measuring card and of its units, read from `book.md` alone: nothing else is compiled. */
export function cardOfBook(sources: readonly Source[]): CardOfBook {
  const diagnostics: Diagnostic[] = [];
  const report = reportInto(diagnostics);
  const own = sources.filter(({ path }) => path === BOOK_FILE);
  const { book } = readThings(own, report, new Remembered());
  return {
    print: cardPrint(book, report),
    units: { volume: book?.fields.units.volume ?? 'ml' },
    isThere: own.length > 0,
    isFaulty: own.length > 0 && hasErrors(diagnostics),
  };
}
