/**
 * Numbers of the book in words and in the book's units.
 *
 * @packageDocumentation
 */
import type { Content, Look, Material, Pattern, Settings, Tier } from '../book/model.ts';
import { formatDecimal, formatTemperature } from '../units/format-quantity.ts';
import { UNITS } from '../units/unit.ts';

/** What a predicted colour rests on, for a reader. */
export const TIER_WORDS: Readonly<Record<Tier, string>> = {
  measured: 'measured: spectra of every material that colours it',
  photographed: 'photographed: chips over white and black of every material that colours it',
  estimated: 'estimated: at least one material is known by one colour and its kind alone',
};

/** The same for one material. */
export const MATERIAL_TIER_WORDS: Readonly<Record<Tier, string>> = {
  measured: 'Measured: spectra over white and black at a known dose and thickness.',
  photographed: 'Photographed: chips over white and black at a known dose and thickness.',
  estimated: 'Estimated from one colour and its kind.',
};

export const PATTERN_WORDS: Readonly<Record<Pattern, string>> = {
  solid: 'solid: one cup',
  laminate: 'laminate: two cups, one behind the other',
  swirl: 'swirl: two cups poured together, unmixed',
  layered: 'layered: cups in layers',
  core: 'core: one cup inside another',
  tipped: 'tipped: a body and a tip',
};

/** How much a body hides, in words that go with its facet. */
export function opacityWords({ contrastRatio }: Look): string {
  if (contrastRatio >= 0.98) return 'opaque: nothing behind it shows';
  if (contrastRatio >= 0.9) return 'almost opaque: what is behind it hardly shows';
  if (contrastRatio >= 0.6) return 'thick: light comes through, shapes don’t';
  if (contrastRatio >= 0.35) return 'translucent: what is behind it shows through';
  return 'clear: what is behind it shows plainly';
}

/** A contrast ratio as people say it. */
export function contrastText(ratio: number): string {
  return ratio.toFixed(2);
}

/** A colour difference: one decimal, and no false precision far off. */
export function deltaEText(deltaE: number): string {
  return deltaE >= 10 ? String(Math.round(deltaE)) : deltaE.toFixed(1);
}

/** A volume of plastic in the book's unit. */
export function volumeText(ml: number, settings: Pick<Settings, 'volume'>): string {
  if (settings.volume === 'fl oz')
    return `${formatDecimal(ml / UNITS['fl oz'].size, ml / UNITS['fl oz'].size >= 10 ? 3 : 2)} fl oz`;
  return `${ml >= 20 ? Math.round(ml) : formatDecimal(ml, 2)} ml`;
}

/** A mass for people: milligrams below a tenth of a gram are what a scale does not show. */
export function massText(grams: number): string {
  if (grams >= 1000) return `${formatDecimal(grams / 1000)} kg`;
  return `${formatDecimal(grams, grams >= 100 ? 4 : 3)} g`;
}

/** A temperature in the book's unit. */
export function temperatureText(celsius: number, settings: Pick<Settings, 'temperature'>): string {
  return formatTemperature(celsius, settings.temperature);
}

/** Money in the book's currency. */
export function moneyText(amount: number, { currency }: Pick<Settings, 'currency'>): string {
  const figures = amount >= 0.1 || amount === 0 ? amount.toFixed(2) : formatDecimal(amount, 2);
  return currency.length === 1 ? `${currency}${figures}` : `${figures} ${currency}`;
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

/** A size of flake as the bag has it. */
export function inches(mm: number): string {
  return `${(mm / 25.4).toFixed(3)} in`;
}

/** First letter in upper case. */
export function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** `3 baits`, `1 bait`. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** A list as a sentence has it: `a, b and c`. */
export function listText(words: readonly string[], last = 'and'): string {
  return words.length <= 1 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} ${last} ${words.at(-1)}`;
}

/** A day as people write it: `14 March 2026`. Anything else stays as it is. */
export function dayText(date: string): string {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(date);
  if (!match) return date;
  const months = 'January February March April May June July August September October November December'.split(' ');
  return `${Number(match[3])} ${months[Number(match[2]) - 1] ?? match[2]} ${match[1]}`;
}
