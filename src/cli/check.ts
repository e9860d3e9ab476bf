import { relative } from 'node:path';
import { capped } from '../diagnostics/capped.ts';
import { diagnosticMessage } from '../diagnostics/format-diagnostics.ts';
import { type LoadedBook, loadWholeBook } from '../shell/load-book.ts';
import { photoOpener } from '../shell/open-photos.ts';
import { printable } from '../shell/printable.ts';
import { reportText } from '../shell/report.ts';
import { defined } from '../values/defined.ts';
import { lookNote } from '../words/look-note.ts';
import type { Command } from './command.ts';

/** `cupbook check` */
export const checkCommand: Command = {
  name: 'check',
  usage: '[--json] [--strict]',
  summary: 'say what is wrong with the book, and write nothing',
  words: [0, 0],
  options: {
    json: { help: 'as JSON, for other programs' },
    strict: { help: 'treat warnings as errors' },
  },
  details: 'Exit code: 0 without errors, 1 with errors (with --strict, also with warnings).',
  refused: (line, sentence) =>
    line.includes('--json') ? jsonText({ error: sentence, diagnostics: [], files: 0 }) : undefined,
  async run(_words, values, { from, recipes }) {
    const loaded = await loadWholeBook(recipes, photoOpener());
    const errors = loaded.diagnostics.filter(({ severity }) => severity === 'error').length;
    const warnings = loaded.diagnostics.length - errors;
    const note = loaded.complete ? lookNote(loaded.book.recipes) : undefined;
    if (values.json) {
      console.log(jsonText({ diagnostics: loaded.diagnostics, files: loaded.sources.length, note }));
    } else {
      console.log(`${reportText(loaded)} of ${printable(relative(from, recipes) || '.')}`);
      if (note !== undefined) console.log(`note: ${printable(note)}`);
    }
    return errors > 0 || (values.strict && warnings > 0) ? 1 : 0;
  },
};

/** What was found as JSON; `error` where the book could not be checked at all. */
function jsonText({
  error,
  diagnostics,
  files,
  note,
}: Pick<LoadedBook, 'diagnostics'> & {
  readonly error?: string;
  readonly files: number;
  readonly note?: string | undefined;
}): string {
  const errors = diagnostics.filter(({ severity }) => severity === 'error').length;
  const { shown, unshown } = capped(diagnostics);
  return JSON.stringify(
    {
      ...defined({ error }),
      errors,
      warnings: diagnostics.length - errors,
      files,
      ...defined({ note }),
      diagnostics: shown.map((diagnostic) => ({ ...diagnostic, message: diagnosticMessage(diagnostic) })),
      ...(unshown.length === 0 ? {} : { unshown }),
    },
    null,
    2,
  );
}
