/** The middle one of numbers in their order; of an even number of them the upper of the two. */
export function median(values: readonly number[]): number {
  return [...values].sort((one, other) => one - other)[Math.floor(values.length / 2)]!;
}
