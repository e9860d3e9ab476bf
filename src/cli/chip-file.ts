import { chipFileText } from '../book/chips/chip-file-text.ts';
import type { chipStart } from '../book/chips/chip-start.ts';
import type { Source } from '../recipe/source.ts';
import { ToFillIn } from '../recipe/write-front-matter.ts';

/** A chip's file, ready to be looked at and filled in. */
export interface ChipFile {
  /** What the chip is called: "Mill Blue, 1 drop, with Chalk, 1 drop". */
  readonly title: string;
  readonly source: Source;
}

/**
 * The file of a chip that is to be poured, but for what only its maker will see.
 *
 * @param today `2026-03-14`
 */
export function chipFile(start: ReturnType<typeof chipStart>, today: string): ChipFile {
  const text = chipFileText(start, today, {
    'over-white': new ToFillIn(SEEN_HINT),
    'over-black': new ToFillIn('the same on a black card'),
  });
  return { title: start.title, source: { path: start.path, text } };
}

const SEEN_HINT = 'its colour on a white card, in quotes, such as "#8a5a2b"';
