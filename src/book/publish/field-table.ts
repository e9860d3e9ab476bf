/**
 * Which fields of a value readers may have, written out field by field.
 *
 * @packageDocumentation
 */

/** Whether readers may have a field. */
export type Sharing = 'shared' | 'private';

type Plain = string | number | boolean;

/**
 * Of a type, what readers may have of it: a word for each plain value and each list by name, and for everything else either `private` or a table of its own.
 * Every field must be named, so that one that is new is shared only once somebody has said so.
 */
export type FieldTable<T> = [T] extends [Plain | ArrayLike<Plain> | readonly (readonly Plain[])[]]
  ? Sharing
  : [T] extends [readonly (infer Each)[]]
    ? 'private' | FieldTable<Each>
    : string extends keyof T
      ? Sharing
      : 'private' | { readonly [Key in keyof T]-?: FieldTable<NonNullable<T[Key]>> };

type Table = Sharing | { readonly [field: string]: Table };

/** A value with what its table shares, and nothing else: a field that the table does not know is left out too. */
export function sharedPart<T>(value: T, table: FieldTable<T>): T {
  return partOf(value, table as Table) as T;
}

function partOf(value: unknown, table: Table): unknown {
  if (table === 'shared') return value;
  if (Array.isArray(value)) return value.map((each) => partOf(each, table));
  if (table === 'private' || typeof value !== 'object' || value === null) return undefined;
  // A loop, since a book of thousands of recipes has millions of fields.
  const part: Record<string, unknown> = {};
  for (const [name, inside] of Object.entries(value)) {
    const known = Object.hasOwn(table, name) ? table[name]! : 'private';
    if (known !== 'private' && inside !== undefined) part[name] = partOf(inside, known);
  }
  return part;
}
