/**
 * Heights of the parts of a card, estimated from their letters, on the safe side; a test prints the cards and finds nothing cut off.
 * Units: mm.
 *
 * @packageDocumentation
 */
import { stepText } from '../../words/step-text.ts';
import type { CardContent, CardCup, CardRow } from './content.ts';
import { lineCount, type Type, textWidth } from './text-lines.ts';

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

/** Width of the text, mm, and scale of its type. */
export interface Measure {
  readonly width: number;
  readonly scale: number;
}

/** A row of a cup. */
export function rowHeight(row: CardRow, { width, scale }: Measure): number {
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

/** The heading of a cup. */
export function cupHeadHeight(cup: CardCup, { width, scale }: Measure): number {
  const head = lineCount(`${cup.name}  ${cup.share} ${cup.split ?? ''}`, TYPE.cup * scale, width - 6, 'bold');
  return head * TYPE.cup * scale * LEADING + 3.4 * scale;
}

/** What is to be known of a cup, below its last row. */
export function notesHeight(notes: readonly string[], { width, scale }: Measure): number {
  return textHeight(notes, TYPE.small * scale, width, 0.8 * scale);
}

function textHeight(texts: readonly string[], size: number, width: number, gap: number): number {
  return texts.reduce((sum, text) => sum + lineCount(text, size, width) * size * LEADING + gap, 0);
}

/** All of a block. */
export function blockHeight(block: CardBlock, content: CardContent, measure: Measure): number {
  const { width, scale } = measure;
  switch (block.kind) {
    case 'cup':
      return (
        cupHeadHeight(block.cup, measure) +
        block.rows.reduce((sum, row) => sum + rowHeight(row, measure), 0) +
        notesHeight(block.notes, measure)
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

/** Room for blocks on a side of the paper, below its head. */
export function room(content: CardContent, heightMm: number, measure: Measure, first: boolean): number {
  const height = heightMm - 2 * TYPE.margin - FOOT;
  return height - (first ? headHeight(content, measure) : NEXT_HEAD);
}

/** What a card of this width is measured by, in type of this scale. */
export function measureOf(widthMm: number, scale: number): Measure {
  return { width: widthMm - 2 * TYPE.margin, scale };
}
