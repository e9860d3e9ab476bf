/** Filters of which a thing can have several values at once. */
const ALL_OF: ReadonlySet<string> = new Set(['flake-colour', 'material', 'tag']);

/** Whether two values of a filter find what has both, as of flake in two colours; of any other they find what has either. */
export function findsAllOf(filter: string): boolean {
  return ALL_OF.has(filter);
}
