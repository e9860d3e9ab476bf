import { listText } from './sentence-text.ts';

/**
 * What something costs by the prices on the shelf, and what of it has none: the same on pages and on the command line.
 *
 * @param unpriced names of those without a price
 * @param money an amount in the book's currency
 * @param behind what follows the amount, where there is one
 *
 * @example costWords(0, ['Milk', 'Soot'], (amount) => `€${amount}`) // 'no price on the shelf for Milk and Soot'
 */
export function costWords(
  cost: number,
  unpriced: readonly string[],
  money: (amount: number) => string,
  behind = '',
): string {
  const amount = `${money(cost)}${behind}`;
  if (unpriced.length === 0) return amount;
  const names = listText(unpriced);
  return cost === 0 ? `no price on the shelf for ${names}` : `${amount}, without ${names}: no price`;
}
