import { boundsMissed } from '../../units/bounds.ts';
import { formatDecimal, formatNumber } from '../../units/format-quantity.ts';
import { UNITS } from '../../units/unit.ts';
import { usualVolume } from '../../units/usual-volume.ts';
import type { Material, Recipe, Settings } from '../model.ts';

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
    'title' | 'made' | 'pattern' | 'mold' | 'batch' | 'target' | 'streakMm' | 'cups' | 'notes' | 'tags'
  >,
  settings: Pick<Settings, 'volume'>,
  material: (id: string) => Dosed,
): string {
  const { ml, text: volume } = usualVolume(settings);
  const { volume: unit } = settings;
  const lines = [
    '---',
    `title: ${JSON.stringify(recipe.title)}`,
    ...(recipe.made === undefined ? [] : [`made: ${recipe.made}`]),
    `pattern: ${recipe.pattern}`,
    `mold: ${recipe.mold}`,
    `baits: ${recipe.batch.baits}`,
    ...(recipe.target === undefined ? [] : [`for: ${recipe.target}`]),
    ...(recipe.streakMm === undefined ? [] : [`streak: ${formatDecimal(recipe.streakMm, 6)} mm`]),
    ...(recipe.tags.length === 0 ? [] : [`tags: ${JSON.stringify(recipe.tags)}`]),
    'cups:',
    ...recipe.cups.flatMap((cup) => [
      `  ${cup.name}:`,
      `    share: ${formatDecimal(cup.share * 100, 6)}%`,
      `    plastic: [${cup.plastics.map(({ material: id, fraction }) => `${formatDecimal((fraction * cup.startMl) / UNITS[unit].size, 6)} ${unit} ${id}`).join(', ')}]`,
      ...addLines(
        cup.contents.flatMap(({ material: id, gramsPerMl }) =>
          boundsMissed({ amount: gramsPerMl * ml, unit: 'g' })
            ? []
            : [`${id}: ${doseText(gramsPerMl * ml, material(id))} per ${volume}`],
        ),
      ),
    ]),
    '---',
    recipe.notes,
    '',
  ];
  return lines.join('\n');
}

function addLines(doses: readonly string[]): readonly string[] {
  return doses.length === 0 ? [] : ['    add:', ...doses.map((dose) => `      ${dose}`)];
}

/** So many grams in the words that were most likely written: whole drops, a pinch, eighths of a teaspoon, or grams. */
function doseText(grams: number, { gramsPerDrop, gramsPerMl }: Dosed): string {
  const drops = gramsPerDrop === undefined ? 0 : wholeOr0(grams / gramsPerDrop);
  if (drops > 0) return `${drops} ${drops === 1 ? 'drop' : 'drops'}`;
  const parts = gramsPerDrop === undefined ? wholeOr0((SPOON_PARTS * grams) / (gramsPerMl * UNITS.tsp.size)) : 0;
  const isSpoon = parts === 1 || (parts > 0 && parts % 2 === 0);
  return isSpoon ? `${formatNumber(parts / SPOON_PARTS)} tsp` : `${formatDecimal(grams, 5)} g`;
}

function wholeOr0(number: number): number {
  const whole = Math.round(number);
  return Math.abs(number - whole) <= WRITTEN * whole ? whole : 0;
}
