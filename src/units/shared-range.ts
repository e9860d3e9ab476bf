/** From the least to the most of something. */
export interface Range {
  readonly from: number;
  readonly to: number;
}

/** What is in all ranges; undefined where one is not known, where they don't meet, or where there is none. */
export function sharedRange(ranges: readonly (Range | undefined)[]): Range | undefined {
  const known = ranges.flatMap((range) => range ?? []);
  if (known.length === 0 || known.length < ranges.length) return undefined;
  const shared = { from: Math.max(...known.map(({ from }) => from)), to: Math.min(...known.map(({ to }) => to)) };
  return shared.from > shared.to ? undefined : shared;
}
