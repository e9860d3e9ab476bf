import { CATALOGUE, type DiagnosticCode } from '../diagnostics/catalogue.ts';
import { EXAMPLE_BOOK, EXAMPLES, type ExampleFiles } from '../diagnostics/examples.ts';
import { nearestName } from '../diagnostics/nearest-name.ts';
import type { Command } from './command.ts';

/** `cupbook explain` */
export const explainCommand: Command = {
  name: 'explain',
  usage: '[CODE]',
  summary: 'explain a message, with a broken example and its fix',
  words: [0, 1],
  options: {},
  details: 'Without a code it lists them all, a line each.',
  run([code]) {
    if (code === undefined) {
      for (const [name, { severity, meaning }] of Object.entries(CATALOGUE))
        console.log(`${name} (${severity})\n  ${meaning}`);
      return 0;
    }
    if (!(code in CATALOGUE)) {
      const nearest = codeMeant(code);
      console.error(
        `There is no message "${code}".${nearest === undefined ? ' "cupbook explain" lists them all.' : ` Did you mean ${nearest}?`}`,
      );
      return 2;
    }
    const { severity, meaning } = CATALOGUE[code as DiagnosticCode];
    const { bad, good } = EXAMPLES[code as DiagnosticCode];
    console.log(
      [`${code} (${severity})`, meaning, '', 'Broken:', ...filesText(bad), '', 'Fixed:', ...filesText(good)].join('\n'),
    );
    return 0;
  },
};

/** The code that a misspelt one, or one without what stands before its slash, was meant to be. */
function codeMeant(code: string): string | undefined {
  const codes = Object.keys(CATALOGUE);
  const known = new Map(codes.map((each) => [each.slice(each.indexOf('/') + 1), each]));
  const short = nearestName(code.slice(code.indexOf('/') + 1), known.keys());
  return nearestName(code, codes) ?? (short === undefined ? undefined : known.get(short));
}

// An example may be a file of megabytes, where its size is the mistake.
const LONGEST = 600;

function filesText(files: ExampleFiles): string[] {
  return Object.entries(files).flatMap(([path, text]) => {
    if (text === undefined) return [`  ${path}: ${path in EXAMPLE_BOOK ? 'not there' : 'moved, or removed'}`];
    const shown = text.length > LONGEST ? `${text.slice(0, LONGEST)}…` : text;
    return [
      `  ${path}`,
      ...shown
        .replace(/\0/g, '␀')
        .trimEnd()
        .split('\n')
        .map((line) => `    ${line}`),
    ];
  });
}
