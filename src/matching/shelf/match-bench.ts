import type { Bench } from '../../cup/bench.ts';
import type { VolumeUnit } from '../../units/volume-text.ts';

/** What is measured with, and the unit of the marks on a cup; unset: ml. */
export interface MatchBench extends Bench, Partial<VolumeUnit> {}
