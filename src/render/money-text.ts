import type { Settings } from '../book/model.ts';
import { formatDecimal } from '../units/format-quantity.ts';

/** Money in the book's currency. */
export function moneyText(amount: number, { currency }: Pick<Settings, 'currency'>): string {
  const figures = amount >= 0.1 || amount === 0 ? amount.toFixed(2) : formatDecimal(amount, 2);
  return currency.length === 1 ? `${currency}${figures}` : `${figures} ${currency}`;
}
