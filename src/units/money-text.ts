/**
 * Money in the book's currency, with two decimals.
 *
 * Units: amount in the book's currency, >= 0. An amount below a hundredth is told as less than that, not as nothing.
 *
 * @example moneyText(0.096, { currency: '$' }) // '$0.10'
 * @example moneyText(0.004, { currency: 'EUR' }) // 'less than 0.01 EUR'
 */
export function moneyText(amount: number, { currency }: { readonly currency: string }): string {
  const tiny = amount > 0 && amount < 0.01;
  const figures = (tiny ? 0.01 : amount).toFixed(2);
  const text = currency.length === 1 ? `${currency}${figures}` : `${figures} ${currency}`;
  return tiny ? `less than ${text}` : text;
}
