import type { BenchMaterial } from '../../cup/bench.ts';
import { gramsOfDose } from '../../units/dose.ts';
import { formatDecimal, formatDose, formatQuantity } from '../../units/format-quantity.ts';
import { DOSE_DIMENSIONS, isFault, parseQuantity } from '../../units/quantity.ts';
import { UNITS } from '../../units/unit.ts';
import type { WorkAmount } from './work.ts';

const SMIDGENS = 32;
/** Limits of an amount, g. */
const LEAST_GRAMS = 1e-6;
const MOST_GRAMS = 100_000;

/**
 * A measured amount as a recipe's file writes it: one number, one unit. "1/4 tsp + 1 pinch" becomes 5/16 tsp.
 *
 * @example fileDose({ grams: 0.15, text: '3 drops' }, { gramsPerMl: 1, gramsPerDrop: 0.05 }) // '3 drops'
 */
export function fileDose(
  { grams, text }: { readonly grams: number; readonly text: string },
  { gramsPerMl }: BenchMaterial,
): string {
  const read = parseQuantity(text, DOSE_DIMENSIONS);
  if (!isFault(read)) return text;
  const spoons = (grams / gramsPerMl / UNITS.tsp.size) * SMIDGENS;
  const whole = Math.round(spoons);
  // Spoons of other sizes than the usual set are written by weight.
  if (whole === 0 || Math.abs(spoons - whole) > 1e-3 * spoons) return `${formatDecimal(grams, 4)} g`;
  const full = Math.floor(whole / SMIDGENS);
  const rest = whole % SMIDGENS;
  if (rest === 0) return formatQuantity({ amount: full, unit: 'tsp' });
  const shared = commonDivisor(rest, SMIDGENS);
  const part = `${rest / shared}/${SMIDGENS / shared}`;
  return `${full === 0 ? '' : `${full} `}${part} tsp`;
}

/**
 * What somebody typed, as an amount of a material; a sentence where it is none.
 *
 * @param plastic the cup's, in ml and g
 */
export function typedAmount(
  text: string,
  material: BenchMaterial & { readonly id: string; readonly title: string },
  plastic: { readonly ml: number; readonly grams: number },
): WorkAmount | { readonly fault: string } {
  const read = parseQuantity(text, DOSE_DIMENSIONS);
  if (isFault(read))
    return {
      fault: `${text.trim() === '' ? 'Nothing' : `“${text.trim()}”`} is no amount: write for example 3 drops, 1/8 tsp or 0.25 g.`,
    };
  if (UNITS[read.unit].dimension === 'drop' && material.gramsPerDrop === undefined) {
    return { fault: `${material.title} has no drops: write for example 1/8 tsp or 0.25 g.` };
  }
  const grams = gramsOfDose(
    read,
    { gramsPerMl: material.gramsPerMl, gramsPerDrop: material.gramsPerDrop ?? 0 },
    plastic,
  );
  if (!(grams >= LEAST_GRAMS && grams <= MOST_GRAMS)) {
    return {
      fault: `“${text.trim()}” is ${grams > MOST_GRAMS ? 'more' : 'less'} than a cup can take: write for example 3 drops, 1/8 tsp or 0.25 g.`,
    };
  }
  return { material: material.id, dose: formatDose(read), grams };
}

function commonDivisor(one: number, other: number): number {
  return other === 0 ? one : commonDivisor(other, one % other);
}
