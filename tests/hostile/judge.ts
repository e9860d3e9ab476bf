import type { LeftOut } from '../../src/book/left-out.ts';
import type { Edition } from '../../src/book/model/publish.ts';
import type { Book } from '../../src/book/model.ts';
import { EDITIONS } from '../../src/book/publish/editions.ts';

import type { Diagnostic, Position } from '../../src/diagnostics/diagnostic.ts';
import type { Source } from '../../src/recipe/source.ts';
import { reportText } from '../../src/shell/report.ts';
import { sightsOf } from './page-faults.ts';
import { HIDDEN, SOUND_BOOK } from './sound-book.ts';

/** What a book came to, as the commands have it. */
export interface Tried {
  readonly book: Book | undefined;
  /** Whether it builds; else the book is what is sound of it. */
  readonly complete: boolean;
  readonly leftOut?: readonly LeftOut[];
  readonly diagnostics: readonly Diagnostic[];
  readonly sources: readonly Source[];
}

/** CPU seconds that a book of a few pages may take at most, on a slow machine too: what stalls takes minutes. */
const MOST_SECONDS = 10;

/** What no book may bring about, whatever is in it, `[]` where nothing of that happened: every finding leads to its place and can be printed. */
export function faultsOf({ diagnostics, leftOut = [], sources, book }: Tried): readonly string[] {
  const texts = new Map(sources.map(({ path, text }) => [path, text.split(/\n/)]));
  const faults: string[] = [];
  const place = (file: string, { line, column }: Position, code: string): void => {
    const lines = texts.get(file) ?? [''];
    const width = lines[line - 1]?.length;
    if (texts.has(file) ? width === undefined || column < 1 || column > width + 1 : line < 1 || column < 1)
      faults.push(`${code} is outside ${file}: ${line}:${column}`);
  };
  for (const { code, file, start, end, found, expected, why = '', fix = '', related = [] } of diagnostics) {
    place(file, start, code);
    if (end) place(file, end, code);
    if (end && (end.line < start.line || (end.line === start.line && end.column < start.column)))
      faults.push(`${code} ends before it begins`);
    for (const other of related) place(other.file, other.start, code);
    for (const text of [found, expected, why, fix])
      if (/\[object |\bundefined\b|\bNaN\b/.test(text) && !written(text, sources)) faults.push(`${code} says: ${text}`);
    if (found.trim() === '' || expected.trim() === '') faults.push(`${code} says nothing`);
  }
  const report = reportText({ diagnostics, leftOut, sources });
  // biome-ignore lint/suspicious/noControlCharactersInRegex: what a terminal takes for an order
  if (/[\u0000-\u0008\u000b-\u001f\u007f-\u009f]/.test(report)) faults.push('the report holds a control character');
  faults.push(...notFinite(book, 'book'));
  if (({} as { polluted?: unknown }).polluted !== undefined) faults.push('the prototype of all objects was changed');
  return faults;
}

/** The same for the pages and files of an edition of a book that builds. Readers of the shared one see nothing of what is hidden either. */
export async function faultsOfSite({ book, complete, sources }: Tried, edition: Edition): Promise<readonly string[]> {
  if (book === undefined || !complete) return [];
  const unmeant = ['NaN', 'undefined', '[object Object]', 'Infinity'].filter(
    (word) => !sources.some(({ text }) => text.toLowerCase().includes(word.toLowerCase())),
  );
  const secrets = edition === 'mine' ? [] : HIDDEN.filter((word) => isHidden(word, sources));
  const words = [
    ...unmeant.map((word) => [word, new RegExp(word.replaceAll(/[[\]]/g, '\\$&'))] as const),
    ...secrets.map((word) => [word, new RegExp(word, 'i')] as const),
  ];
  return sightsOf(EDITIONS[edition](book), new Map(words));
}

/** Whether a word of what is hidden stands there alone, as in the sound book. */
function isHidden(word: string, sources: readonly Source[]): boolean {
  return sources.every(
    ({ path, text }) => text === SOUND_BOOK[path] || !`${path} ${text}`.toLowerCase().includes(word),
  );
}

/** Whether a word that a program would write stands in a file of the maker's, or is what the file says: YAML writes `.nan`. */
function written(text: string, sources: readonly Source[]): boolean {
  const files = sources.map((source) => `${source.path} ${source.text}`.toLowerCase());
  return ['[object ', 'undefined', 'nan'].every(
    (word) => !text.toLowerCase().includes(word) || files.some((other) => other.includes(word)),
  );
}

function notFinite(value: unknown, path: string): readonly string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${path} is ${value}`];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, inner]) => notFinite(inner, `${path}.${name}`));
}

/** Does something, and tells if it took this process longer than any book may. */
export async function bounded<T>(act: () => T | Promise<T>): Promise<T> {
  const before = process.cpuUsage();
  const result = await act();
  const { user, system } = process.cpuUsage(before);
  const seconds = (user + system) / 1e6;
  if (seconds > MOST_SECONDS) throw new Error(`it took ${seconds.toFixed(1)} s of a processor`);
  return result;
}
