import { type ChipStart, chipStart } from '../book/chips/chip-start.ts';
import { worthAChip } from '../book/chips/worth-a-chip.ts';
import { matchPlastic } from '../book/match/match-cup.ts';
import type { Book } from '../book/model.ts';
import { chipToPourText } from '../words/worth-looking.ts';
import { titleOnShelf } from './book-index.ts';

/** As many as are shown. */
const SHOWN = 3;

/** A chip that the maker would learn most from. */
export interface AskedChip {
  readonly chip: ReturnType<typeof worthAChip>[number];
  /** In the words of the bench. */
  readonly says: string;
  readonly start: ChipStart;
}

/** The chips that the maker would learn most from, the first first; none for readers, and where there is little to learn. */
export function askedChips(book: Book): readonly AskedChip[] {
  const plastic = matchPlastic(book);
  if (book.edition !== 'mine' || plastic === undefined) return [];
  const titleOf = (material: string): string => titleOnShelf(book, material);
  const taken = new Set(book.chips.map(({ source }) => source.path));
  return worthAChip(book, SHOWN).map((chip) => {
    const { settings } = book;
    const start = chipStart(chip, { plastic, titleOf, isTaken: (path) => taken.has(path), settings });
    taken.add(start.path);
    return { chip, says: chipToPourText(chip, titleOf, settings), start };
  });
}
