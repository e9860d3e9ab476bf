/**
 * Sizes of type and measures of labels; the style sheet has the same, and a test finds nothing cut off.
 *
 * Units: mm.
 *
 * @packageDocumentation
 */
import { lineCount, linesOf } from '../card/text-lines.ts';
import type { LabelSheet } from './label-sheet.ts';
import { BAG_CAUTIONS, type LabelWords } from './label-words.ts';

/** Type of a label: its text is never below 6.5 points, which are 2.29 mm. */
interface LabelType {
  readonly text: number;
  readonly title: number;
  /** Side of the code. */
  readonly code: number;
  /** The least height of the bait, for which words give way. */
  readonly bait: number;
  readonly written: number;
}

const SMALL: LabelType = { text: 2.3, title: 3.7, code: 15, bait: 6, written: 4 };
const LARGE: LabelType = { text: 2.9, title: 5.2, code: 21, bait: 13, written: 5.5 };
const LEADING = 1.2;
const PADDING = { x: 4, y: 2.5 } as const;
const GAP = 2;
/** Above the bait, and above what stands below it. */
const ABOVE = 0.8;
/** So high a label has room for the larger type. */
const LARGE_FROM = 50;

/** Whether a sheet’s labels are set in the larger type. */
export function isLarge({ heightMm }: Pick<LabelSheet, 'heightMm'>): boolean {
  return heightMm >= LARGE_FROM;
}

/** Whether a label has room beside its bait for all that is in it, which is told whole or not at all, and the cautions after it. */
export function hasRoomForAll(words: LabelWords, sheet: LabelSheet): boolean {
  const { text, title, code, bait, written } = isLarge(sheet) ? LARGE : SMALL;
  const width = sheet.widthMm - 2 * PADDING.x;
  const beside = words.address === undefined ? width : width - code - GAP;
  const head =
    lineCount(words.title, title, beside, 'title') * title * 1.12 +
    lineCount(words.says, text, beside) * text * LEADING;
  const top = Math.max(head + ABOVE + bait, words.address === undefined ? 0 : code);
  const more = linesOf(
    [
      { text: 'Ingredients: ', size: text, type: 'bold' },
      { text: `${words.ingredients} ${BAG_CAUTIONS}`, size: text },
    ],
    width,
  );
  return top + ABOVE + more * text * LEADING + written <= sheet.heightMm - 2 * PADDING.y;
}
