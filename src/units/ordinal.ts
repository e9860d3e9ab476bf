const FIRST = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth', 'ninth', 'tenth'];
const ONE = ['one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];

/**
 * Which one of several it is, from 1 on.
 *
 * @example ordinal(3) // 'third'
 */
export function ordinal(number: number): string {
  const word = FIRST[number - 1];
  if (word !== undefined) return word;
  const last = number % 100 > 10 && number % 100 < 14 ? 0 : number % 10;
  return `${number}${['th', 'st', 'nd', 'rd'][last] ?? 'th'}`;
}

/**
 * A small number as a word.
 *
 * @example inWords(2) // 'two'
 */
export function inWords(number: number): string {
  return ONE[number - 1] ?? String(number);
}
