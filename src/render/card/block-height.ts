/**
 * Heights of the parts of a card, from the widths of the letters in them; a test prints the cards and finds nothing higher.
 * Units: mm.
 *
 * @packageDocumentation
 */
import type { StepWords } from '../../patterns/pattern.ts';
import {
  ABOVE,
  BELOW_TITLE,
  COLUMNS,
  FOOT,
  LEADING,
  LIST,
  LOWER,
  MARGIN,
  PICTURE,
  PLATE,
  ROW,
  TITLE_LEADING,
  TYPE,
  WRITTEN,
} from './card-type.ts';
import type { CardContent, CardCup, CardRow } from './content.ts';
import { lineCount, linesOf, type Run } from './text-lines.ts';

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
  | { readonly kind: 'steps'; readonly steps: readonly StepWords[]; readonly from: number }
  | { readonly kind: 'cautions' };

/** Width of the text on paper of this width. */
export function textWidthOf(widthMm: number): number {
  return widthMm - 2 * MARGIN.side;
}

/** Names of cups and what else is fat stands in words of a step. */
function stepRuns(step: StepWords): readonly Run[] {
  return step.map((part) =>
    typeof part === 'string'
      ? { text: part, size: TYPE.steps }
      : { text: part.cup, size: TYPE.steps, type: 'bold' as const },
  );
}

/** A row of a cup. */
export function rowHeight({ measure, weighs, name, note, weight }: CardRow, width: number): number {
  const column = (part: number): number => width * part - COLUMNS.gap;
  const measured: readonly Run[] = [
    { text: measure, size: TYPE.measure, type: 'bold' },
    ...(weighs === undefined ? [] : [{ text: ` ${weighs}`, size: TYPE.small }]),
  ];
  const lines = (text: string, size: number, room: number): number => lineCount(text, size, room) * size * LEADING;
  const named = (room: number): number =>
    lines(name, TYPE.name, room) + (note === undefined ? 0 : lines(note, TYPE.small, room));
  const lower = (size: number): number => LOWER * (TYPE.measure - size);
  const heights = [
    linesOf(measured, column(COLUMNS.measure)) * TYPE.measure * LEADING,
    lower(TYPE.name) + named(weight === undefined ? width * (COLUMNS.name + COLUMNS.weight) : column(COLUMNS.name)),
    weight === undefined ? 0 : lower(TYPE.weight) + lines(weight, TYPE.weight, width * COLUMNS.weight),
  ];
  return Math.max(...heights) + ROW.above + ROW.below + ROW.line;
}

/** The heading of a cup. */
export function cupHeadHeight({ name, share, split }: CardCup, continued: boolean, width: number): number {
  const lines = linesOf(
    [
      { text: `${name}${continued ? ', continued' : ''} `, size: TYPE.cup, type: 'bold' },
      { text: `${share}${split === undefined ? '' : ', '}`, size: TYPE.small },
      { text: split ?? '', size: TYPE.small, type: 'bold' },
    ],
    // The dot in the cup’s colour stands before it.
    width - TYPE.cup - 1.5,
  );
  return ABOVE.cup + lines * TYPE.cup * LEADING + ABOVE.heading + 0.4;
}

/** What is to be known of a cup, below its last row. */
export function notesHeight(notes: readonly string[], width: number): number {
  return notes.reduce((sum, note) => sum + 0.6 + lineCount(note, TYPE.small, width) * TYPE.small * LEADING, 0);
}

/** Of a part with a heading and a list, without the list. */
export function listHeadHeight(): number {
  return ABOVE.block + TYPE.cup * LEADING;
}

/** One step of the order of work. */
export function stepHeight(step: StepWords, width: number): number {
  return linesOf(stepRuns(step), width - LIST.indent) * TYPE.steps * LEADING + LIST.between;
}

/** The heat in fat letters. */
export function heatHeight(heat: readonly string[], width: number): number {
  return ABOVE.block + lineCount(heat.join(' '), TYPE.steps, width, 'bold') * TYPE.steps * LEADING;
}

/** The cautions one after the other, with their name before them. */
function cautionsHeight(cautions: readonly string[], width: number): number {
  const name: Run = { text: 'Cautions ', size: TYPE.cup, type: 'bold' };
  const lines = linesOf([name, { text: cautions.join(' '), size: TYPE.small }], width);
  return ABOVE.block + TYPE.cup * LEADING + (lines - 1) * TYPE.small * LEADING;
}

/** All of a block. */
export function blockHeight(block: CardBlock, content: Pick<CardContent, 'heat' | 'cautions'>, width: number): number {
  switch (block.kind) {
    case 'cup':
      return (
        cupHeadHeight(block.cup, block.continued, width) +
        block.rows.reduce((sum, row) => sum + rowHeight(row, width), 0) +
        notesHeight(block.notes, width)
      );
    case 'heat':
      return heatHeight(content.heat, width);
    case 'steps':
      return block.steps.reduce((sum, step) => sum + stepHeight(step, width), listHeadHeight());
    case 'cautions':
      return cautionsHeight(content.cautions, width);
  }
}

/** The head of every side: name and batch, beside the plate with the maximum temperature. */
function headHeight({ title, batch, limit, mark }: CardContent, width: number): number {
  const beside = width - PLATE.width - PLATE.gap;
  const marked: readonly Run[] =
    mark === undefined ? [] : [{ text: `${mark}  `, size: TYPE.small * 1.2, type: 'bold' }];
  const words =
    lineCount(title, TYPE.title, beside, 'title') * TYPE.title * TITLE_LEADING +
    BELOW_TITLE +
    linesOf([...marked, { text: batch, size: TYPE.small }], beside) * TYPE.small * LEADING +
    (mark === undefined ? 0 : 1.2) +
    WRITTEN;
  const inside = PLATE.width - 2 * (PLATE.padding + PLATE.border);
  const plate =
    lineCount(limit.words, TYPE.small, inside) * TYPE.small * LEADING +
    (limit.temperature === undefined
      ? 0
      : lineCount(limit.temperature, TYPE.limit, inside, 'bold') * TYPE.limit * 1.1) +
    2 * (PLATE.padding + PLATE.border);
  return Math.max(words, plate);
}

/** Room for blocks on a side of the paper, between its head and its foot. */
export function room(
  content: CardContent,
  format: { readonly widthMm: number; readonly heightMm: number },
  first: boolean,
): number {
  const head = headHeight(content, textWidthOf(format.widthMm));
  const picture = first ? PICTURE.height + PICTURE.below : 0;
  return format.heightMm - MARGIN.top - MARGIN.bottom - FOOT - head - picture;
}
