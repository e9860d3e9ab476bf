import type { Content, Material } from '../book/model.ts';
import { formatDecimal } from '../units/format-quantity.ts';

export { massText } from '../units/mass-text.ts';
export { volumeText } from '../units/volume-text.ts';

/** What 100 ml of plastic takes: grams, and drops where the material is dropped. */
export function perHundred(
  { gramsPerMl }: Pick<Content, 'gramsPerMl'>,
  material?: Pick<Material, 'gramsPerDrop'>,
): string {
  const grams = gramsPerMl * 100;
  const drops = material?.gramsPerDrop === undefined ? undefined : grams / material.gramsPerDrop;
  return drops === undefined ? `${formatDecimal(grams)} g` : `${formatDecimal(grams)} g = ${dropsText(drops)}`;
}

/** A number of drops as a dose has it: `4.3 drops`, `1 drop`. */
export function dropsText(drops: number): string {
  const number = drops >= 10 ? drops.toFixed(1).replace(/\.0$/, '') : formatDecimal(drops, 2);
  return `${number} ${number === '1' ? 'drop' : 'drops'}`;
}
