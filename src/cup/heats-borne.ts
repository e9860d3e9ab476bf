import type { Range } from '../units/shared-range.ts';

/** How many heats a material bears, the one in which it goes in included. */
export interface HeatsBorne extends Range {
  /** As such materials do, by common practice: nobody who makes or sells it said so. */
  readonly usual?: true;
}
