/** Steps from the top of the front matter to a value in it. */
export type FieldPath = readonly PropertyKey[];
