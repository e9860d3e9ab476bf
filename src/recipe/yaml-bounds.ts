import { type Document, visit } from 'yaml';

/** Deepest nesting that is read: a recipe's is five. */
export const DEEPEST = 30;

/** Names and values that are read: the longest recipe has a few hundred. */
export const MOST_VALUES = 5000;

/** Whether a document holds more names and values than that. */
export function hasMoreThan(most: number, document: Document.Parsed): boolean {
  let count = 0;
  visit(document, {
    Scalar: () => (++count > most ? visit.BREAK : undefined),
  });
  return count > most;
}

/** Whether YAML opens more than `DEEPEST` brackets, or dashes in one line. Signs in texts count too: no text has so many. */
export function isNestedTooDeep(yaml: string): boolean {
  let open = 0;
  for (const sign of yaml) {
    if (sign === '[' || sign === '{') open++;
    else if (sign === ']' || sign === '}') open--;
    if (open > DEEPEST) return true;
  }
  return new RegExp(`^ *(?:[-?][ \\t]+){${DEEPEST}}`, 'm').test(yaml);
}
