import { CATALOGUE } from '../diagnostics/catalogue.ts';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { Thing } from '../recipe/read-thing.ts';

/** A text that readers will have. */
export interface PublicText {
  readonly thing: Thing;
  /** What is published of the file: all of it, or a file that stands by itself. */
  readonly text: string;
}

/** Reports published texts that name what is not published, by its id or by its title. */
export function checkSecrets(
  secrets: readonly { readonly id: string; readonly title: string }[],
  texts: readonly PublicText[],
  diagnostics: Diagnostic[],
): void {
  for (const { id, title } of secrets) {
    const pattern = new RegExp(`(?<![\\p{L}\\p{N}-])(?:${escaped(id)}|${escaped(title)})(?![\\p{L}\\p{N}-])`, 'u');
    for (const { thing, text } of texts) {
      if (!pattern.test(text)) continue;
      const { source } = thing;
      const at = pattern.exec(source.text)?.index ?? 0;
      const lines = source.text.slice(0, at).split('\n');
      const start = { line: lines.length, column: lines.at(-1)!.length + 1 };
      diagnostics.push({
        code: 'publish/named',
        severity: CATALOGUE['publish/named'].severity,
        file: source.path,
        start,
        found: `mention of \`${id}\`, which is not published`,
        expected: 'no word of it in a published file',
        why: 'what is not published leaves no trace in the book',
        fix: 'remove the mention, or publish the other as `look`',
      });
    }
  }
}

function escaped(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
}
