import type { BookResult } from '../book-result.ts';
import { CONDITIONS } from '../conditions.ts';
import { interval } from './bootstrap.ts';
import { type Figure, GOAL_ROWS, type Goal, type Row, tellingRows } from './rows.ts';

/** The table of what is to be reached, then what else is known of each condition, as lines of text. */
export function tableOf(results: readonly BookResult[]): readonly string[] {
  const of = (condition: string): readonly BookResult[] => results.filter((each) => each.condition === condition);
  const goals = GOAL_ROWS.flatMap((row) => goalLines(row, of(row.condition)));
  return [
    'row | figure | to reach | came | 80 % of such books | reached',
    ...goals,
    ...CONDITIONS.flatMap(({ name, says }) => {
      const books = of(name);
      return books.length === 0 ? [] : ['', headOf(`${name}: ${says}`, books), ...tellingLines(name, books)];
    }),
  ];
}

function headOf(says: string, books: readonly BookResult[]): string {
  const seconds = books.map(({ cpuSeconds }) => cpuSeconds);
  const compared = books.reduce((sum, { commandsCompared }) => sum + commandsCompared, 0);
  const seeds = books.map(({ seed, recipes }) => `${seed} (${recipes})`).join(', ');
  const minutes = seconds.reduce((sum, each) => sum + each, 0) / 60;
  return `${says}; ${books.length} books, seeds (recipes) ${seeds}; ${minutes.toFixed(1)} min of a processor; ${compared} answers compared with the commands`;
}

function goalLines({ condition, says, figures }: Row, books: readonly BookResult[]): readonly string[] {
  return figures.map((figure) => {
    const value = figureOf(figure, books, condition);
    const line = [`${says} [${condition}, ${books.length}]`, figure.says, goalText(figure), shown(value, figure)];
    if (Number.isNaN(value)) return [...line, '', 'not known'].join(' | ');
    const [low, high] = interval(figure.of, books);
    const reached = figure.goal === undefined ? '' : isReached(figure.goal, low, high) ? 'yes' : 'NO';
    return [...line, `${shown(low, figure)} … ${shown(high, figure)}`, reached].join(' | ');
  });
}

/** Of chips that nobody has asked for there is no figure. */
function figureOf({ of }: Figure, books: readonly BookResult[], condition: string): number {
  const isThere = books.length > 0 && (condition !== 'chips' || books.every(({ chips = 0 }) => chips > 0));
  return isThere ? of(books) : Number.NaN;
}

function tellingLines(condition: string, books: readonly BookResult[]): readonly string[] {
  const rows = tellingRows(condition).flatMap(({ says, figures }) => {
    const known = figures
      .map((figure) => [figure, figure.of(books)] as const)
      .filter(([, value]) => !Number.isNaN(value));
    const parts = known.map(([figure, value]) => `${figure.says} ${shown(value, figure)}`);
    return parts.length === 0 ? [] : [`  ${says}: ${parts.join(', ')}`];
  });
  const ends = new Map<string, number>();
  for (const { ended } of books.flatMap(({ courses }) => courses)) ends.set(ended, (ends.get(ended) ?? 0) + 1);
  const ended = [...ends].sort(([, one], [, other]) => other - one).map(([end, count]) => `${end} ${count}`);
  return [...rows, ...(ended.length === 0 ? [] : [`  courses ended: ${ended.join(', ')}`])];
}

function isReached(goal: Goal, low: number, high: number): boolean {
  if ('most' in goal) return low <= goal.most;
  if ('least' in goal) return high >= goal.least;
  return low <= goal.to && high >= goal.from;
}

function goalText({ goal, unit }: Figure): string {
  if (goal === undefined) return '';
  const of = unit === undefined ? '' : ` ${unit}`;
  if ('most' in goal) return `≤ ${goal.most}${of}`;
  return 'least' in goal ? `≥ ${goal.least}${of}` : `${goal.from}–${goal.to}${of}`;
}

function shown(value: number, { unit }: Figure): string {
  if (Number.isNaN(value)) return 'not said';
  if (value === Number.POSITIVE_INFINITY) return 'never';
  return unit === '%' ? `${value.toFixed(value < 10 ? 1 : 0)} %` : value.toFixed(2).replace(/\.00$/, '');
}
