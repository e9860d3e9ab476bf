/**
 * What is believed of cups, from a learned shelf: the model, and what the nearest looks say of it.
 *
 * @packageDocumentation
 */
import type { TwoViews } from '../optics/cup-body.ts';
import type { LookMeans } from '../optics/look-doubt.ts';
import { type BelievedCup, type ModelViews, modelViews, moved } from './asked-views.ts';
import { type BeliefParts, beliefParts, once } from './belief-parts.ts';
import type { BelievedViews } from './believed-views.ts';
import { type CameraColours, withoutBias } from './camera-bias.ts';
import { likeness } from './composition-point.ts';
import { fieldWeights } from './field-weights.ts';
import { JointKriging } from './joint-kriging.ts';
import type { LearnedShelf } from './learned-shelf.ts';
import type { TaughtLook } from './learning-data.ts';
import type { LinearLook } from './linear-views.ts';
import { nearestLooks } from './nearest-looks.ts';
import { OffsetNear } from './offset-near.ts';
import { type PredictedLooks, predictedLooks } from './predicted-looks.ts';
import { type SharedVariance, sharedMemo } from './shared-memo.ts';
import { withoutCup } from './without-cup.ts';

/** As alike as this, a look counts among those that bear on a colour. Convention of this book. */
const BEARS = 0.1;

/** What a belief is made from, and what looks share. */
interface Grounds {
  readonly parts: BeliefParts;
  readonly shared: SharedVariance;
}

/** Made once of a shelf, and asked often: nothing is found before it is asked for. See `JointKriging` for the formulas. */
export class Belief {
  private readonly grounds: () => Grounds;
  private readonly weights: () => Float64Array;

  constructor(from: LearnedShelf | (() => Grounds)) {
    this.grounds = once(typeof from === 'function' ? from : () => groundsOf(from));
    this.weights = once(() => fieldWeights(this.grounds().parts.looks, this.grounds().shared));
  }

  /**
   * What is believed of a colour, over the learned cards.
   *
   * Throws: RangeError, naming it, if a material is not one of the shelf.
   */
  of(asked: BelievedCup): BelievedViews {
    const { views, near, kriging, mean } = this.asked(asked);
    return {
      ...mean,
      covariance: kriging.covariance([views.slopes(mean)], this.grounds().parts.doubt()),
      looks: near.filter(({ errors }) => likeness(errors.point, views.errors.point) > BEARS).length,
    };
  }

  /** The colours of `of` alone, which is cheaper. Throws: as `of`. */
  mean(asked: BelievedCup): TwoViews {
    return this.asked(asked).mean;
  }

  /**
   * What looks add to the model, for searches: of one cup with other doses of some materials in its near layer.
   *
   * Throws: as `of`.
   */
  near(asked: BelievedCup, names: readonly string[]): OffsetNear {
    const { state, looks } = this.grounds().parts;
    return new OffsetNear(state.unknowns, asked, usualMeans(looks), names, looks, this.weights());
  }

  /** Colours that a camera has shown, as they are believed to be: see `withoutBias`. */
  withoutBias(colours: CameraColours, camera: string): CameraColours {
    return withoutBias(this.grounds().parts, colours, camera);
  }

  /** What would be believed if a cup had never been looked at: see `withoutCup`. */
  without(cup: string): Belief {
    return new Belief(() => {
      const { parts, shared } = this.grounds();
      return { parts: withoutCup(parts, cup, shared), shared };
    });
  }

  /**
   * What looks would show together if things were as they have it, beside what they have: for the likelihood of a log. To be asked of the
   * belief `without` their cup.
   */
  predicted(looks: readonly TaughtLook[]): PredictedLooks {
    const { parts, shared } = this.grounds();
    return predictedLooks(parts, looks, shared);
  }

  private asked(asked: BelievedCup): {
    readonly views: ModelViews;
    readonly near: readonly LinearLook[];
    readonly kriging: JointKriging;
    readonly mean: TwoViews;
  } {
    const { parts, shared } = this.grounds();
    const views = modelViews(parts.state, parts.looker, asked, usualMeans(parts.looks));
    const near = nearestLooks(parts.looks, [views], shared);
    const kriging = new JointKriging(near, [views], shared);
    return { views, near, kriging, mean: meanViews(views, kriging.offset) };
  }
}

function groundsOf(shelf: LearnedShelf): Grounds {
  const parts = beliefParts(shelf);
  return { parts, shared: sharedMemo(parts.looks) };
}

/**
 * How the shelf was looked at at all: what the theory is off by among photos alone is more, for their light is part of it. A shelf that
 * nobody has looked at is no better.
 */
function usualMeans(looks: readonly LinearLook[]): LookMeans {
  return looks.some(({ errors }) => errors.means === 'instrument') ? 'instrument' : 'screen';
}

function meanViews({ model, bias }: ModelViews, offset: Float64Array): TwoViews {
  const [x, y, z] = bias;
  return {
    overWhite: moved(model.overWhite, offset[0]! + x, offset[1]! + y, offset[2]! + z),
    overBlack: moved(model.overBlack, offset[3]! + x, offset[4]! + y, offset[5]! + z),
  };
}
