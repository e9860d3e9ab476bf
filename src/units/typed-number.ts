// Of a number that was multiplied by a unit's size and divided by it again.
const ROUNDING = 1e-12;

/**
 * The number that somebody typed in a unit, to the digit, from what was made of it; undefined where it has more decimals than anybody types.
 *
 * @param base in the dimension's own unit, more than 0
 * @param size of the unit in that
 *
 * @example typedNumber(118.29411825, UNITS['fl oz'].size, 6) // '4'
 */
export function typedNumber(base: number, size: number, decimals: number): string | undefined {
  const number = base / size;
  const typed = number.toFixed(decimals).replace(/\.?0+$/, '');
  return Math.abs(Number(typed) - number) <= ROUNDING * number ? typed : undefined;
}
