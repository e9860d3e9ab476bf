import type { Edit } from './edit.ts';
import { type Dimension, UNITS, unitOf } from './unit.ts';

const IN_WORDS: ReadonlyMap<string, string> = new Map([
  ['a', '1'],
  ['an', '1'],
  ['one', '1'],
  ['two', '2'],
  ['three', '3'],
  ['four', '4'],
  ['five', '5'],
  ['six', '6'],
  ['half', '1/2'],
  ['half a', '1/2'],
  ['half an', '1/2'],
  ['quarter', '1/4'],
  ['a quarter', '1/4'],
]);

/** The number that a word stands for, in figures. */
export function inFigures(word: string): string | undefined {
  return IN_WORDS.get(word.toLowerCase());
}

/** Units of which one is meant where no number stands before them. */
const COUNTED: ReadonlySet<string> = new Set(['drop', 'pinch', 'dash', 'smidgen']);

/**
 * The edit for an amount whose number is a word, or is left out before something that one counts: `one pinch`, `pinch`.
 *
 * @example figuresEdit('half a tsp', ['volume']) // { text: '1/2 tsp' }
 */
export function figuresEdit(text: string, dimensions: readonly Dimension[]): Edit | undefined {
  const [, word, spelling = ''] =
    /^(?:((?:half|a quarter)(?: an?)?|[a-z]+)\s+(?:of an?\s+)?)?(\S.*)$/i.exec(text) ?? [];
  const unit = unitOf(spelling);
  if (unit === undefined || !dimensions.includes(UNITS[unit].dimension)) return undefined;
  const one = COUNTED.has(spelling.toLowerCase()) ? '1' : undefined;
  const number = word === undefined ? one : inFigures(word);
  return number === undefined ? undefined : { text: `${number} ${spelling}` };
}
