/**
 * Fits the content of a card to its paper: as few sides as will do, in the largest type that they allow.
 *
 * @packageDocumentation
 */
import {
  blockHeight,
  type CardBlock,
  cupHeadHeight,
  type Measure,
  measureOf,
  notesHeight,
  room,
  rowHeight,
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

/** Scales of the type, the largest first; the style sheet has a class for each. */
export const TYPE_STEPS = [1.2, 1.1, 1, 0.9, 0.8, 0.7, 0.6] as const;

/** Step at which a card is begun; one with room to spare is then set larger. */
const USUAL_STEP = 2;
/** Type down to this step is read at arm's length: smaller would save a side and lose the reader. */
const SMALLEST_STEP = 4;
/** Down to this step a card is brought to one side; below it, two sides read better. */
const SMALLEST_FOR_ONE = 3;

/** One side of a card: what stands on it, and how large. */
export interface CardSide {
  readonly blocks: readonly CardBlock[];
  /** Index into `TYPE_STEPS`. */
  readonly step: number;
}

export interface FittedCard {
  readonly content: CardContent;
  readonly format: CardFormat;
  readonly sides: readonly CardSide[];
}

/** So few rows of a cup that began on the side before are overlooked there. */
const FEW_ROWS = 2;

/** Splits a cup over sides where even a side of its own is too short for it. */
function cupBlocks(
  cup: CardCup,
  rooms: { readonly own: number; readonly next: number },
  measure: Measure,
): readonly CardBlock[] {
  const blocks: CardBlock[] = [];
  let rows: CardRow[] = [];
  let used = cupHeadHeight(cup, measure);
  // The notes stand below the last row.
  const after = notesHeight(cup.notes, measure);
  for (const [index, row] of cup.rows.entries()) {
    const height = rowHeight(row, measure) + (index === cup.rows.length - 1 ? after : 0);
    if (rows.length > 0 && used + height > (blocks.length === 0 ? rooms.own : rooms.next)) {
      blocks.push({ kind: 'cup', cup, rows, notes: [], continued: blocks.length > 0 });
      rows = [];
      used = cupHeadHeight(cup, measure);
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

/** What may stand below the cups of an earlier side than the rest of it, where that saves a side; undefined: all in order. */
type Early = 'steps' | 'cautions' | undefined;

/** A card laid out in a size of type. */
interface Flow {
  readonly step: number;
  readonly sides: readonly (readonly CardBlock[])[];
}

/** Blocks in order, a new side where one has no room. */
function flow(content: CardContent, format: CardFormat, step: number, early: Early): readonly (readonly CardBlock[])[] {
  const measure = measureOf(format.widthMm, TYPE_STEPS[step]!);
  const onFirst = room(content, format.heightMm, measure, true);
  const onNext = room(content, format.heightMm, measure, false);
  const blocks: readonly CardBlock[] = [
    ...content.cups.flatMap((cup, index) =>
      cupBlocks(cup, { own: index === 0 ? onFirst : onNext, next: onNext }, measure),
    ),
    ...(content.heat.length > 0 ? [{ kind: 'heat' } as const] : []),
    ...(['steps', 'cautions'] as const).filter((kind) => kind !== early).map((kind) => ({ kind })),
  ];
  const sides: CardBlock[][] = [[]];
  let left = onFirst;
  let waiting: CardBlock | undefined = early && { kind: early };
  for (const block of blocks) {
    const needed = blockHeight(block, content, measure);
    if (needed > left && sides.at(-1)!.length > 0) {
      if (waiting && blockHeight(waiting, content, measure) <= left) {
        sides.at(-1)!.push(waiting);
        waiting = undefined;
      }
      sides.push([]);
      left = onNext;
    }
    sides.at(-1)!.push(block);
    left -= needed;
  }
  // Where it stands no earlier, nothing is won: such a flow is as long as the one in order, or longer.
  if (waiting) sides.push([waiting]);
  return sides;
}

/** Whether a side has only a few rows of a cup that began on the side before. */
function hasStrayRows(blocks: readonly CardBlock[]): boolean {
  return blocks.some((block) => block.kind === 'cup' && block.continued && block.rows.length <= FEW_ROWS);
}

/** The flow of fewest sides, two or more, without stray rows if there is one; the first of several. */
function shortest(flows: readonly Flow[]): Flow {
  const fewest = Math.max(2, Math.min(...flows.map(({ sides }) => sides.length)));
  const short = flows.filter(({ sides: { length } }) => length <= fewest);
  return short.find(({ sides }) => !sides.some(hasStrayRows)) ?? short[0]!;
}

/** The largest type in which a side's blocks fit; the smallest where none does. */
function largestStep(content: CardContent, format: CardFormat, blocks: readonly CardBlock[], first: boolean): number {
  const fits = TYPE_STEPS.findIndex((_, step) => {
    const measure = measureOf(format.widthMm, TYPE_STEPS[step]!);
    const needed = blocks.reduce((sum, block) => sum + blockHeight(block, content, measure), 0);
    return needed <= room(content, format.heightMm, measure, first);
  });
  return fits < 0 ? TYPE_STEPS.length - 1 : fits;
}

/**
 * Fits a card: on one side if the type stays large, else on the two sides that a card has, if need be with the cautions or the order of work
 * below the first cup, else on as many as it takes.
 */
export function fitCard(content: CardContent, format: CardFormat): FittedCard {
  const steps = Array.from({ length: SMALLEST_STEP + 1 - USUAL_STEP }, (_, index) => USUAL_STEP + index);
  const flowsWith = (early: Early): readonly Flow[] =>
    steps.map((step) => ({ step, sides: flow(content, format, step, early) }));
  const inOrder = flowsWith(undefined);
  const { sides } =
    inOrder.find(({ step, sides: { length } }) => step <= SMALLEST_FOR_ONE && length === 1) ??
    inOrder.find(({ sides }) => sides.length <= 2 && !sides.some(hasStrayRows)) ??
    shortest([...inOrder, ...flowsWith('cautions'), ...flowsWith('steps')]);
  return {
    content,
    format,
    sides: sides.map((blocks, index) => ({ blocks, step: largestStep(content, format, blocks, index === 0) })),
  };
}
