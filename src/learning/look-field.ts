import { ALIKE_WITHIN, DISCREPANCY_SD, SAME_CUP_SD } from '../tables/model-discrepancy.ts';
import type { LinearLook, Placed } from './linear-views.ts';
import { PointIndex } from './point-index.ts';
import { type SharedVariance, sharedMemo } from './shared-memo.ts';

/** How many looks speak of a composition, at most: those behind them add little. Convention of this book. */
const MOST_LOOKS = 24;

/** Part of the theory's errors that a look shares with what is asked about, to speak of it at all. Convention of this book. */
const HARDLY_ALIKE = 0.05;

/** Squared distance at which they share so little. */
const HARDLY_NEAR = 2 * ALIKE_WITHIN * ALIKE_WITHIN * Math.log(1 / HARDLY_ALIKE);

/** Squared distance from which on compositions have nothing in common: less than a millionth of ΔE00². */
const FARTHEST = 2 * ALIKE_WITHIN * ALIKE_WITHIN * Math.log(1e6);

/** Looks of a shelf among their compositions. */
export class LookField {
  readonly looks: readonly LinearLook[];
  /** `sharedVariance`, which remembers what the looks share. */
  readonly shared: SharedVariance;
  private readonly index: PointIndex;
  private readonly room: Float64Array;

  /** @param shared that of looks among which these are; unset: it begins anew */
  constructor(looks: readonly LinearLook[], shared: SharedVariance = sharedMemo(looks)) {
    this.looks = looks;
    this.shared = shared;
    this.index = new PointIndex(looks.map(({ errors }) => errors.point));
    this.room = new Float64Array(looks.length);
  }

  /**
   * What each look shares with a composition, in their order: `sharedVariance`, but nought where it hardly is any. Written over by the next call.
   *
   * @param farthest squared distance from which on theory has nothing in common
   */
  sharesWith({ errors: { point, cup, means } }: Placed, farthest = FARTHEST): Float64Array {
    const shares = this.room;
    this.index.squaredDistances(point, shares);
    for (let i = 0; i < shares.length; i++) {
      const { errors } = this.looks[i]!;
      const apart = shares[i]!;
      const alike = apart < farthest ? Math.exp(-Math.max(0, apart) / (2 * ALIKE_WITHIN * ALIKE_WITHIN)) : 0;
      const theory = alike === 0 ? 0 : DISCREPANCY_SD[means] * DISCREPANCY_SD[errors.means] * alike;
      shares[i] = cup !== undefined && cup === errors.cup ? theory + SAME_CUP_SD * SAME_CUP_SD : theory;
    }
    return shares;
  }

  /** The looks that share most of their errors with any of some compositions, those that share most first. */
  nearest(asked: readonly Placed[]): readonly LinearLook[] {
    const most = new Float64Array(this.looks.length);
    for (const each of asked) {
      const shares = this.sharesWith(each, HARDLY_NEAR);
      for (let i = 0; i < most.length; i++)
        most[i] = Math.max(
          most[i]!,
          shares[i]! / (DISCREPANCY_SD[each.errors.means] * DISCREPANCY_SD[this.looks[i]!.errors.means]),
        );
    }
    const near: number[] = [];
    for (let i = 0; i < most.length; i++) if (most[i]! > HARDLY_ALIKE) near.push(i);
    near.sort((one, other) => most[other]! - most[one]! || one - other);
    return near.slice(0, MOST_LOOKS).map((i) => this.looks[i]!);
  }
}
