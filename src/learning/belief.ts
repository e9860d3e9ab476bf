/**
 * What is believed of cups, from a learned shelf: the model, and what the nearest looks say of it.
 *
 * @packageDocumentation
 */
import type { TwoViews } from '../optics/cup-body.ts';
import type { LookMeans } from '../optics/look-doubt.ts';
import { type BelievedCup, type ModelViews, modelViews, moved } from './asked-views.ts';
import { type BeliefParts, beliefParts } from './belief-parts.ts';
import type { BelievedViews } from './believed-views.ts';
import { addUnknownBias, biasOf } from './camera-bias.ts';
import { likeness } from './composition-point.ts';
import { type CupShare, cupShares } from './cup-shares.ts';
import { JointKriging } from './joint-kriging.ts';
import type { LearnedShelf } from './learned-shelf.ts';
import type { TaughtLook } from './learning-data.ts';
import type { LinearLook } from './linear-views.ts';
import { LookField } from './look-field.ts';
import { OffsetNear } from './offset-near.ts';
import { type ShelfOffsets, shelfOffsets } from './offset-sources.ts';
import { once } from './once.ts';
import { type PredictedLooks, predictedLooks } from './predicted-looks.ts';
import { steadyHand } from './steady-hand.ts';
import { withoutCup } from './without-cup.ts';

/** As alike as this, a look counts among those that bear on a colour. Convention of this book. */
const BEARS = 0.1;

/** What a belief is made from, and its looks among one another. */
interface Grounds {
  readonly parts: BeliefParts;
  readonly field: LookField;
}

/** Made once of a shelf, and asked often: nothing is found before it is asked for. See `JointKriging` for the formulas. */
export class Belief {
  private readonly grounds: () => Grounds;
  private readonly offsets: () => ShelfOffsets;
  private readonly hands = new Map<string, number>();
  /** Places in theta that looks depend on. */
  private readonly looked: () => ReadonlySet<number>;

  constructor(from: LearnedShelf | (() => Grounds)) {
    this.grounds = once(typeof from === 'function' ? from : () => groundsOf(from));
    this.looked = once(() => new Set(this.grounds().parts.looks.flatMap(({ columns }) => [...columns])));
    this.offsets = once(() => shelfOffsets(this.grounds().field));
  }

  /**
   * What is believed of a colour, over the learned cards.
   *
   * Throws: RangeError, naming it, if a material is not one of the shelf.
   */
  of(asked: BelievedCup): BelievedViews {
    const { views, near, kriging, mean } = this.asked(asked);
    const covariance = kriging.covariance([views.slopes(mean)], this.grounds().parts.doubt());
    if (views.isBiasUnknown) addUnknownBias(covariance);
    return {
      ...mean,
      covariance,
      looks: near.filter(({ errors }) => likeness(errors.point, views.errors.point) > BEARS).length,
    };
  }

  /** The colours of `of` alone, which is cheaper. Throws: as `of`. */
  mean(asked: BelievedCup): TwoViews {
    return this.asked(asked).mean;
  }

  /**
   * What looks, and a camera where one is named, add to the model, for searches: of one cup with other doses of some materials in its near
   * layer.
   *
   * Throws: as `of`.
   */
  near(asked: BelievedCup, names: readonly string[]): OffsetNear {
    const { state, looks } = this.grounds().parts;
    const { isThinned, of } = this.offsets();
    const sources = of(usualMeans(looks), asked.cup);
    const bias = biasOf(state, asked.camera);
    if (!isThinned) return new OffsetNear(state.unknowns, asked, names, sources, bias);
    // What the looks that are left out say of the cup itself is added, and fades as doses go away from it.
    const { views, kriging } = this.asked(asked);
    const { point } = views.errors;
    const near = new OffsetNear(state.unknowns, asked, names, sources);
    const found = near.inMetric(names.map((name) => doseOf(asked, name)));
    const ofLikeness = kriging.offset.map((value, axis) => value - found[axis]!);
    return new OffsetNear(state.unknowns, asked, names, [...sources, { point, ofLikeness }], bias);
  }

  /** Whether anybody has looked at something with a material in it, or measured films of it. */
  isTried(material: string): boolean {
    const { materials, placeOf } = this.grounds().parts.state.unknowns;
    const place = placeOf.get(material);
    const unknowns = place === undefined ? undefined : materials[place]!;
    if (unknowns === undefined || unknowns.kModes.length === 0) return false;
    return unknowns.isMeasured ?? this.looked().has(unknowns.at);
  }

  /** How many times what is usual the doses of all cups were off by: see `steadyHand`. Remembered. */
  hand(spreadOf: (material: string) => number): number {
    const { parts, field } = this.grounds();
    const key = parts.state.unknowns.materials.map(({ id }) => spreadOf(id)).join();
    const hand = this.hands.get(key) ?? steadyHand(parts, field.shared, spreadOf);
    this.hands.set(key, hand);
    return hand;
  }

  /** What would be believed if a cup had never been looked at: see `withoutCup`. */
  without(cup: string): Belief {
    return new Belief(() => {
      const { parts, field } = this.grounds();
      const left = withoutCup(parts, cup, field.shared);
      return { parts: left, field: new LookField(left.looks, field.shared) };
    });
  }

  /**
   * What looks would show together if things were as they have it, beside what they have: for the likelihood of a log. To be asked of the
   * belief `without` their cup.
   */
  predicted(looks: readonly TaughtLook[]): PredictedLooks {
    const { parts, field } = this.grounds();
    return predictedLooks(parts, field, looks);
  }

  /**
   * Of all the doubt that labels leave of what the model says of a colour, the share that the looks at each cup have taken away, the largest
   * first. See `cupShares`.
   *
   * @param isAsked which cups are asked about
   * Throws: as `of`.
   */
  taughtBy(asked: BelievedCup, isAsked: (cup: string) => boolean): readonly CupShare[] {
    const { parts, field } = this.grounds();
    const views = modelViews(parts.state, parts.looker, asked, usualMeans(parts.looks));
    return cupShares(parts, views.slopes(views.model), field.shared, isAsked).toSorted(
      (one, other) => other.share - one.share,
    );
  }

  private asked(asked: BelievedCup): {
    readonly views: ModelViews;
    readonly near: readonly LinearLook[];
    readonly kriging: JointKriging;
    readonly mean: TwoViews;
  } {
    const { parts, field } = this.grounds();
    const views = modelViews(parts.state, parts.looker, asked, usualMeans(parts.looks));
    const near = field.nearest([views]);
    const kriging = new JointKriging(near, [views], field.shared);
    return { views, near, kriging, mean: meanViews(views, kriging.offset) };
  }
}

/** Of the near layer, g/ml. */
function doseOf({ layers }: BelievedCup, name: string): number {
  return layers[0]!.contents.reduce((sum, [id, dose]) => (id === name ? sum + dose : sum), 0);
}

function groundsOf(shelf: LearnedShelf): Grounds {
  const parts = beliefParts(shelf);
  return { parts, field: new LookField(parts.looks) };
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
