/**
 * The number in the middle; of an even count the mean of the two there.
 *
 * Throws: RangeError if there are none.
 */
export function medianOf(numbers: readonly number[]): number {
  if (numbers.length === 0) throw new RangeError('No number was given; give at least one');
  const sorted = Float64Array.from(numbers).sort();
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}
