/** Numbers as a page carries them to its scripts: six digits, far finer than any of them is known. */
export const brief = (numbers: readonly number[]): readonly number[] =>
  numbers.map((number) => Number(number.toPrecision(6)));
