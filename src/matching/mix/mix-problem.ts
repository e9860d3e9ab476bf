/**
 * Cups of plastic, what could be added to them, and the colours that they are to show: the question that matching asks.
 *
 * @packageDocumentation
 */
import type { Lab } from '../../optics/cielab.ts';
import type { SpreadFlake } from '../../optics/flake.ts';
import type { OpticalConstants } from '../../optics/mixture.ts';
import type { JointBound } from './joint-bounds.ts';

/** Something that can be added to a cup. */
export interface MixCandidate {
  readonly cup: number;
  /** Change of K and S, per mm, with a dose of 1: for a material per g/ml. May be below 0, as where plastic lets a cup down. */
  readonly constants: OpticalConstants;
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
  /** Added to what the model predicts, in Lab: what it was found to be off by. */
  readonly offWhite?: Lab;
  readonly offBlack?: Lab;
}

/** Cups as they are, and everything that could be done to them. */
export interface MixProblem {
  /** K and S of each cup as it is, per mm. */
  readonly cups: readonly OpticalConstants[];
  readonly goals: readonly MixGoal[];
  readonly candidates: readonly MixCandidate[];
  /** What doses may not be above together; unset: nothing. */
  readonly together?: readonly JointBound[];
  /** What is warned of where doses are above it together; unset: nothing. */
  readonly usual?: readonly JointBound[];
  /** Part of what the model was found to be off by that holds with such doses, 0 to 1; unset: all of it. */
  readonly offShare?: (doses: Float64Array) => number;
}
