import type { BelievedViews } from '../../learning/believed-views.ts';
import type { LookedLayer } from '../../learning/learning-data.ts';
import type { TwoViews } from '../../optics/cup-body.ts';

/** Cups as they lie in what is looked at, or would be. */
export interface BelievedCup {
  /** The near one first; with `streaks` those that run in them. */
  readonly layers: readonly LookedLayer[];
  readonly streaks?: readonly number[];
  /** Width of a streak, mm; unset: the usual. */
  readonly streakMm?: number;
  /** A cup that there is, by the name that its looks have: its own errors of dosing are known from them. */
  readonly cup?: string;
  /** As this camera shows them, by the name that its looks have. */
  readonly camera?: string;
}

/** What looks say that a model is off by, in cups near one that was asked about. */
export interface OffsetNear {
  /**
   * In Lab, over white and over black, of the near layer with such doses and all else as it was asked. The next call writes over it.
   *
   * @param gramsPerMl in the order of the names that were asked
   * @param model what the model alone shows with these doses
   */
  at(gramsPerMl: Float64Array, model: TwoViews): TwoViews;
}

/** What is believed of cups, by all looks of a book. Throws of a material that is not one of the shelf it was learned with. */
export interface Beliefs {
  of(asked: BelievedCup): BelievedViews;
  /** The colours of `of` alone, which is cheaper. */
  mean(asked: BelievedCup): TwoViews;
  near(asked: BelievedCup, names: readonly string[]): OffsetNear;
  /** Whether anybody has looked at something with a material in it, or measured films of it. */
  isTried(material: string): boolean;
  /** How many times what is usual doses were off by, where one standard deviation of a usual dose of a material is so large a part of it. */
  hand(spreadOf: (material: string) => number): number;
}
