import { type Document, visit } from 'yaml';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { TextPlaces } from './text-places.ts';
import { badNames, decimalCommas, syntaxFaults, textCommas } from './yaml-faults.ts';

/** Front matter that was parsed, and where it lies in its file. */
export interface ParsedYaml {
  readonly document: Document.Parsed;
  /** What was parsed. */
  readonly yaml: string;
  /** Offset in the file. */
  readonly base: number;
}

/** What is wrong with front matter as YAML, whatever its fields are. */
export function treeFaults({ document, yaml, base }: ParsedYaml, path: string, places: TextPlaces): Diagnostic[] {
  const { position, fault } = places;
  const first = position(base).line;
  const problems: Diagnostic[] = syntaxFaults(document, yaml, first).map((what) => ({
    code: 'front-matter/syntax',
    severity: 'error',
    file: path,
    ...what,
  }));
  // What a parser that stumbled took for a name is no mistake of its own.
  const sound = problems.length === 0;
  visit(document, {
    Map: (_key, node) => {
      if (sound)
        problems.push(
          ...badNames(node, yaml, first).map((what) => ({ severity: 'error', file: path, ...what }) as const),
        );
      for (const { written, from, to } of decimalCommas(node)) {
        problems.push(
          fault('front-matter/syntax', base + from, {
            end: position(base + to),
            found: `\`${written}\``,
            expected: 'a number with a point',
            why: 'inside `{ }` a comma begins the next field',
            fix: `write \`${written.replace(',', '.')}\``,
          }),
        );
      }
      for (const { written, from, to } of textCommas(node)) {
        problems.push(
          fault('front-matter/syntax', base + from, {
            end: position(base + to),
            found: `\`${written}\` without quotes`,
            expected: 'text with a comma in quotes',
            why: 'inside `{ }` a comma begins the next field',
            fix: `write \`"${written.replaceAll('"', "'")}"\``,
          }),
        );
      }
    },
    Alias: (_key, node) => {
      problems.push(
        fault('front-matter/alias', base + (node.range?.[0] ?? 0), {
          found: `alias \`*${node.source}\``,
          expected: 'the value itself',
          why: 'a file that points into itself can grow without bounds',
          fix: 'write the value out',
        }),
      );
    },
  });
  return problems;
}
