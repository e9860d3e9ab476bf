import type { CourseResult } from './maker/course-result.ts';
import type { Missed } from './measures/unseen.ts';

/** A book put to the proof. */
export interface Checkpoint {
  /** Recipes so far. */
  readonly after: number;
  /** Mixtures that nobody has made, and the last cup of each recipe so far, as the book shows them. */
  readonly unseen: Missed;
  readonly seen: Missed;
}

/** What came of one book; plain data, kept as JSON. */
export interface BookResult {
  readonly condition: string;
  readonly seed: number;
  readonly recipes: number;
  /** Chips that the book has asked for and that were put. */
  readonly chips?: number;
  readonly checkpoints: readonly Checkpoint[];
  readonly courses: readonly CourseResult[];
  /** Questions that were asked by the real command, too, with the same answer. */
  readonly commandsCompared: number;
  readonly cpuSeconds: number;
}
