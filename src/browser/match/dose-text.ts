import type { BenchMaterial } from '../../cup/bench.ts';
import { gramsOfDose, type Handling } from '../../units/dose.ts';
import { formatDecimal, formatQuantity } from '../../units/format-quantity.ts';
import { DOSE_DIMENSIONS, parseDose, parseQuantity } from '../../units/parse-quantity.ts';
import { isFault, isRate, type Quantity, type QuantityFault } from '../../units/quantity.ts';
import { type Dimension, UNITS } from '../../units/unit.ts';
import { amountFault } from './amount-fault.ts';
import { isWithin, LIMITS, MOST, within } from './limits.ts';
import type { WorkAmount } from './work.ts';

const SMIDGENS = 32;

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
  const ml = grams / gramsPerMl;
  const spoons = (ml / UNITS.tsp.size) * SMIDGENS;
  const whole = Math.round(spoons);
  // What spoons of other sizes than the usual set hold is written in millilitres.
  if (whole === 0 || Math.abs(spoons - whole) > 1e-3 * spoons) return `${formatDecimal(ml, 5)} ml`;
  const full = Math.floor(whole / SMIDGENS);
  const rest = whole % SMIDGENS;
  if (rest === 0) return formatQuantity({ amount: full, unit: 'tsp' });
  const shared = commonDivisor(rest, SMIDGENS);
  const part = `${rest / shared}/${SMIDGENS / shared}`;
  return `${full === 0 ? '' : `${full} `}${part} tsp`;
}

/**
 * An amount with the grams that the book reads from its dose, so that the log is the same here as in the recipe's file. What the file
 * cannot say of this material, and shares of plastic, which go by how much of it there is, are written by weight.
 */
export function bookAmount({ material, dose, grams }: WorkAmount, shelf: BenchMaterial): WorkAmount {
  const read = parseDose(dose);
  if (!isFault(read) && !isRate(read) && isCounted(UNITS[read.unit].dimension, shelf)) {
    const counted = gramsOfDose(read, handlingOf(shelf), NO_PLASTIC);
    if (isWithin('grams', counted)) return { material, dose, grams: counted };
  }
  const text = formatDecimal(within('grams', grams), 6);
  return { material, dose: `${text} g`, grams: Number(text) };
}

// Of a drop, a volume or a mass: how much plastic there is does not matter.
const NO_PLASTIC = { ml: 0, grams: 0 };

function isCounted(dimension: Dimension, { gramsPerDrop }: BenchMaterial): boolean {
  return dimension === 'drop' ? gramsPerDrop !== undefined : dimension !== 'part';
}

function handlingOf({ gramsPerMl, gramsPerDrop = 0 }: BenchMaterial): Handling {
  return { gramsPerMl, gramsPerDrop };
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
  if (isFault(read) && read.bounds !== undefined) return { fault: `“${text.trim()}” is no amount ${read.bounds}.` };
  const meant = isFault(read) ? mended(read) : read;
  if (!isFault(meant) && UNITS[meant.unit].dimension === 'drop' && material.gramsPerDrop === undefined) {
    return { fault: `${material.title} has no drops: write for example 1/8 tsp or 0.25 g.` };
  }
  if (isFault(read)) return { fault: amountFault(text.trim(), read, material.gramsPerDrop !== undefined) };
  const grams = gramsOfDose(read, handlingOf(material), plastic);
  if (!isWithin('grams', grams)) {
    return {
      fault: `“${text.trim()}” is ${grams > LIMITS.grams.most ? 'more' : 'less'} than a cup can take: write for example 3 drops, 1/8 tsp or 0.25 g.`,
    };
  }
  return bookAmount({ material: material.id, dose: doseWords(text, read), grams }, material);
}

/** What a text was surely meant as, where there is but one edit for it. */
function mended(fault: QuantityFault): Quantity | QuantityFault {
  const [edit, ...others] = fault.edits ?? [];
  const sure = edit !== undefined && edit.when === undefined && others.length === 0;
  return sure ? parseQuantity(edit.text, DOSE_DIMENSIONS) : fault;
}

/** A dose in the book's words, or as it was typed where those have too few digits for it. */
function doseWords(typed: string, read: Quantity): string {
  const words = formatQuantity(read);
  const again = parseQuantity(words, DOSE_DIMENSIONS);
  const same = !isFault(again) && Math.abs(again.amount - read.amount) <= 1e-9 * read.amount;
  const plain = typed.trim().replace(/\s+/g, ' ');
  return same || plain.length > MOST.dose ? words : plain;
}

function commonDivisor(one: number, other: number): number {
  return other === 0 ? one : commonDivisor(other, one % other);
}
