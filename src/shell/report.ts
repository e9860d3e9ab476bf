import type { LeftOut } from '../book/left-out.ts';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import { formatDiagnostics, summarizeDiagnostics } from '../diagnostics/format-diagnostics.ts';
import type { LoadedBook } from './load-book.ts';
import { printable } from './printable.ts';

/** The diagnostics of a folder as text for a terminal, ending in a line that counts them. */
export function reportText({
  diagnostics,
  leftOut,
  sources,
}: Pick<LoadedBook, 'diagnostics' | 'leftOut' | 'sources'>): string {
  const texts = new Map(sources.map(({ path, text }) => [path, text]));
  const found = diagnostics.length === 0 ? '' : `${formatDiagnostics(diagnostics, texts)}\n`;
  return printable(`${found}${waitingText(leftOut)}${summarizeDiagnostics(diagnostics, filesIn(diagnostics, texts))}`);
}

/** How many files wait to be filled in, as a line; empty where none does. */
function waitingText(leftOut: readonly LeftOut[]): string {
  const waiting = leftOut.filter(({ why, lines }) => why === 'to-fill-in' && lines === undefined);
  const own = waiting.filter(({ needs }) => needs.length === 0).length;
  if (own === 0) return '';
  const others = waiting.length - own;
  const one = own === 1;
  const besides =
    others === 0 ? '' : `, and ${others} more ${others === 1 ? 'waits' : 'wait'} for ${one ? 'it' : 'them'}`;
  return `${own} ${one ? 'file waits' : 'files wait'} to be filled in${besides}; until then ${waiting.length === 1 ? 'it is' : 'they are'} not in the book.\n`;
}

function filesIn(diagnostics: readonly Diagnostic[], texts: ReadonlyMap<string, string>): number {
  return new Set([...texts.keys(), ...diagnostics.map(({ file }) => file)]).size;
}
