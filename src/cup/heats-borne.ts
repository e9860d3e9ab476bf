import type { Range } from '../units/shared-range.ts';

/** How many heats a material bears, the one in which it goes in included. */
export interface HeatsBorne extends Range {
  /** As such materials do, by common practice: nobody who makes or sells it said so. */
  readonly usual?: true;
}

/** Temperature above which time at heat counts, °C, and how many minutes of it plastic bears: beyond the first it yellows. Common practice, no source. */
export const HELD = { above: 160, from: 20, to: 30 } as const;

/** Whether a material has borne more heats than it is said to, or than such materials surely do. */
export function isWorn(borne: number, bears: HeatsBorne): boolean {
  return borne > bears.from;
}
