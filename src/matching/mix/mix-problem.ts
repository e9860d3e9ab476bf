/**
 * Cups of plastic, what could be added to them, and the colours that they are to show: the question that matching asks.
 *
 * @packageDocumentation
 */
import type { Lab } from '../../optics/cielab.ts';
import type { TwoViews } from '../../optics/cup-body.ts';
import type { SpreadFlake } from '../../optics/flake.ts';
import type { OpticalConstants } from '../../optics/mixture.ts';
import type { OpticalModel } from '../../optics/optical-model.ts';
import type { JointBound } from './joint-bounds.ts';

/** A cup as it is: K and S per mm with everything that is in it. */
export interface MixCup extends OpticalConstants {
  /** Colouring material in it, g/ml, which crowds; unset: 0, or so much as never changes. */
  readonly load?: number;
}

/** Something that can be added to a cup. */
export interface MixCandidate {
  readonly cup: number;
  /** Change of K and S, per mm, with a dose of 1: for a material per g/ml. May be below 0, as where plastic lets a cup down. */
  readonly constants: OpticalConstants;
  /** Change of the cup's load, g/ml, with a dose of 1: 1 for a material. */
  readonly load: number;
  /** Largest dose. */
  readonly most: number;
}

/** A layer of a bait. */
export interface MixLayer {
  readonly cup: number;
  readonly thickness: number;
  readonly flakes?: readonly SpreadFlake[];
}

/** A view of a bait and the colours that it is to have. */
export interface MixGoal {
  /** The near one first. */
  readonly layers: readonly MixLayer[];
  readonly overWhite: Lab;
  readonly overBlack?: Lab;
}

/** Cups as they are, and everything that could be done to them. */
export interface MixProblem {
  readonly cups: readonly MixCup[];
  readonly goals: readonly MixGoal[];
  readonly candidates: readonly MixCandidate[];
  readonly optics: OpticalModel;
  /** What doses may not be above together; unset: nothing. */
  readonly together?: readonly JointBound[];
  /** What is warned of where doses are above it together; unset: nothing. */
  readonly usual?: readonly JointBound[];
  /** Of one goal: what the model is believed to be off by with such doses, in Lab, where it shows so much; unset: nothing. */
  readonly offsets?: (doses: Float64Array, model: TwoViews) => TwoViews;
}
