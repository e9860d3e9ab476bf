/**
 * A planned batch in the address of its page, so that it is there again after a reload and can be handed on.
 *
 * @packageDocumentation
 */
import { baitsFrom, type PlanLine } from './planned-batch.ts';

/** A line of the plan page. */
export interface ColourLine extends PlanLine {
  readonly recipe: string;
}

/** What there is in the book, by name. */
export interface Plannable {
  readonly recipes: ReadonlySet<string>;
  readonly molds: ReadonlySet<string>;
}

// More colours at once than anybody pours: convention of this book.
const MOST_LINES = 100;

/** The query of a recipe's page; nothing for the batch that the page shows by itself. */
export function batchQuery({ baits, mold }: PlanLine, usual: PlanLine): string {
  const query = new URLSearchParams();
  if (baits !== usual.baits) query.set('baits', String(baits));
  if (mold !== usual.mold) query.set('mold', mold);
  return query.toString();
}

/** The batch that the address of a recipe's page asks for; the usual one in whatever it does not say, or says amiss. */
export function batchAsked(query: URLSearchParams, usual: PlanLine, molds: ReadonlySet<string>): PlanLine {
  const mold = query.get('mold');
  return {
    baits: baitsFrom(query.get('baits') ?? '') ?? usual.baits,
    mold: mold !== null && molds.has(mold) ? mold : usual.mold,
  };
}

/** The query of the plan page. Names hold no point, which therefore stands between them. */
export function planQuery(lines: readonly ColourLine[]): string {
  return new URLSearchParams(lines.map(({ recipe, mold, baits }) => ['line', `${recipe}.${mold}.${baits}`])).toString();
}

/** The lines that the address of the plan page asks for, without those that the book does not have. */
export function linesAsked(query: URLSearchParams, { recipes, molds }: Plannable): readonly ColourLine[] {
  const lines = query.getAll('line').flatMap((text) => {
    const [recipe = '', mold = '', count = '', ...more] = text.split('.');
    const baits = baitsFrom(count);
    return baits !== undefined && more.length === 0 && recipes.has(recipe) && molds.has(mold)
      ? [{ recipe, mold, baits }]
      : [];
  });
  return lines.slice(0, MOST_LINES);
}

/** Shows a query in the address, without a new step in the history. What the address says of a place in the page stays. */
export function showInAddress(query: string): void {
  history.replaceState(history.state, '', `${location.pathname}${query === '' ? '' : `?${query}`}${location.hash}`);
}
