type Optional<T> = { [K in keyof T]-?: undefined extends T[K] ? K : never }[keyof T];

/** The same fields, those that may be undefined as ones that may be missing. */
export type Defined<T> = { [K in Exclude<keyof T, Optional<T>>]: T[K] } & {
  [K in Optional<T>]?: Exclude<T[K], undefined>;
};

/**
 * An object without the fields that are undefined: what is not known is not there, in a book's data as in its types.
 *
 * @example defined({ mold: 'minnow', baits: undefined }) // { mold: 'minnow' }
 */
export function defined<const T extends object>(fields: T): Defined<T> {
  const known: Partial<T> = {};
  for (const key of Object.keys(fields) as (keyof T)[]) {
    if (fields[key] !== undefined) known[key] = fields[key];
  }
  return known as Defined<T>;
}
