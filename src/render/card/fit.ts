/**
 * Fits the content of a card to its paper: as few sides as will do, in the largest type that they allow.
 *
 * Heights are estimated from the letters, on the safe side; a test prints the cards and finds nothing cut off.
 * Units: mm.
 *
 * @packageDocumentation
 */
import { stepText } from '../order-of-work.ts';
import type { CardContent, CardCup, CardRow } from './content.ts';
import { lineCount, type Type, textWidth } from './text-lines.ts';

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

/** Sizes at scale 1; the style sheet has the same. */
const TYPE = {
  margin: 5.5,
  title: 7,
  batch: 3.5,
  cup: 4.4,
  measure: 5,
  name: 4.4,
  weight: 3.5,
  small: 3.1,
  steps: 3.5,
  cautions: 2.9,
} as const;
const LEADING = 1.22;
/** Height of the drawdown card at the top of the first side, and of the head of the others. */
const SWATCH = 21;
const NEXT_HEAD = 9;
const FOOT = 6;
const QR = 24;
/** Columns of the measures, the names and the weights, as parts of the width; the style sheet has the same. */
const COLUMNS = { measure: 0.43, name: 0.38, weight: 0.19 } as const;
/** Between the measure and the name, and between the others: with a little on the safe side. */
const GAP = { measure: 3.2, other: 1.2 } as const;

/** Part of a card's content that stays together. */
export type CardBlock =
  | {
      readonly kind: 'cup';
      readonly cup: CardCup;
      readonly rows: readonly CardRow[];
      readonly notes: readonly string[];
      readonly continued: boolean;
    }
  | { readonly kind: 'heat' }
  | { readonly kind: 'steps' }
  | { readonly kind: 'cautions' };

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

interface Measure {
  readonly width: number;
  readonly scale: number;
}

function rowHeight(row: CardRow, { width, scale }: Measure): number {
  const lines = (text: string, size: number, column: number, type?: Type): number =>
    lineCount(text, size * scale, width * column - (column === COLUMNS.measure ? GAP.measure : GAP.other), type) *
    size *
    scale *
    LEADING;
  const head = row.weight === undefined ? COLUMNS.name + COLUMNS.weight : COLUMNS.name;
  const note = row.note === undefined ? 0 : lines(row.note, TYPE.small, head);
  const name = lines(row.name, TYPE.name, head) + note;
  const weight = row.weight === undefined ? 0 : lines(row.weight, TYPE.weight, COLUMNS.weight);
  // What a measure weighs stands behind it where there is room, else on a line of its own.
  const weighs = row.weighs === undefined ? 0 : textWidth(` ${row.weighs}`) * TYPE.small * scale;
  const behind =
    textWidth(row.measure, 'bold') * TYPE.measure * scale + weighs <= width * COLUMNS.measure - GAP.measure;
  const below = weighs === 0 || behind ? 0 : TYPE.small * scale * LEADING;
  return Math.max(lines(row.measure, TYPE.measure, COLUMNS.measure, 'bold') + below, name, weight) + 1.4 * scale;
}

function cupHeadHeight(cup: CardCup, { width, scale }: Measure): number {
  const head = lineCount(`${cup.name}  ${cup.share} ${cup.split ?? ''}`, TYPE.cup * scale, width - 6, 'bold');
  return head * TYPE.cup * scale * LEADING + 3.4 * scale;
}

function textHeight(texts: readonly string[], size: number, width: number, gap: number): number {
  return texts.reduce((sum, text) => sum + lineCount(text, size, width) * size * LEADING + gap, 0);
}

