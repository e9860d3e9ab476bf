import type { Bench } from '../../cup/bench.ts';
import { type VolumeUnit, volumeText } from '../../units/volume-text.ts';

/** What is measured with, and the unit in which plastic is spoken of; unset: ml. */
export interface MatchBench extends Bench, Partial<VolumeUnit> {}

/** A volume of plastic in the words of a bench. */
export function plasticText(ml: number, { volume = 'ml' }: Partial<VolumeUnit>): string {
  return volumeText(ml, { volume });
}
