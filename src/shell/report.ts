import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import { formatDiagnostics, summarizeDiagnostics } from '../diagnostics/format-diagnostics.ts';
import type { LoadedBook } from './load-book.ts';
import { printable } from './printable.ts';

/** The diagnostics of a folder as text for a terminal, ending in a line that counts them. */
export function reportText({ diagnostics, sources }: Pick<LoadedBook, 'diagnostics' | 'sources'>): string {
  const texts = new Map(sources.map(({ path, text }) => [path, text]));
  const found = diagnostics.length === 0 ? '' : `${formatDiagnostics(diagnostics, texts)}\n`;
  return printable(`${found}${summarizeDiagnostics(diagnostics, filesIn(diagnostics, texts))}`);
}

function filesIn(diagnostics: readonly Diagnostic[], texts: ReadonlyMap<string, string>): number {
  return new Set([...texts.keys(), ...diagnostics.map(({ file }) => file)]).size;
}
