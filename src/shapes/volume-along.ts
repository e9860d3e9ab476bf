import type { BaitField } from './bait-field.ts';

/** A bait's volume along it. */
export interface VolumeAlong {
  readonly stepMm: number;
  /** Part of the bait, 0 to 1, that lies before each multiple of the step; the last holds all of it. */
  readonly before: Float64Array;
}

/** How much of a bait lies before each place along it: by `alongMm`, so a tail's curl counts along the curl. */
export function volumeAlong({ cover, thicknessMm, alongMm }: BaitField, stepMm = 0.25): VolumeAlong {
  let end = 0;
  for (let at = 0; at < cover.length; at++) if (alongMm[at]! > end) end = alongMm[at]!;
  const before = new Float64Array(Math.floor(end / stepMm) + 2);
  for (let at = 0; at < cover.length; at++) {
    before[Math.floor(alongMm[at]! / stepMm) + 1]! += cover[at]! * thicknessMm[at]!;
  }
  for (let at = 1; at < before.length; at++) before[at]! += before[at - 1]!;
  const all = before[before.length - 1]!;
  return { stepMm, before: before.map((volume) => volume / all) };
}

/** The place along a bait before which a part of its volume lies, mm. */
export function placeOfPart({ stepMm, before }: VolumeAlong, part: number): number {
  const found = before.findIndex((each) => each >= part);
  if (found <= 0) return found === 0 ? 0 : (before.length - 1) * stepMm;
  const [low, high] = [before[found - 1]!, before[found]!];
  return (found - 1 + (part - low) / (high - low)) * stepMm;
}
