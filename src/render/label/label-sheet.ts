/**
 * Sheets of labels for bags, in sizes in which stationers sell them: common practice, from memory, no source.
 *
 * Units: mm.
 *
 * @packageDocumentation
 */

const INCH = 25.4;

/** A sheet of labels; the style sheet knows it by its name. */
export interface LabelSheet {
  readonly name: '70x37' | '63x38' | '99x57' | '99x68' | '4x1' | '4x2' | '4x3';
  readonly paper: 'A4' | 'Letter';
  /** Of a label, as the packet says it. */
  readonly size: string;
  readonly columns: number;
  readonly rows: number;
  readonly widthMm: number;
  readonly heightMm: number;
  /** Where the first label lies, from the paper’s left top corner, and what lies between two columns. */
  readonly leftMm: number;
  readonly topMm: number;
  readonly gapMm: number;
  /** Path of its page below that of all labels. */
  readonly path: string;
}

/** The first of each paper is the one that is offered first. */
export const LABEL_SHEETS: readonly LabelSheet[] = [
  {
    name: '70x37',
    paper: 'A4',
    size: '70 × 37 mm',
    columns: 3,
    rows: 8,
    widthMm: 70,
    heightMm: 37,
    leftMm: 0,
    topMm: 0.5,
    gapMm: 0,
    path: '',
  },
  {
    name: '63x38',
    paper: 'A4',
    size: '63.5 × 38.1 mm',
    columns: 3,
    rows: 7,
    widthMm: 63.5,
    heightMm: 38.1,
    leftMm: 7.25,
    topMm: 15.15,
    gapMm: 2.5,
    path: '63x38/',
  },
  {
    name: '99x57',
    paper: 'A4',
    size: '99.1 × 57 mm',
    columns: 2,
    rows: 5,
    widthMm: 99.1,
    heightMm: 57,
    leftMm: 4.65,
    topMm: 6,
    gapMm: 2.5,
    path: '99x57/',
  },
  {
    name: '99x68',
    paper: 'A4',
    size: '99.1 × 67.7 mm',
    columns: 2,
    rows: 4,
    widthMm: 99.1,
    heightMm: 67.7,
    leftMm: 4.65,
    topMm: 13.1,
    gapMm: 2.5,
    path: '99x68/',
  },
  {
    name: '4x1',
    paper: 'Letter',
    size: '4 × 1 1/3 in',
    columns: 2,
    rows: 7,
    widthMm: 4 * INCH,
    heightMm: (4 / 3) * INCH,
    leftMm: (5 / 32) * INCH,
    topMm: (5 / 6) * INCH,
    gapMm: (3 / 16) * INCH,
    path: 'letter/',
  },
  {
    name: '4x2',
    paper: 'Letter',
    size: '4 × 2 in',
    columns: 2,
    rows: 5,
    widthMm: 4 * INCH,
    heightMm: 2 * INCH,
    leftMm: (5 / 32) * INCH,
    topMm: INCH / 2,
    gapMm: (3 / 16) * INCH,
    path: 'letter/4x2/',
  },
  {
    name: '4x3',
    paper: 'Letter',
    size: '4 × 3 1/3 in',
    columns: 2,
    rows: 3,
    widthMm: 4 * INCH,
    heightMm: (10 / 3) * INCH,
    leftMm: (5 / 32) * INCH,
    topMm: INCH / 2,
    gapMm: (3 / 16) * INCH,
    path: 'letter/4x3/',
  },
];

/** Labels of a sheet. */
export function labelsOn({ columns, rows }: Pick<LabelSheet, 'columns' | 'rows'>): number {
  return columns * rows;
}
