import type { Content } from '../book/model/cup.ts';
import type { Material } from '../book/model/shelf.ts';
import type { Settings } from '../book/model.ts';
import { formatDecimal } from '../units/format-quantity.ts';
import { usualVolume } from '../units/usual-volume.ts';
import { dropsText, massText } from './amount-text.ts';

/** What the usual volume takes: `1.2 g`. */
export function massIn({ gramsPerMl }: Pick<Content, 'gramsPerMl'>, settings: Pick<Settings, 'volume'>): string {
  return massText(gramsPerMl * usualVolume(settings).ml);
}

/** What the usual volume takes: grams, and drops where the material is dropped. */
export function doseIn(
  { gramsPerMl }: Pick<Content, 'gramsPerMl'>,
  settings: Pick<Settings, 'volume'>,
  material?: Pick<Material, 'gramsPerDrop'>,
): string {
  const grams = gramsPerMl * usualVolume(settings).ml;
  const { gramsPerDrop } = material ?? {};
  const mass = `${formatDecimal(grams)} g`;
  return gramsPerDrop === undefined ? mass : `${mass} = ${dropsText(grams / gramsPerDrop)}`;
}

/** A step of a dose ladder: drops of a liquid, grams of anything else, in the usual volume. */
export function ladderText(
  { gramsPerMl }: Pick<Content, 'gramsPerMl'>,
  settings: Pick<Settings, 'volume'>,
  { gramsPerDrop }: Pick<Material, 'gramsPerDrop'>,
): string {
  const { ml, text } = usualVolume(settings);
  const grams = gramsPerMl * ml;
  const dose = gramsPerDrop === undefined ? `${formatDecimal(grams, 2)} g` : dropsText(grams / gramsPerDrop);
  return `${dose} in ${text}`;
}
