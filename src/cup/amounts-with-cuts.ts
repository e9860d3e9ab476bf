import type { Bench, BenchMaterial } from './bench.ts';
import { bringTooMuch, broughtByCuts, fittingCuts } from './cut-measures.ts';
import type { Amounts, CupState } from './ledger.ts';
import { type ColourError, type MeasuredAmounts, measuredAmounts } from './measured-amounts.ts';

/**
 * The amounts of a cup as they are measured, and what the cuts among them bring of what they are cut with. Where cuts that fit one by one
 * bring more together than the cup has, the largest of their doses is measured straight.
 *
 * @param cup exact g of what is in it, and ml of its plastics
 */
export function amountsWithCuts(
  cup: Pick<CupState, 'materials' | 'plastics'>,
  stock: (material: string) => BenchMaterial,
  bench: Bench & { readonly tolerance: number },
  colourError: ColourError,
): { readonly found: MeasuredAmounts; readonly brought: CupState } {
  const exact = cup.materials;
  const straight = new Set<string>();
  const usable = (name: string): BenchMaterial => {
    const { cuts = [], ...material } = stock(name);
    const fitting = straight.has(name) ? [] : fittingCuts(exact[name]!, cuts, cup);
    return fitting.length === 0 ? material : { ...material, cuts: fitting };
  };
  for (;;) {
    const found = measuredAmounts(exact, usable, bench, colourError, bench.tolerance);
    const brought = broughtByCuts(exact, found.chosen);
    const tooMuch = bringTooMuch(brought, cup, (name) => stock(name).gramsPerMl);
    const largest = largestCutWith(tooMuch, exact, found);
    if (largest === undefined) return { found, brought };
    straight.add(largest);
  }
}

function largestCutWith(diluents: readonly string[], exact: Amounts, { chosen }: MeasuredAmounts): string | undefined {
  const [largest] = Object.entries(chosen)
    .flatMap(([name, { cut }]) => (cut && diluents.includes(cut.with) ? [name] : []))
    .sort((one, other) => exact[other]! - exact[one]! || (one < other ? -1 : 1));
  return largest;
}
