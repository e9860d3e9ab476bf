/**
 * Fits the content of a card to its paper: as few sides as will do, in the largest type that they allow.
 *
 * Heights are estimated from the letters, on the safe side; a test prints the cards and finds nothing cut off.
 * Units: mm.
 *
 * @packageDocumentation
 */
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
export const TYPE_STEPS = [1, 0.9, 0.8, 0.7] as const;

/** Sizes at step 0; the style sheet has the same. */
const TYPE = {
  margin: 5.5,
  title: 7,
  batch: 3.5,
  cup: 4.4,
  measure: 5,
  name: 4.4,
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
/** Widths of letters, as parts of their size: generous means of our type, regular and bold. */
const LETTER = 0.53;
const BOLD = 0.58;
/** Column of the measures, as a part of the width; the style sheet has the same. */
const MEASURE_COLUMN = 0.44;

/** Part of a card's content that stays together. */
export type CardBlock =
  | { readonly kind: 'cup'; readonly cup: CardCup; readonly rows: readonly CardRow[]; readonly continued: boolean }
  | { readonly kind: 'heat' }
  | { readonly kind: 'steps' }
  | { readonly kind: 'cautions' };

export interface FittedCard {
  readonly content: CardContent;
  readonly format: CardFormat;
  /** Index into `TYPE_STEPS`. */
  readonly step: number;
  readonly sides: readonly (readonly CardBlock[])[];
}

/** Lines that a text takes in a width, broken between words; a word that is too long is broken too. */
export function lineCount(text: string, size: number, width: number, letter: number = LETTER): number {
  const room = Math.max(1, Math.floor(width / (size * letter)));
  let lines = 1;
  let used = 0;
  for (const word of text.split(/\s+/)) {
    const length = [...word].length;
    if (used > 0 && used + 1 + length <= room) used += 1 + length;
    else {
      if (used > 0) lines++;
      lines += Math.ceil(length / room) - 1;
      used = length > room ? length % room || room : length;
    }
  }
  return lines;
}

interface Measure {
  readonly width: number;
  readonly scale: number;
}

function rowHeight(row: CardRow, { width, scale }: Measure): number {
  const measure =
    lineCount(row.measure, TYPE.measure * scale, width * MEASURE_COLUMN - 2, BOLD) * TYPE.measure * scale * LEADING;
  const weight = row.weight === undefined ? 0 : TYPE.small * scale * LEADING;
  const name = lineCount(row.name, TYPE.name * scale, width * (1 - MEASURE_COLUMN) - 1) * TYPE.name * scale * LEADING;
  return Math.max(measure, name + weight) + 1.5 * scale;
}

function cupHeadHeight(cup: CardCup, { width, scale }: Measure): number {
  const head = lineCount(`${cup.name}  ${cup.share} ${cup.split ?? ''}`, TYPE.cup * scale, width - 6, BOLD);
  return head * TYPE.cup * scale * LEADING + 3.4 * scale;
}

function textHeight(texts: readonly string[], size: number, width: number, gap: number): number {
  return texts.reduce((sum, text) => sum + lineCount(text, size, width) * size * LEADING + gap, 0);
}

function blockHeight(block: CardBlock, content: CardContent, measure: Measure): number {
  const { width, scale } = measure;
  switch (block.kind) {
    case 'cup':
      return cupHeadHeight(block.cup, measure) + block.rows.reduce((sum, row) => sum + rowHeight(row, measure), 0);
    case 'heat':
      return (
        lineCount(content.heat.join(' '), TYPE.cup * scale, width - 4, BOLD) * TYPE.cup * scale * LEADING + 5 * scale
      );
    case 'steps':
      return TYPE.cup * scale * LEADING + textHeight(content.steps, TYPE.steps * scale, width - 6, 0.6) + 3 * scale;
    case 'cautions': {
      const beside = content.address === undefined ? 0 : QR + 3;
      const text =
        TYPE.cup * scale * LEADING + textHeight(content.cautions, TYPE.cautions * scale, width - beside - 4, 0.3);
      return Math.max(text, content.address === undefined ? 0 : QR + 3) + 3 * scale;
    }
  }
}

function headHeight(content: CardContent, { width, scale }: Measure): number {
  const title = lineCount(content.title, TYPE.title * scale, width, 0.62) * TYPE.title * scale * 1.15;
  return SWATCH + title + lineCount(content.batch, TYPE.batch * scale, width) * TYPE.batch * scale * LEADING + 4;
}

/** Splits a cup over sides where even a side of its own is too short for it. */
function cupBlocks(cup: CardCup, roomOnSide: number, measure: Measure): readonly CardBlock[] {
  const blocks: CardBlock[] = [];
  let rows: CardRow[] = [];
  let used = cupHeadHeight(cup, measure);
  for (const row of cup.rows) {
    const height = rowHeight(row, measure);
    if (rows.length > 0 && used + height > roomOnSide) {
      blocks.push({ kind: 'cup', cup, rows, continued: blocks.length > 0 });
      rows = [];
      used = cupHeadHeight(cup, measure);
    }
    rows.push(row);
    used += height;
  }
  return [...blocks, { kind: 'cup', cup, rows, continued: blocks.length > 0 }];
}

function flow(content: CardContent, format: CardFormat, scale: number): readonly (readonly CardBlock[])[] {
  const measure: Measure = { width: format.widthMm - 2 * TYPE.margin, scale };
  const height = format.heightMm - 2 * TYPE.margin - FOOT;
  const onFirst = height - headHeight(content, measure);
  const onNext = height - NEXT_HEAD;
  const blocks: readonly CardBlock[] = [
    ...content.cups.flatMap((cup) => cupBlocks(cup, Math.min(onFirst, onNext), measure)),
    ...(content.heat.length > 0 ? [{ kind: 'heat' } as const] : []),
    { kind: 'steps' },
    { kind: 'cautions' },
  ];
  const sides: CardBlock[][] = [[]];
  let left = onFirst;
  for (const block of blocks) {
    const needed = blockHeight(block, content, measure);
    if (needed > left && (sides.at(-1)!.length > 0 || sides.length === 1)) {
      sides.push([]);
      left = onNext;
    }
    sides.at(-1)!.push(block);
    left -= needed;
  }
  return sides;
}

/** The least type that is still read at arm's length, for a card that would else need another side. */
const SMALLEST_TO_SAVE_A_SIDE = 2;

/** Fits a card. */
export function fitCard(content: CardContent, format: CardFormat): FittedCard {
  const flows = TYPE_STEPS.map((scale) => flow(content, format, scale));
  const fewest = Math.min(...flows.slice(0, SMALLEST_TO_SAVE_A_SIDE + 1).map((sides) => sides.length));
  const step = flows.findIndex((sides) => sides.length === fewest);
  return { content, format, step, sides: flows[step]! };
}