function blockHeight(block: CardBlock, content: CardContent, measure: Measure): number {
  const { width, scale } = measure;
  switch (block.kind) {
    case 'cup':
      return (
        cupHeadHeight(block.cup, measure) +
        block.rows.reduce((sum, row) => sum + rowHeight(row, measure), 0) +
        textHeight(block.notes, TYPE.small * scale, width, 0.8 * scale)
      );
    case 'heat':
      return (
        lineCount(content.heat.join(' '), TYPE.cup * scale, width - 5, 'bold') * TYPE.cup * scale * LEADING + 5 * scale
      );
    case 'steps':
      return (
        TYPE.cup * scale * LEADING +
        textHeight(content.steps.map(stepText), TYPE.steps * scale, width - 6, 0.6) +
        3 * scale
      );
    case 'cautions': {
      const beside = content.address === undefined ? 0 : QR + 3;
      const text =
        TYPE.cup * scale * LEADING + textHeight(content.cautions, TYPE.cautions * scale, width - beside - 4, 0.3);
      return Math.max(text, content.address === undefined ? 0 : QR + 3) + 3 * scale;
    }
  }
}

function headHeight(content: CardContent, { width, scale }: Measure): number {
  const title = lineCount(content.title, TYPE.title * scale, width, 'title') * TYPE.title * scale * 1.15;
  return SWATCH + title + lineCount(content.batch, TYPE.batch * scale, width) * TYPE.batch * scale * LEADING + 4;
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
  const after = textHeight(cup.notes, TYPE.small * measure.scale, measure.width, 0.8 * measure.scale);
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

/** Room for blocks on a side of the paper, below its head. */
function room(content: CardContent, format: CardFormat, measure: Measure, first: boolean): number {
  const height = format.heightMm - 2 * TYPE.margin - FOOT;
  return height - (first ? headHeight(content, measure) : NEXT_HEAD);
}

function measureOf(format: CardFormat, step: number): Measure {
  return { width: format.widthMm - 2 * TYPE.margin, scale: TYPE_STEPS[step]! };
}

/** What may stand below the cups of an earlier side than the rest of it, where that saves a side; undefined: all in order. */
type Early = 'steps' | 'cautions' | undefined;
const EARLY: readonly Early[] = [undefined, 'cautions', 'steps'];

/** Blocks in order, a new side where one has no room. */
function flow(content: CardContent, format: CardFormat, step: number, early: Early): readonly (readonly CardBlock[])[] {
  const measure = measureOf(format, step);
  const onFirst = room(content, format, measure, true);
  const onNext = room(content, format, measure, false);
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

/** The largest type in which a side's blocks fit; the smallest where none does. */
function largestStep(content: CardContent, format: CardFormat, blocks: readonly CardBlock[], first: boolean): number {
  const fits = TYPE_STEPS.findIndex((_, step) => {
    const measure = measureOf(format, step);
    const needed = blocks.reduce((sum, block) => sum + blockHeight(block, content, measure), 0);
    return needed <= room(content, format, measure, first);
  });
  return fits < 0 ? TYPE_STEPS.length - 1 : fits;
}

/**
 * Fits a card: on one side if the type stays large, else on the two sides that a card has, if need be with the cautions or the order of work
 * below the first cup, else on as many as it takes.
 */
export function fitCard(content: CardContent, format: CardFormat): FittedCard {
  const steps = Array.from({ length: SMALLEST_STEP + 1 - USUAL_STEP }, (_, index) => USUAL_STEP + index);
  const flows = EARLY.flatMap((early) =>
    steps.map((step) => ({ step, early, sides: flow(content, format, step, early) })),
  );
  const fewest = Math.max(2, Math.min(...flows.map(({ sides }) => sides.length)));
  const short = flows.filter(({ sides: { length } }) => length <= fewest);
  const { sides } =
    flows.find(
      ({ step, early, sides: { length } }) => early === undefined && step <= SMALLEST_FOR_ONE && length === 1,
    ) ??
    short.find((each) => !each.sides.some(hasStrayRows)) ??
    short[0]!;
  return {
    content,
    format,
    sides: sides.map((blocks, index) => ({ blocks, step: largestStep(content, format, blocks, index === 0) })),
  };
}
