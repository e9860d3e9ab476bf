// Groups of three digits, after a sign that no decimal begins with or after a comma.
const GROUPED = /^[1-9]\d{0,2}(?:[ _'’\u00a0\u202f]\d{3})+(?![\d.,])/;
const COMMAS = /^[1-9]\d{0,2}(?:,\d{3})+(?![\d,])/;

/**
 * The edit for a text that begins with a number which is grouped, or has a comma before its decimals: undefined for any other.
 *
 * One comma with three digits after it can mean either, so both edits are told.
 *
 * @example plainNumberFix('1,5 ml') // 'write `1.5 ml`'
 * @example plainNumberFix('1,000 ml') // 'write `1000 ml`, or `1.000 ml` if the comma marks decimals'
 */
export function plainNumberFix(text: string): string | undefined {
  const grouped = (GROUPED.exec(text) ?? COMMAS.exec(text))?.[0];
  const decimal = /^\d+,\d+(?![\d,])/.test(text) ? `\`${text.replace(',', '.')}\`` : undefined;
  if (grouped === undefined) return decimal && `write ${decimal}`;
  const whole = `write \`${grouped.replace(/\D/g, '')}${text.slice(grouped.length)}\``;
  return decimal ? `${whole}, or ${decimal} if the comma marks decimals` : whole;
}
