import type { Kind } from '../kinds/kinds.ts';
import { type FieldsOf, SCHEMAS } from './schema.ts';
import { frontMatterText, type WrittenFields } from './write-front-matter.ts';

/**
 * The text of a file of the book, the inverse of `readThing`: what this gives is read as the same fields and notes. How each field is written
 * stands with how it is read, in the schema, and the schema has their order.
 *
 * Amounts come out in whatever unit of a book they have the fewest digits in: what was typed in fluid ounces is written in them again.
 *
 * @param fields as `readThing` gives them
 * @param notes Markdown, without white space around it
 * @throws z.ZodError of fields that no file gives
 */
export function writeThing<K extends Kind>(kind: K, fields: FieldsOf<K>, notes: string): string {
  // The schema is that of the kind, which a compiler cannot follow through a table.
  return frontMatterText(SCHEMAS[kind].encode(fields as never) as WrittenFields, notes);
}
