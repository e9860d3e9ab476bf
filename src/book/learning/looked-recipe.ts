import type { Pattern } from '../../patterns/patterns.ts';
import type { Thing } from '../../recipe/read-thing.ts';
import type { FilledCup } from '../cups/fill-cup.ts';

/** A recipe whose looks are learned from: its cups with their ledgers, and how they lie in its bait. */
export interface LookedRecipe {
  readonly recipe: Thing<'recipe'>;
  readonly pattern: Pattern;
  readonly cups: readonly FilledCup[];
  /** Shares of the cups, 1 together. */
  readonly shares: readonly number[];
  /** Width of a streak, mm; unset: the usual. */
  readonly streak?: number;
  /** Thickness of a test pour, and of the bait: the body of its mold. */
  readonly bodyMm: number;
}
