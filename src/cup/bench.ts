import type { Handling } from '../units/dose.ts';
import type { Cut } from './cut.ts';

/** A spoon of the bench. */
export interface Spoon {
  readonly ml: number;
  readonly name: string;
}

/** What the bench measures with. */
export interface Bench {
  readonly drops: boolean;
  /** Largest first. */
  readonly spoons: readonly Spoon[];
  /** Step of the scale, g; undefined without a scale. */
  readonly scaleGrams?: number;
  /** One standard deviation of a counted dose and of a level spoonful, as fractions. */
  readonly dropSpread: number;
  readonly spoonSpread: number;
}

/** A material as the bench meets it: a liquid has `gramsPerDrop`, a powder or flake has not. */
export interface BenchMaterial extends Omit<Handling, 'gramsPerDrop'> {
  readonly gramsPerDrop?: number;
  /** Its dilutions. */
  readonly cuts?: readonly Cut[];
}

/** One way to measure an amount. */
export interface Measure {
  readonly grams: number;
  /** It is measured of this cut, which holds so many grams. */
  readonly cut?: Cut;
  /** "22 drops", "1/4 tsp + 1/8 tsp", "0.42 g" */
  readonly text: string;
  readonly tool: 'drops' | 'spoons' | 'scale' | 'none';
  /** Spoonfuls to level, or 1: less is better where the colour is the same. */
  readonly effort: number;
}
