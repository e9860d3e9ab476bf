import type { Content, Material, Settings } from '../book/model.ts';
import { formatDecimal } from '../units/format-quantity.ts';
import { UNITS } from '../units/unit.ts';

/** A volume of plastic in the book's unit. */
export function volumeText(ml: number, settings: Pick<Settings, 'volume'>): string {
  if (settings.volume === 'fl oz')
    return `${formatDecimal(ml / UNITS['fl oz'].size, ml / UNITS['fl oz'].size >= 10 ? 3 : 2)} fl oz`;
  return `${ml >= 20 ? Math.round(ml) : formatDecimal(ml, 2)} ml`;
}

/** A mass for people, g: three digits, four from 100 g on, and kilograms from 1000 g on. */
export function massText(grams: number): string {
  if (grams >= 1000) return `${formatDecimal(grams / 1000)} kg`;
  return `${formatDecimal(grams, grams >= 100 ? 4 : 3)} g`;
}

/** What 100 ml of plastic takes: grams, and drops where the material is dropped. */
export function perHundred(
  { gramsPerMl }: Pick<Content, 'gramsPerMl'>,
  material?: Pick<Material, 'gramsPerDrop'>,
): string {
  const grams = gramsPerMl * 100;
  const drops = material?.gramsPerDrop === undefined ? undefined : grams / material.gramsPerDrop;
  return drops === undefined ? `${formatDecimal(grams)} g` : `${formatDecimal(grams)} g = ${dropsText(drops)}`;
}

function dropsText(drops: number): string {
  const number = drops >= 10 ? drops.toFixed(1) : formatDecimal(drops, 2);
  return `${number.replace(/\.0$/, '')} ${number === '1' ? 'drop' : 'drops'}`;
}
