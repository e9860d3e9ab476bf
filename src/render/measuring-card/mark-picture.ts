import { CODE_CELLS, markCells } from '../../measuring-card/mark-cells.ts';
import type { Mark } from '../../measuring-card/measuring-card.ts';
import { type Html, html } from '../html.ts';

/** A mark as it is printed: a black square, and on it the white cells of its code. */
export function markPicture({ id, x, y, width }: Mark): Html {
  const cell = width / (CODE_CELLS + 2);
  const cells = markCells(id);
  const across = cells.flatMap((row, at) => runs(row).map(([from, to]) => box(from, at, to, at + 1)));
  // Once more downwards: where two runs meet side by side, a screen would let the black shine through.
  const columns = cells.map((_, column) => cells.map((row) => row[column]!));
  const down = columns.flatMap((column, at) => runs(column).map(([from, to]) => box(at, from, at + 1, to)));
  return html`<path d="M${x} ${y}h${width}v${width}h-${width}z"/><path fill="#fff" transform="translate(${x + cell} ${y + cell}) scale(${cell})" d="${[...across, ...down].join('')}"/>`;
}

/** Where white begins and where it ends, in cells. */
function runs(cells: readonly boolean[]): readonly (readonly [from: number, to: number])[] {
  const found: [number, number][] = [];
  for (const [at, white] of cells.entries()) {
    if (!white) continue;
    const last = found.at(-1);
    if (last?.[1] === at) last[1] = at + 1;
    else found.push([at, at + 1]);
  }
  return found;
}

function box(left: number, top: number, right: number, bottom: number): string {
  return `M${left} ${top}H${right}V${bottom}H${left}z`;
}
