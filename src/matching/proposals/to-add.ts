import type { Cut } from '../../cup/cut.ts';

/** What is to be put into a cup. */
export interface ToAdd {
  readonly additions: readonly AmountToAdd[];
  /** Plastic to let the cup down with. */
  readonly thin?: { readonly plastic: string; readonly title: string; readonly ml: number };
}

/** An amount of a material, measured. */
export interface AmountToAdd {
  readonly title: string;
  /** It is measured of this cut. */
  readonly cut?: Pick<Cut, 'title' | 'oneIn'>;
  /** "3 drops", "1/8 tsp", "0.12 g" */
  readonly text: string;
}
