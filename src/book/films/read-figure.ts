import type { FilmsFault, FilmsFinding } from './films-finding.ts';

/** Tells of a line of a table. */
export type Tell = (
  severity: FilmsFinding['severity'],
  line: number | undefined,
  fault: FilmsFault,
  fix?: string,
) => void;

/** What a column of single figures holds. */
export interface FigureColumn {
  readonly name: string;
  readonly unit: string;
  readonly least: number;
  readonly most: number;
}

// Films of any paint: what the fit can compute with.
export const THICKNESS: FigureColumn = { name: 'thickness', unit: 'mm', least: 1e-6, most: 10_000 };

// Nothing is denser than osmium, 22.6.
export const DENSITY: FigureColumn = { name: 'density', unit: 'g/ml', least: 0.01, most: 23 };

/** The figure of a cell; undefined where it is empty. Told where it is no number, or out of range. */
export function readFigure(
  cell: string,
  { name, unit, least, most }: FigureColumn,
  line: number,
  tell: Tell,
): number | undefined {
  if (cell === '') return undefined;
  const figure = Number(cell);
  if (figure >= least && figure <= most) return figure;
  const [, number, after = ''] = /^(\d+(?:[.,]\d+)?)\s*(\S*)$/.exec(cell) ?? [];
  const isPlain = number !== undefined && ['', unit].includes(after.toLowerCase());
  tell(
    'error',
    line,
    { found: `${name} \`${cell}\``, expected: `a number above 0, at most ${most}`, cell },
    isPlain ? `write \`${number.replace(',', '.')}\`` : undefined,
  );
  return figure;
}
