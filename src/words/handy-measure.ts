import type { Bench, BenchMaterial } from '../cup/bench.ts';
import { isNear, measures } from '../cup/measures.ts';

// A third spoonful is no way to tell how strong a dose is: convention of this book.
const FEW_SPOONFULS = 2;

/** The whole drops, or the one or two level spoonfuls, that come near an amount in g; undefined where none do. */
export function handyMeasure(grams: number, material: BenchMaterial, bench: Bench): string | undefined {
  return measures(grams, material, bench).find(
    ({ tool, effort, grams: measured }) =>
      (tool === 'drops' || tool === 'spoons') && effort <= FEW_SPOONFULS && isNear(measured, grams),
  )?.text;
}
