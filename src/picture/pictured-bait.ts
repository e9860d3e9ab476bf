/**
 * All that a bait's picture is made from, as plain values: no book, no file.
 *
 * @packageDocumentation
 */
import type { OpticalModel } from '../optics/optical-model.ts';
import type { Pattern } from '../patterns/patterns.ts';
import type { ShapedMold } from '../shapes/shaped-mold.ts';

/** Flake of a kind in a cup, as it is drawn piece by piece. */
export interface PicturedFlake {
  readonly outline: 'hexagon' | 'square' | 'round' | 'strip';
  /** Across flats, side, diameter, or width of a strip, mm. */
  readonly acrossMm: number;
  /** Length of a strip, mm. */
  readonly longMm?: number;
  readonly finish: string;
  /** Of its face inside the plastic: 36 bands, 0 to 1. */
  readonly reflectance: readonly number[];
  /** Share of what is behind it that is seen through it, 0 to 1. */
  readonly transmittance: number;
  /** Flakes in a millilitre of the cup. */
  readonly perMl: number;
}

/** The plastic of a cup, without its flake, and the flake. */
export interface PicturedCup {
  /** K and S per mm in 36 bands, as they stand before light has gone its path: see `optical-model.ts`. */
  readonly absorption: readonly number[];
  readonly scattering: readonly number[];
  readonly flakes: readonly PicturedFlake[];
  /** Part of its scattering that is by plates of pearl, 0 to 1; unset: none is. */
  readonly pearl?: number;
}

/** By what a side is lighter or darker than it is computed, at a thickness: factors of its reflectance in 36 bands, which looks have taught. */
export interface TaughtFactors {
  readonly mm: number;
  readonly overWhite: readonly number[];
  readonly overBlack: readonly number[];
}

/** A side of a bait: how its cups lie, looked at from here. */
export interface PicturedSide {
  readonly pattern: Pattern;
  /** Its cups by their places in `cups` of the bait, as the pattern numbers them, and their shares of the bait's plastic, 1 together. */
  readonly cups: readonly { readonly cup: number; readonly share: number }[];
  /** The cup that thin parts are made of alone, by its place in `cups` of the bait; unset: of what the body is. */
  readonly thinCup?: number;
  /** From which side it is looked at: the first cup of layers is near, or it is far. */
  readonly from: 'near' | 'far';
  /**
   * What looks have taught, the least thickness first: of cups that lie end to end a list each in the order of `cups`, else one of the body
   * and, with `thinCup`, one of that. Where nothing was taught, nothing.
   */
  readonly taught: readonly (readonly TaughtFactors[])[];
}

/** A bait that is pictured. */
export interface PicturedBait {
  /** Where streaks and flakes lie hangs on this alone: the same in every size, on every side, in every build. */
  readonly seed: string;
  readonly mold: ShapedMold;
  readonly optics: Pick<OpticalModel, 'backings' | 'path'>;
  readonly cups: readonly PicturedCup[];
  /** Width of a streak, mm. */
  readonly streakMm: number;
  readonly near: PicturedSide;
  /** The other side, where it looks otherwise. */
  readonly far?: PicturedSide;
}
