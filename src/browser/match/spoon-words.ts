import type { Bench } from '../../cup/bench.ts';
import { measures } from '../../cup/measures.ts';
import { parseQuantity } from '../../units/parse-quantity.ts';
import { isFault } from '../../units/quantity.ts';
import { UNITS } from '../../units/unit.ts';

// A recipe's file writes what was spooned with these.
const SUMS: ReadonlySet<string> = new Set(['tsp', 'ml']);

/**
 * A dose as the bench spoons it: what a recipe's file has as one number is a sum of level spoons again. A dose that the spoons do not
 * make, and one in other units, is as it was.
 *
 * @example spoonWords('5/16 tsp', bench) // '1/4 tsp + 1 pinch'
 */
export function spoonWords(dose: string, bench: Bench): string {
  const read = parseQuantity(dose, ['volume']);
  if (isFault(read) || !SUMS.has(read.unit)) return dose;
  const ml = read.amount * UNITS[read.unit].size;
  // Of something that weighs a gram a millilitre the grams are the volume.
  const { scaleGrams: _, ...byHand } = bench;
  const [nearest] = measures(ml, { gramsPerMl: 1 }, byHand);
  return nearest?.tool === 'spoons' && Math.abs(nearest.grams - ml) <= 1e-3 * ml ? nearest.text : dose;
}
