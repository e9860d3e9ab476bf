import { formatDecimal } from '../units/format-quantity.ts';

export { massText } from '../units/mass-text.ts';
export { volumeText } from '../units/volume-text.ts';

/** A number of drops as a dose has it: `4.3 drops`, `1 drop`. */
export function dropsText(drops: number): string {
  const number = drops >= 10 ? drops.toFixed(1).replace(/\.0$/, '') : formatDecimal(drops, 2);
  return `${number} ${number === '1' ? 'drop' : 'drops'}`;
}
