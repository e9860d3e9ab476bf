import type { Bench } from './bench.ts';
import type { Amounts } from './ledger.ts';
import type { ColourError } from './measured-amounts.ts';
import { seededRandom, standardNormal } from './random.ts';

/** How far one measured dose varies. */
export type Spread =
  | { readonly kind: 'relative'; readonly deviation: number }
  | { readonly kind: 'step'; readonly grams: number };

// The 95th percentile of so many stands still within about a tenth of itself, and every page of a book has to wait for it.
const BATCHES = 120;
const SEED = 1940;

/**
 * The colour difference, ΔE00, within which 19 of 20 batches made with these tools stay.
 *
 * A counted or spooned dose varies as a whole (drops of one hand on one day go together); a weighed one by half a step of the
 * scale, evenly. The doses vary independently of each other, and every batch goes through the colour model: nothing is linearized.
 *
 * @param amounts exact grams in the cup
 */
export function repeatability(
  amounts: Amounts,
  spread: (material: string) => Spread,
  colourError: ColourError,
): number {
  const names = Object.keys(amounts).sort();
  const random = seededRandom(SEED);
  const differences = Array.from({ length: BATCHES }, () =>
    colourError(
      Object.fromEntries(
        names.map((name) => {
          const deviation = spread(name);
          const exact = amounts[name]!;
          return [
            name,
            deviation.kind === 'relative'
              ? Math.max(0, exact * (1 + deviation.deviation * standardNormal(random)))
              : Math.max(0, exact + (random() - 0.5) * deviation.grams),
          ];
        }),
      ),
    ),
  );
  return differences.sort((one, other) => one - other)[Math.ceil(0.95 * BATCHES) - 1]!;
}

/** Spread of a dose that is counted or spooned. */
export function handSpread(tool: 'drops' | 'spoons' | 'scale' | 'none', bench: Bench): Spread {
  switch (tool) {
    case 'drops':
      return { kind: 'relative', deviation: bench.dropSpread };
    case 'scale':
      return { kind: 'step', grams: bench.scaleGrams! };
    default:
      return { kind: 'relative', deviation: bench.spoonSpread };
  }
}
