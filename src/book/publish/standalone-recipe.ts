import type { FieldsOf } from '../../recipe/schema.ts';
import { writeThing } from '../../recipe/write-thing.ts';
import { boundsMissed } from '../../units/bounds.ts';
import { fraction, millilitres } from '../../units/convert.ts';
import { formatDecimal } from '../../units/format-quantity.ts';
import type { Quantity } from '../../units/quantity.ts';
import { UNITS, type Unit } from '../../units/unit.ts';
import { usualVolume } from '../../units/usual-volume.ts';
import { defined } from '../../values/defined.ts';
import type { Recipe } from '../model/recipe.ts';
import type { Material } from '../model/shelf.ts';
import type { Settings } from '../model.ts';

type CupFields = NonNullable<FieldsOf<'recipe'>['cups']>[string];

/** What is to be known of a material, to write a dose of it. */
type Dosed = Pick<Material, 'gramsPerDrop' | 'gramsPerMl'>;

// A dose this near to whole drops, or to a pinch or eighths of a teaspoon, was written so.
const WRITTEN = 1e-6;
const SPOON_PARTS = 16;

/**
 * The file of a recipe that needs no other recipe: its cups as they really are, each with the plastic that it begins with. Doses are told
 * for 100 ml or 4 fl oz of it: in drops or spoons where it is so many in that volume, else in grams.
 *
 * For readers who cannot have the recipes that it comes from. What is less than a file may state is left out. `check` accepts it beside the same shelf and molds.
 */
export function standaloneRecipe(
  recipe: Pick<
    Recipe,
    'title' | 'made' | 'pattern' | 'order' | 'mold' | 'batch' | 'target' | 'streakMm' | 'cups' | 'notes' | 'tags'
  >,
  settings: Pick<Settings, 'volume'>,
  material: (id: string) => Dosed,
): string {
  const { ml, quantity: per } = usualVolume(settings);
  const { title, made, pattern, order, mold, batch, target, streakMm, tags, cups, notes } = recipe;
  const doses = (contents: Recipe['cups'][number]['contents']): CupFields['add'] => {
    const kept = contents.filter(({ gramsPerMl }) => !boundsMissed({ amount: gramsPerMl * ml, unit: 'g' }));
    if (kept.length === 0) return undefined;
    return Object.fromEntries(
      kept.map(({ material: id, gramsPerMl }) => [id, { quantity: doseOf(gramsPerMl * ml, material(id)), per }]),
    );
  };
  const cupFields = (cup: Recipe['cups'][number]): CupFields =>
    defined({
      share: fraction(rounded(cup.share * 100, 6, '%')),
      plastic: cup.plastics.map(({ material: plastic, fraction: part }) => ({
        ml: millilitres(rounded((part * cup.startMl) / UNITS[settings.volume].size, 6, settings.volume)),
        plastic,
      })),
      add: doses(cup.contents),
    });
  const fields = defined({
    title,
    made,
    pattern,
    order,
    mold,
    baits: batch.baits,
    for: target,
    streak: streakMm === undefined ? undefined : Number(formatDecimal(streakMm, 6)),
    tags: tags.length === 0 ? undefined : [...tags],
    cups: Object.fromEntries(cups.map((cup) => [cup.name, cupFields(cup)])),
  });
  return writeThing('recipe', fields, notes);
}

/** A number to so many digits. */
function rounded(amount: number, digits: number, unit: Unit): Quantity {
  return { amount: Number(formatDecimal(amount, digits)), unit };
}

/** So many grams as they were most likely written: whole drops, a pinch, eighths of a teaspoon, or grams. */
function doseOf(grams: number, { gramsPerDrop, gramsPerMl }: Dosed): Quantity {
  const drops = gramsPerDrop === undefined ? 0 : wholeOr0(grams / gramsPerDrop);
  if (drops > 0) return { amount: drops, unit: 'drop' };
  const parts = gramsPerDrop === undefined ? wholeOr0((SPOON_PARTS * grams) / (gramsPerMl * UNITS.tsp.size)) : 0;
  const isSpoon = parts === 1 || (parts > 0 && parts % 2 === 0);
  return isSpoon ? { amount: parts / SPOON_PARTS, unit: 'tsp' } : rounded(grams, 5, 'g');
}

function wholeOr0(number: number): number {
  const whole = Math.round(number);
  return Math.abs(number - whole) <= WRITTEN * whole ? whole : 0;
}
