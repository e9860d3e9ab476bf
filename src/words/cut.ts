import type { Cut } from '../cup/cut.ts';
import { formatDecimal } from '../units/format-quantity.ts';

/** What is measured, by its name: a material, or the cut of it. */
export function measuredName(
  { material, cut }: { readonly material: string; readonly cut?: Pick<Cut, 'title' | 'oneIn'> },
  title: (material: string) => string,
): string {
  return cut ? cutName(cut) : title(material);
}

/** The same of an amount that has its title with it. */
export function amountName({
  title,
  cut,
}: {
  readonly title: string;
  readonly cut?: Pick<Cut, 'title' | 'oneIn'>;
}): string {
  return cut ? cutName(cut) : title;
}

/** How much of the bottle is in a cut: "1 part in 10 of Rust". */
export function cutShareText({ oneIn }: Pick<Cut, 'oneIn'>, bottle: string): string {
  return `1 part in ${formatDecimal(oneIn)} of ${bottle}`;
}

/** A cut by its name, with how much of the bottle is in it: "Rust cut (1 in 10)". */
export function cutName({ title, oneIn }: Pick<Cut, 'title' | 'oneIn'>): string {
  return `${title} (1 in ${formatDecimal(oneIn)})`;
}
