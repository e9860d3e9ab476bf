/**
 * What a book has learned from all its looks: a plain value that survives JSON, of which `Belief` makes everything heavier.
 *
 * @packageDocumentation
 */
import type { OpticalModel } from '../optics/optical-model.ts';
import type { Constants, LearningData } from './learning-data.ts';

/** How far something is believed: 1 as it is noted, 0 not at all. */
export interface Weights {
  /** One for each look, in the order of `LearnedShelf.data`: that of the look itself times those of its cup from some round on. */
  readonly looks: readonly number[];
  /** The part of that which is the look's own. */
  readonly looksAlone: readonly number[];
  /** By cup, then by round: what is left of the belief in all that was noted of the cup from that round on. Only those below 1. */
  readonly cups: Readonly<Record<string, Readonly<Record<number, number>>>>;
  /** By material, one for each of its labels. */
  readonly labels: Readonly<Record<string, readonly number[]>>;
}

/** The same from any order of the looks, and from any start. */
export interface LearnedShelf {
  /** Materials by id, looks by key. */
  readonly data: LearningData;
  /** The unknowns in standard deviations of what was believed of them before: see `shelfUnknowns`. Rounded. */
  readonly theta: readonly number[];
  readonly weights: Weights;
  /** Cards, light path and crowding as learned, rounded. */
  readonly optics: OpticalModel;
  /** K and S of the maker's own bottles and plastics, by material; not of flake. Rounded to six digits. */
  readonly constants: Readonly<Record<string, Constants>>;
}
