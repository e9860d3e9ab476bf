import type { Bench } from '../../cup/bench.ts';
import type { VolumeUnit } from '../../units/volume-text.ts';

/** What is measured with, and the unit of the marks on a cup; unset: ml. */
export interface MatchBench extends Bench, Partial<VolumeUnit> {
  /** How many times the spreads of drops and spoons the maker's own doses are off by, as looks have shown; unset: 1. */
  readonly hand?: number;
}
