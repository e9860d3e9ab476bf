/**
 * Fits the content of a card to its paper: as few sides as will do, in the one size of type that all cards have.
 *
 * @packageDocumentation
 */
import type { StepWords } from '../../patterns/pattern.ts';
import {
  blockHeight,
  type CardBlock,
  cupHeadHeight,
  listHeadHeight,
  notesHeight,
  room,
  rowHeight,
  stepHeight,
  textWidthOf,
} from './block-height.ts';
import type { CardContent, CardCup, CardRow } from './content.ts';

/** A paper, and the class that the style sheet knows it by. */
export interface CardFormat {
  readonly name: 'a6' | '4x6' | 'quarter';
  readonly widthMm: number;
  readonly heightMm: number;
}

export const CARD_FORMATS = {
  a6: { name: 'a6', widthMm: 105, heightMm: 148 },
  '4x6': { name: '4x6', widthMm: 101.6, heightMm: 152.4 },
  /** A quarter of a Letter sheet. */
  quarter: { name: 'quarter', widthMm: 107.95, heightMm: 139.7 },
} as const satisfies Record<string, CardFormat>;

/** One side of a card: what stands on it. */
export type CardSide = readonly CardBlock[];

export interface FittedCard {
  readonly content: CardContent;
  readonly format: CardFormat;
  readonly sides: readonly CardSide[];
  /** Free below all else on the last side, mm. */
  readonly spare: number;
}

/** So few rows of a cup that began on the side before are overlooked there. */
const FEW_ROWS = 2;

/** What is free on the side that is being filled, and on each after it. */
interface Rooms {
  readonly own: number;
  readonly next: number;
}

/** Splits a cup over sides where even a side of its own is too short for it. */
function cupBlocks(cup: CardCup, { own, next }: Rooms, width: number): readonly CardBlock[] {
  const blocks: CardBlock[] = [];
  let rows: CardRow[] = [];
  let used = cupHeadHeight(cup, false, width);
  // The notes stand below the last row.
  const after = notesHeight(cup.notes, width);
  for (const [index, row] of cup.rows.entries()) {
    const height = rowHeight(row, width) + (index === cup.rows.length - 1 ? after : 0);
    if (rows.length > 0 && used + height > (blocks.length === 0 ? own : next)) {
      blocks.push({ kind: 'cup', cup, rows, notes: [], continued: blocks.length > 0 });
      rows = [];
      used = cupHeadHeight(cup, true, width);
    }
    rows.push(row);
    used += height;
  }
  const last = blocks.at(-1);
  if (rows.length === 1 && last?.kind === 'cup' && last.rows.length > FEW_ROWS) {
    rows.unshift(last.rows.at(-1)!);
    blocks[blocks.length - 1] = { ...last, rows: last.rows.slice(0, -1) };
  }
  return [...blocks, { kind: 'cup', cup, rows, notes: cup.notes, continued: blocks.length > 0 }];
}

/** The order of work, in parts of which each has room on a side of its own. */
function stepsBlocks(steps: readonly StepWords[], own: number, width: number): readonly CardBlock[] {
  const parts: { kind: 'steps'; steps: StepWords[]; from: number }[] = [];
  let used = Number.POSITIVE_INFINITY;
  for (const [index, step] of steps.entries()) {
    const height = stepHeight(step, width);
    if (used + height > own) {
      parts.push({ kind: 'steps', steps: [], from: index });
      used = listHeadHeight();
    }
    parts.at(-1)!.steps.push(step);
    used += height;
  }
  return parts;
}

/** What may stand below the cups of an earlier side than the rest of it, where that saves a card; undefined: all in order. */
type Early = 'steps' | 'cautions' | undefined;

/** Blocks in order, a new side where one has no room; what is `early` stands as soon as an earlier side has room for it. */
function flow(content: CardContent, format: CardFormat, early: Early): readonly CardSide[] {
  const width = textWidthOf(format.widthMm);
  const onFirst = room(content, format, true);
  const onNext = room(content, format, false);
  const height = (block: CardBlock): number => blockHeight(block, content, width);
  const steps = stepsBlocks(content.steps, onNext, width);
  const cautions: CardBlock = { kind: 'cautions' };
  const waits = early === 'cautions' ? [cautions] : early === 'steps' ? [...steps] : [];
  const sides: CardBlock[][] = [[]];
  let left = onFirst;
  const turn = (): void => {
    for (let [waiting] = waits; waiting && height(waiting) <= left; [waiting] = waits) {
      sides.at(-1)!.push(waiting);
      left -= height(waiting);
      waits.shift();
    }
    sides.push([]);
    left = onNext;
  };
  const put = (block: CardBlock): void => {
    const needed = height(block);
    // Below a name of many lines the first side may have no room even for a row.
    if (needed > left && (sides.at(-1)!.length > 0 || left < onNext)) turn();
    sides.at(-1)!.push(block);
    left -= needed;
  };
  for (const [index, cup] of content.cups.entries())
    for (const block of cupBlocks(cup, { own: index === 0 ? onFirst : onNext, next: onNext }, width)) put(block);
  if (content.heat.length > 0) put({ kind: 'heat' });
  for (const block of early === 'steps' ? [] : steps) put(block);
  if (early !== 'cautions') put(cautions);
  while (waits.length > 0) put(waits.shift()!);
  return sides;
}

/** Whether a side has only a few rows of a cup that began on the side before. */
function hasStrayRows(blocks: CardSide): boolean {
  return blocks.some((block) => block.kind === 'cup' && block.continued && block.rows.length <= FEW_ROWS);
}

/**
 * Fits a card: on the two sides that a card has, if need be with the cautions or the order of work below an earlier cup, else on as many as
 * it takes.
 */
export function fitCard(content: CardContent, format: CardFormat): FittedCard {
  const flows = ([undefined, 'cautions', 'steps'] as const).map((early) => flow(content, format, early));
  const fewest = Math.min(...flows.map(({ length }) => Math.ceil(length / 2)));
  const short = flows.filter(({ length }) => Math.ceil(length / 2) === fewest);
  const sides = short.find((each) => !each.some(hasStrayRows)) ?? short[0]!;
  const width = textWidthOf(format.widthMm);
  const used = sides.at(-1)!.reduce((sum, block) => sum + blockHeight(block, content, width), 0);
  return { content, format, sides, spare: room(content, format, sides.length === 1) - used };
}
