/**
 * A plan made out: what goes into each cup as it is measured, and what all of it takes.
 *
 * @packageDocumentation
 */
import type { BenchMaterial } from './bench.ts';
import type { Cut } from './cut.ts';
import type { Fills } from './injector.ts';

/** A material as the plan meets it: handled, bought, stocked. Masses in g. */
export interface BatchStock extends BenchMaterial {
  readonly price?: number;
  readonly packGrams?: number;
  readonly stockGrams?: number;
  /** Only of flake. */
  readonly flake?: { readonly gramsPerFlake: number };
}

/** What is to be known of a cut that is measured: its name, and what is in it. */
export type MeasuredCut = Pick<Cut, 'id' | 'title' | 'oneIn' | 'with' | 'bottlePerGram'>;

/** One measured amount. */
export interface Measured {
  readonly material: string;
  /** It is measured of this cut of the material, and all amounts here are of the cut. */
  readonly cut?: MeasuredCut;
  /** Exact, g in one cup. */
  readonly grams: number;
  /** Measured, g. */
  readonly measuredGrams: number;
  /** "22 drops", "1/4 tsp + 1/8 tsp", "0.42 g" */
  readonly text: string;
  readonly tool: 'drops' | 'spoons' | 'scale' | 'none';
  /** The exact amount as the scale shows it, if there is one that does. */
  readonly byWeight?: string;
  /** Why there is a scale that does not show the exact amount: half a step is more than a fifth of it, or it lies between two steps. */
  readonly offScale?: 'too-little' | 'between-steps';
  /** Drops or spoons that the scale stands in for, since they come out too far from it. */
  readonly tooCoarse?: { readonly text: string; readonly grams: number };
  /** Of drops: ΔE00 by which one more moves the colour, where that is more than the tolerance. */
  readonly dropDeltaE?: number;
  /** Of such drops: whether there is a scale that shows less than a drop, and the amount. */
  readonly betterWeighed?: boolean;
  /** Of a measure that comes out far off: whether one comes near in a cup that is as full as it may be. */
  readonly nearInFullCup?: boolean;
  /** Of flake: how many of them are in a bait of each mold, by the exact amount. */
  readonly flakesABait?: readonly { readonly mold: string; readonly count: number }[];
}

/** A cup of a batch. */
export interface BatchCup {
  readonly name: string;
  /** Equal cups that it is split into. */
  readonly split: number;
  /** In each of the equal cups: */
  readonly plastics: readonly { readonly material: string; readonly ml: number }[];
  readonly amounts: readonly Measured[];
  /** Volume of each with everything in it, ml. */
  readonly volumeMl: number;
  /** How often the injector is filled from all of them; absent where it is filled from none. */
  readonly fills?: readonly Fills[];
  /** Whether one measure makes up for another, so that all are measured so or all are weighed. */
  readonly together: boolean;
  /** ΔE00 between the exact and the measured cup. */
  readonly measuringDeltaE: number;
  /** ΔE00 that drops and spoons alone would leave, where something is weighed for the colour's sake. */
  readonly byHandDeltaE?: number;
}

/** What a batch takes of one material. */
export interface TakenMaterial {
  readonly material: string;
  readonly grams: number;
  readonly ml: number;
}

/** What a batch takes of one material, and what must be bought for it. */
export interface BatchMaterial extends TakenMaterial {
  readonly cost?: number;
  /** g on the shelf, if counted. */
  readonly stockGrams?: number;
  /** g missing. */
  readonly shortGrams: number;
  /** Packs to buy. */
  readonly packs: number;
}

/** A line of a plan made out. */
export interface PlannedLine {
  readonly mold: string;
  /** Good baits. */
  readonly baits: number;
  /** Baits with those that are thrown away; absent where none is. */
  readonly made?: number;
  readonly shots: number;
}

/** A plan made out: what it makes, and what that takes. */
export interface BatchAmounts {
  readonly lines: readonly PlannedLine[];
  readonly baits: number;
  readonly cups: readonly BatchCup[];
  readonly materials: readonly TakenMaterial[];
}

/** A plan with its cost and shopping, for whoever has the shelf. */
export interface Batch extends BatchAmounts {
  readonly materials: readonly BatchMaterial[];
  /** Of everything whose price is known. */
  readonly cost: number;
  readonly costPerBait: number;
  readonly unpriced: readonly string[];
}
