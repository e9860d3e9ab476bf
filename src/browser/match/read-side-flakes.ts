import type { Mistyped } from './mistyped.ts';
import { coverageOf, NEW_FLAKE, sizeOf, type TypedLoad, type WorkFlake } from './side-flake.ts';

/** The flake of a side as its rows say. */
export function readSideFlakes(side: ParentNode, before: readonly WorkFlake[] = []): readonly WorkFlake[] | Mistyped {
  const flakes: WorkFlake[] = [];
  for (const [index, row] of [...side.querySelectorAll<HTMLElement>('[data-flake]')].entries()) {
    const field = (name: string): HTMLInputElement | null => row.querySelector<HTMLInputElement>(`[name="${name}"]`);
    const size = field('flakeSize')!;
    const sizeMm = sizeOf(size.value);
    if (typeof sizeMm === 'string') return { fault: sizeMm, at: size };
    const percents = field('flakeShare');
    const load = row.querySelector<HTMLSelectElement>('[name="flakeLoad"]')!.value as TypedLoad;
    const coverage = coverageOf(load, percents?.value, before[index] ?? NEW_FLAKE);
    if (typeof coverage === 'string') return { fault: coverage, at: percents! };
    flakes.push({ hex: field('flakeColour')!.value, sizeMm, ...(coverage === undefined ? {} : { coverage }) });
  }
  return flakes;
}
