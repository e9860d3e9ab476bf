import { relative } from 'node:path';
import { diagnosticMessage } from '../diagnostics/format-diagnostics.ts';
import { loadBook } from '../eleventy/load-book.ts';
import { printable } from '../eleventy/printable.ts';
import { reportText } from '../eleventy/report.ts';
import type { Command } from './command.ts';

/** `cupbook check` */
export const checkCommand: Command = {
  name: 'check',
  usage: '[--json] [--strict]',
  summary: 'say what is wrong with the book, and write nothing',
  words: [0, 0],
  options: {
    json: { help: 'as JSON, for other programs' },
    strict: { help: 'let warnings fail, too' },
  },
  details: 'Exit code: 0 without errors, 1 with errors (with --strict: or warnings).',
  run(_words, values, { from, recipes }) {
    const loaded = loadBook(recipes);
    const errors = loaded.diagnostics.filter(({ severity }) => severity === 'error').length;
    const warnings = loaded.diagnostics.length - errors;
    if (values.json) {
      const diagnostics = loaded.diagnostics.map((diagnostic) => ({
        ...diagnostic,
        message: diagnosticMessage(diagnostic),
      }));
      console.log(JSON.stringify({ errors, warnings, files: loaded.sources.length, diagnostics }, null, 2));
    } else {
      console.log(`${reportText(loaded)} of ${printable(relative(from, recipes) || '.')}`);
    }
    return errors > 0 || (values.strict && warnings > 0) ? 1 : 0;
  },
};
