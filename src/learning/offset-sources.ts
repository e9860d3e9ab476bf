import type { LookMeans } from '../optics/look-doubt.ts';
import { DISCREPANCY_SD, SAME_CUP_SD } from '../tables/model-discrepancy.ts';
import { fieldWeights } from './field-weights.ts';
import { BOTH_AXES } from './linear-views.ts';
import { LookField } from './look-field.ts';
import type { OffsetSource } from './offset-near.ts';

/** As many looks at most, since the time to find what each adds grows with their square. */
const MOST_LOOKS = 600;

/** What the looks of a shelf add to any cup. */
export interface ShelfOffsets {
  /** Not all looks are in it. */
  readonly isThinned: boolean;
  /** For a cup that is, or was, looked at so. */
  of(means: LookMeans, cup?: string): readonly OffsetSource[];
}

/** Finds what each look adds: of very many looks, of those that are least like one another. */
export function shelfOffsets(field: LookField): ShelfOffsets {
  const isThinned = field.looks.length > MOST_LOOKS;
  const kept = isThinned ? new LookField(unlike(field, MOST_LOOKS), field.shared) : field;
  const weights = fieldWeights(kept);
  return {
    isThinned,
    of: (means, cup) =>
      kept.looks.map(({ errors }, i) => {
        const alpha = weights.subarray(i * BOTH_AXES, (i + 1) * BOTH_AXES);
        const share = DISCREPANCY_SD[means] * DISCREPANCY_SD[errors.means];
        const ofLikeness = alpha.map((value) => share * value);
        if (cup === undefined || errors.cup !== cup) return { point: errors.point, ofLikeness };
        return { point: errors.point, ofLikeness, always: alpha.map((value) => SAME_CUP_SD * SAME_CUP_SD * value) };
      }),
  };
}

/** The first look, and each time the one that shares least with all that were taken before. */
function unlike(field: LookField, count: number): LookField['looks'] {
  const most = new Float64Array(field.looks.length);
  const taken = new Set([0]);
  let last = 0;
  while (taken.size < count) {
    const shares = field.sharesWith(field.looks[last]!);
    let next = -1;
    for (let i = 0; i < most.length; i++) {
      most[i] = Math.max(most[i]!, shares[i]!);
      if (!taken.has(i) && (next < 0 || most[i]! < most[next]!)) next = i;
    }
    taken.add(next);
    last = next;
  }
  return field.looks.filter((_, i) => taken.has(i));
}
